// What a page of the workbench does in the browser: it tells the server what was typed and shows what comes back.
// An edit is kept here until the server has answered it, so that a lost connection loses nothing.
window.anchorwatt = (() => {
  const kept = () => `anchorwatt:${location.pathname.split("/").slice(0, 3).join("/")}`;
  const read = () => JSON.parse(sessionStorage.getItem(kept()) || "{}");
  const write = (pending) => sessionStorage.setItem(kept(), JSON.stringify(pending));
  const byId = (id) => document.getElementById(id);

  function seenOf(field) {
    return field.dataset.typed === "1" ? field.dataset.seen : null;
  }

  function changed(event, emit) {
    const field = event.target;
    if (field.dataset.ask) {
      emit({ do: "ask", name: field.dataset.ask, value: field.value });
      return;
    }
    if (!field.name || !field.id.startsWith("f-")) return;
    const said = { do: "change", key: field.name, text: field.value, seen: seenOf(field) };
    const pending = read();
    pending[field.id] = said;
    write(pending);
    byId(`${field.id}-told`).textContent = "";
    field.classList.add("sending");
    emit(said);
  }

  function clicked(event, emit) {
    const goes = event.target.closest("a[data-goto]");
    if (goes && go(goes.dataset.goto)) {
      event.preventDefault();
      return;
    }
    const pressed = event.target.closest("[data-do]");
    if (pressed && !pressed.disabled) {
      const named = pressed.closest(".add")?.querySelector("input");
      emit({ with: "", ...pressed.dataset, ...(named ? { value: named.value } : {}) });
      return;
    }
    const drawn = event.target.closest("svg [data-key]");
    if (drawn && drawn.dataset.key && !dragged) emit({ do: "key", key: drawn.dataset.key });
  }

  // A form of the first page is sent as a whole; what is wrong with it comes back field by field.
  function submitted(event, emit) {
    const form = event.target;
    if (!form.dataset.do) return;
    event.preventDefault();
    emit({ do: form.dataset.do, fields: Object.fromEntries(new FormData(form)) });
  }

  function tell_form(id, told) {
    const form = byId(id);
    if (!form) return;
    for (const place of form.querySelectorAll(".told")) {
      const words = told[place.dataset.for] || "";
      place.textContent = words;
      form.querySelector(`[name="${place.dataset.for}"]`).setAttribute("aria-invalid", words ? "true" : "false");
    }
    form.querySelector('[aria-invalid="true"]')?.focus();
  }

  function slid(event, emit) {
    const field = event.target;
    if (field.type === "range" && field.dataset.ask) emit({ do: "ask", name: field.dataset.ask, value: field.value });
  }

  // A part in a picture of places is dragged: what it is moved by, in metres, follows from the picture's own scale.
  let held = null;
  let dragged = false;
  document.addEventListener("pointerdown", (event) => {
    const part = event.target.closest?.("svg[data-scale] [data-key^='places.']");
    dragged = false;
    if (!part || !part.dataset.view || document.querySelector(".locked")) return;
    held = { part, svg: part.closest("svg"), x: event.clientX, y: event.clientY, pointer: event.pointerId };
  });
  document.addEventListener("pointermove", (event) => {
    if (!held || event.pointerId !== held.pointer) return;
    const by = [event.clientX - held.x, event.clientY - held.y];
    if (Math.hypot(...by) < 4 && !dragged) return;
    dragged = true;
    event.preventDefault();
    const zoom = held.svg.viewBox.baseVal.width / held.svg.getBoundingClientRect().width;
    held.part.setAttribute("transform", `translate(${by[0] * zoom} ${by[1] * zoom})`);
  }, { passive: false });
  function dropped(event, emit) {
    if (!held) return;
    const { part, svg, x, y } = held;
    held = null;
    if (!dragged) return;
    setTimeout(() => { dragged = false; }, 0);
    const zoom = svg.viewBox.baseVal.width / svg.getBoundingClientRect().width;
    const right = ((event.clientX - x) * zoom) / Number(svg.dataset.scale);
    const down = ((event.clientY - y) * zoom) / Number(svg.dataset.scale);
    const { key, view, forward, starboard, up } = part.dataset;
    emit({ do: "do", act: "move", key, view, forward, starboard, up, right, down });
  }
  document.addEventListener("pointercancel", () => { held?.part.removeAttribute("transform"); held = null; });
  document.addEventListener("pointerup", () => setTimeout(() => { held?.part.removeAttribute("transform"); held = null; }, 0));

  // Rows of a table that hold the words typed.
  document.addEventListener("input", (event) => {
    const filter = event.target;
    if (filter.dataset?.filter === undefined) return;
    const words = filter.value.toLowerCase().split(/\s+/).filter(Boolean);
    let left = 0;
    for (const row of filter.closest(".filtered").querySelectorAll("tbody tr")) {
      const has = words.every((word) => row.textContent.toLowerCase().includes(word));
      row.hidden = !has;
      left += has ? 1 : 0;
    }
    filter.closest(".filtered").querySelector(".left").textContent = `${left} shown`;
  });

  function answered(id, told) {
    const pending = read();
    delete pending[id];
    write(pending);
    const field = byId(id);
    if (!field) return;
    field.classList.remove("sending");
    field.setAttribute("aria-invalid", told ? "true" : "false");
    byId(`${id}-told`).textContent = told;
  }

  function show_theirs(id, theirs) {
    const field = byId(id);
    if (!field) return;
    field.dataset.seen = theirs;
    field.dataset.typed = theirs === "" ? "0" : "1";
  }

  function bring_up_to_date(facts) {
    for (const fact of facts) {
      const field = byId(fact.id);
      if (!field) continue;
      const unsent = field.value !== (field.dataset.seen || "");
      const wrong = field.getAttribute("aria-invalid") === "true";
      const busy = document.activeElement === field && unsent;
      if (field.value === fact.typed || (!busy && !wrong)) {
        field.dataset.seen = fact.typed;
        field.dataset.typed = fact.typed === "" ? "0" : "1";
        field.value = fact.typed;
        field.setAttribute("aria-invalid", "false");
        byId(`${fact.id}-told`).textContent = "";
      }
      if (field.tagName === "SELECT") {
        const none = field.querySelector('option[value=""]');
        if (none) none.textContent = fact.hint;
      } else {
        field.placeholder = fact.hint;
      }
      field.closest(".field").dataset.basis = fact.basis;
      byId(`${fact.id}-origin`).textContent = fact.origin;
    }
  }

  // Open what holds an element, and bring it into sight.
  function go(id) {
    const target = byId(id) || byId(`g-${id}`);
    if (!target) return false;
    for (let at = target; at; at = at.parentElement) if (at.tagName === "DETAILS") at.open = true;
    target.scrollIntoView({ block: "center" });
    target.focus({ preventScroll: true });
    target.closest(".field")?.classList.add("found");
    return true;
  }

  // Edits that a lost connection kept from the server are sent again, once the page is there.
  function resend() {
    const pending = read();
    for (const [id, said] of Object.entries(pending)) {
      const field = byId(id);
      if (!field) continue;
      field.value = said.text;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    }
  }

  document.addEventListener("click", (event) => {
    const units = event.target.closest?.("a[data-units]");
    if (!units) return;
    event.preventDefault();
    location.assign(`${units.href}?back=${encodeURIComponent(location.pathname + location.search)}`);
  });

  document.addEventListener("keydown", (event) => {
    const typing = event.target.matches?.("input, textarea, select");
    if (event.key === "Escape" && typing && event.target.id.startsWith("f-")) {
      event.target.value = event.target.dataset.seen || "";
      return;
    }
    if (!(event.ctrlKey || event.metaKey) || typing) return;
    const key = event.key.toLowerCase();
    const back = key === "z" && !event.shiftKey;
    if (!back && key !== "y" && key !== "z") return;
    event.preventDefault();
    document.querySelector(`[data-do="${back ? "undo" : "redo"}"]`)?.click();
  });

  window.addEventListener("load", () => setTimeout(() => {
    if (location.hash) go(decodeURIComponent(location.hash.slice(1)));
    resend();
  }, 300));

  return { changed, clicked, submitted, tell_form, slid, dropped, answered, show_theirs, bring_up_to_date, go };
})();
