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

  function see(field, typed) {
    field.dataset.seen = typed;
    field.dataset.typed = typed === "" ? "0" : "1";
  }

  function send(said, emit) {
    write({ ...read(), [said.id]: said });
    byId(said.id)?.classList.add("sending");
    emit(said);
  }

  // Something that was kept is sent by way of the page, whatever fields it has.
  function send_kept(said) {
    document.querySelector(".bench").dispatchEvent(new CustomEvent("change", { detail: said }));
  }

  function changed(event, emit) {
    if (event.detail?.id) {
      send(event.detail, emit);
      return;
    }
    const field = event.target;
    if (field.dataset.ask) {
      emit({ do: "ask", name: field.dataset.ask, value: field.value });
      return;
    }
    if (!field.name || !field.id.startsWith("f-")) return;
    byId(`${field.id}-told`).textContent = "";
    const pending = read();
    if (pending[field.id] && field.classList.contains("sending")) {
      // One at a time: what was seen before this edit is what the edit under way comes to.
      write({ ...pending, [field.id]: { ...pending[field.id], later: field.value } });
      return;
    }
    send({ do: "change", id: field.id, key: field.name, text: field.value, seen: seenOf(field) }, emit);
  }

  function clicked(event, emit) {
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
    const { [id]: said, ...others } = read();
    write(others);
    const field = byId(id);
    field?.classList.remove("sending");
    if (field && said && !told && (field.dataset.seen || "") === (said.seen || "")) see(field, said.text.trim());
    if (said && said.later !== undefined) {
      const { later, ...sent } = said;
      send_kept({ ...sent, text: later, seen: field ? seenOf(field) : told ? said.seen : said.text.trim() });
      return;
    }
    if (!field) return;
    field.setAttribute("aria-invalid", told ? "true" : "false");
    byId(`${id}-told`).textContent = told;
  }

  function show_theirs(id, theirs) {
    const field = byId(id);
    if (field) see(field, theirs);
  }

  function bring_up_to_date(facts) {
    for (const fact of facts) {
      const field = byId(fact.id);
      if (!field) continue;
      const unsent = field.value !== (field.dataset.seen || "");
      const wrong = field.getAttribute("aria-invalid") === "true";
      const busy = document.activeElement === field && unsent;
      if (field.value === fact.typed || (!busy && !wrong)) {
        see(field, fact.typed);
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

  // Fields follow the page: wait for what is looked for, a minute at most.
  function when(look, act, tries = 600) {
    const there = look();
    if (there) act(there);
    else if (tries > 0) setTimeout(() => when(look, act, tries - 1), 100);
  }

  // Edits that a lost connection kept from the server are sent again, on whatever page of the design comes first;
  // what was seen is what was seen then, so that nobody's later change is written over.
  function resend() {
    for (const said of Object.values(read())) {
      when(() => document.querySelector(".bench"), () => send_kept({ ...said, again: true }));
      when(() => byId(said.id), (field) => {
        if (!read()[said.id]) return;
        field.value = said.later ?? said.text;
        field.classList.add("sending");
      });
    }
  }

  // Words that are being typed when the page is loaded again stand in their field again, not sent yet.
  const draft = () => `${kept()}:typing`;
  window.addEventListener("pagehide", () => {
    const field = document.activeElement;
    if (!field?.matches("input[type=text][id^=f-][name]:not(.sending)")) return;
    if (field.value === (field.dataset.seen || "")) return;
    sessionStorage.setItem(draft(), JSON.stringify({ id: field.id, text: field.value, seen: seenOf(field) }));
  });
  function type_again() {
    const typing = JSON.parse(sessionStorage.getItem(draft()) || "null");
    sessionStorage.removeItem(draft());
    if (!typing) return;
    when(() => byId(typing.id), (field) => {
      go(typing.id);
      field.select();
      document.execCommand("insertText", false, typing.text); // as if typed, so that leaving the field sends it
      see(field, typing.seen ?? "");
    });
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
    resend();
    if (sessionStorage.getItem(draft())) {
      type_again();
      return;
    }
    const wanted = decodeURIComponent(location.hash.slice(1));
    if (wanted) when(() => go(wanted), () => {});
  }, 300));

  return { changed, clicked, submitted, tell_form, slid, dropped, answered, show_theirs, bring_up_to_date, go };
})();
