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
      in_address(field.dataset.ask, field.value);
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
      if (pressed.dataset.do === "ask" && on_sheets()) {
        pick(pressed.dataset.value, emit);
        return;
      }
      emit({ with: "", ...pressed.dataset, ...(named ? { value: named.value } : {}) });
      return;
    }
    const drawn = event.target.closest("svg [data-key]");
    if (drawn?.closest(".viewer")) {
      if (dragged) return;
      if (drawn.dataset.field) go(document.querySelector(`[name="${drawn.dataset.field}"]`)?.id);
      else pick(drawn.dataset.key, emit);
      return;
    }
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

  // What stands in a form of the first page is kept until its design is made, so that a reload loses nothing.
  const half = (form) => `anchorwatt:form:${form.id}`;
  const questions = (form) => [...form.elements].filter((one) => one.name);
  document.addEventListener("input", (event) => {
    const form = event.target.closest?.("form[data-do]");
    if (!form) return;
    const said = questions(form).map((one) => [one.name, one.type === "checkbox" ? one.checked : one.value]);
    sessionStorage.setItem(half(form), JSON.stringify(Object.fromEntries(said)));
  });
  function fill_again(form) {
    const said = JSON.parse(sessionStorage.getItem(half(form)) || "{}");
    for (const one of questions(form).filter((field) => field.name in said)) {
      if (one.type === "checkbox") one.checked = said[one.name];
      else one.value = said[one.name];
    }
  }
  function made(id) {
    sessionStorage.removeItem(`anchorwatt:form:${id}`);
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

  // A sheet of the yard's drawings is seen as a whole or in part, by its view box: wheel, fingers, keys and buttons.
  // What the page is asked for stands in its address, so that it is there again after a reload.
  const CLOSEST = 30;
  const seen = { which: "", box: null, picked: "", wheel: 0, passed: 0 };
  const on_sheets = () => location.pathname.endsWith("/drawings");
  const keeps_asked = () => on_sheets() || location.pathname.endsWith("/papers");
  const sheet_of = (target) => target.closest?.(".viewer > svg");
  const the_sheet = () => document.querySelector(".viewer > svg");

  function in_address(name, value) {
    if (!keeps_asked()) return;
    const address = new URL(location.href);
    if (value) address.searchParams.set(name, value);
    else address.searchParams.delete(name);
    history.replaceState(history.state, "", address);
  }

  function whole(svg) {
    if (!svg.dataset.whole) svg.dataset.whole = svg.getAttribute("viewBox");
    return svg.dataset.whole.split(" ").map(Number);
  }

  // Show a box of the sheet, kept inside it; tells whether anything changed.
  function view(svg, x, y, width) {
    const [, , most, tall] = whole(svg);
    const wide = Math.min(Math.max(width, most / CLOSEST), most);
    const high = (tall * wide) / most;
    const box = [Math.min(Math.max(x, 0), most - wide), Math.min(Math.max(y, 0), tall - high), wide, high];
    const before = svg.getAttribute("viewBox");
    svg.setAttribute("viewBox", box.map((one) => Number(one.toFixed(3))).join(" "));
    svg.parentElement.classList.toggle("near", wide < most);
    seen.box = box;
    return svg.getAttribute("viewBox") !== before;
  }

  function zoom(svg, factor, at) {
    const { x, y, width, height } = svg.viewBox.baseVal;
    const most = whole(svg)[2];
    const by = Math.min(Math.max(width * factor, most / CLOSEST), most) / width;
    const to = at ? new DOMPoint(...at).matrixTransform(svg.getScreenCTM().inverse()) : { x: x + width / 2, y: y + height / 2 };
    return view(svg, to.x - (to.x - x) * by, to.y - (to.y - y) * by, width * by);
  }

  function slide(svg, right, down) {
    const { x, y, width } = svg.viewBox.baseVal;
    const scale = svg.getScreenCTM().a;
    return view(svg, x - right / scale, y - down / scale, width);
  }

  function step(svg, key) {
    const { width, height } = svg.getBoundingClientRect();
    const by = { ArrowLeft: [0.15, 0], ArrowRight: [-0.15, 0], ArrowUp: [0, 0.15], ArrowDown: [0, -0.15] }[key];
    if (by) return slide(svg, by[0] * width, by[1] * height);
    if (key === "0") return view(svg, 0, 0, Infinity);
    if (key === "+" || key === "=") return zoom(svg, 0.7);
    return key === "-" && zoom(svg, 1 / 0.7);
  }

  document.addEventListener("click", (event) => {
    const pressed = event.target.closest?.("[data-step]");
    if (pressed) step(the_sheet(), pressed.dataset.step);
  });
  document.addEventListener("keydown", (event) => {
    if (!event.target.closest?.(".sheet") || event.ctrlKey || event.metaKey || event.altKey) return;
    const thing = event.target.closest(".viewer [role=button]");
    if (thing && (event.key === "Enter" || event.key === " ")) {
      event.preventDefault();
      thing.dispatchEvent(new MouseEvent("click", { bubbles: true }));
    } else if (the_sheet() && step(the_sheet(), event.key)) event.preventDefault();
  });

  // A wheel that began with the page goes on with the page, and one that began on the sheet does not go on to it.
  document.addEventListener("wheel", (event) => {
    const svg = sheet_of(event.target);
    const going = (since) => event.timeStamp - since < 300;
    if (!svg || (going(seen.passed) && !event.ctrlKey)) {
      seen.passed = event.timeStamp;
      return;
    }
    const by = event.deltaY * (event.deltaMode ? 30 : 1) * (event.ctrlKey ? 0.01 : 0.002);
    const moved = zoom(svg, Math.exp(Math.min(Math.max(by, -0.5), 0.5)), [event.clientX, event.clientY]);
    if (moved || going(seen.wheel)) event.preventDefault();
    else seen.passed = event.timeStamp;
    if (moved) seen.wheel = event.timeStamp;
  }, { passive: false });

  const fingers = new Map();
  document.addEventListener("pointerdown", (event) => {
    if (sheet_of(event.target) && !event.button) fingers.set(event.pointerId, [event.clientX, event.clientY]);
  });
  document.addEventListener("pointermove", (event) => {
    const from = fingers.get(event.pointerId);
    const svg = from && the_sheet();
    if (!svg) return;
    const to = [event.clientX, event.clientY];
    const far = (one, other) => Math.hypot(one[0] - other[0], one[1] - other[1]);
    if (!dragged && far(from, to) < 4) return;
    dragged = true;
    fingers.set(event.pointerId, to);
    const other = [...fingers].find(([pointer]) => pointer !== event.pointerId)?.[1];
    const share = other ? 2 : 1; // the middle between two fingers goes half as far as one of them
    slide(svg, (to[0] - from[0]) / share, (to[1] - from[1]) / share);
    if (other) zoom(svg, far(from, other) / Math.max(far(to, other), 1), [(to[0] + other[0]) / 2, (to[1] + other[1]) / 2]);
  });
  document.addEventListener("selectstart", (event) => {
    if (fingers.size && sheet_of(event.target.parentElement ?? event.target)) event.preventDefault();
  });
  for (const end of ["pointerup", "pointercancel"]) {
    document.addEventListener(end, (event) => {
      if (fingers.delete(event.pointerId)) setTimeout(() => { dragged = false; }, 0);
    });
  }

  // What takes the focus is brought into sight.
  document.addEventListener("focusin", (event) => {
    const svg = sheet_of(event.target);
    if (!svg || event.target === svg || !event.target.matches(":focus-visible")) return;
    const frame = svg.parentElement.getBoundingClientRect();
    const it = event.target.getBoundingClientRect();
    if (it.left >= frame.left && it.right <= frame.right && it.top >= frame.top && it.bottom <= frame.bottom) return;
    slide(svg, (frame.left + frame.right - it.left - it.right) / 2, (frame.top + frame.bottom - it.top - it.bottom) / 2);
  });

  function pick(key, emit) {
    in_address("about", key);
    seen.asked = true;
    emit({ do: "ask", name: "about", value: key });
  }

  // A page's parts are drawn anew when they change: the view of a sheet, its mark and the focus are put back.
  let focused = "";
  let half_typed = null;
  document.addEventListener("focusin", (event) => { focused = event.target.dataset?.ask ? event.target.id : ""; });
  document.addEventListener("input", ({ target }) => {
    if (target.matches("input[type=text][data-ask]")) half_typed = { id: target.id, words: target.value };
  });
  document.addEventListener("change", ({ target }) => { if (target.id === half_typed?.id) half_typed = null; }, true);
  function put_back() {
    if (focused && document.activeElement === document.body) byId(focused)?.focus();
    const half = half_typed && byId(half_typed.id);
    if (half && half.value !== half_typed.words) {
      half.select();
      document.execCommand("insertText", false, half_typed.words); // as if typed, so that leaving the field sends it
    }
    const svg = the_sheet();
    if (!svg) return;
    const fresh = !svg.dataset.whole;
    if (fresh) {
      whole(svg);
      const { which } = svg.parentElement.dataset;
      if (seen.which === which && seen.box) view(svg, ...seen.box);
      else seen.box = null;
      seen.which = which;
    }
    const thing = document.querySelector(".thing");
    const of = thing?.dataset.of ?? "";
    if (!fresh && of === seen.picked) return;
    for (const one of svg.querySelectorAll("[data-key]")) one.classList.toggle("picked", one.dataset.key === of && of !== "");
    if (seen.asked && of !== seen.picked) {
      seen.asked = false;
      const back = [...svg.querySelectorAll("[role=button]")].find((one) => one.dataset.key === seen.picked);
      if (thing) thing.scrollIntoView({ block: "nearest" });
      (thing ?? back)?.focus({ preventScroll: true });
    }
    seen.picked = of;
  }
  if (keeps_asked()) new MutationObserver(put_back).observe(document, { childList: true, subtree: true });

  // The pages of a paper: which of them is in sight, and a way to any.
  const leaves = () => [...document.querySelectorAll(".leaves li")];
  let looked = 0;
  document.addEventListener("scroll", () => {
    cancelAnimationFrame(looked);
    looked = requestAnimationFrame(() => {
      const last = leaves().filter((one) => one.getBoundingClientRect().top < innerHeight / 2).at(-1);
      const jump = byId("jump");
      if (last && jump) jump.value = last.id;
    });
  }, { passive: true });
  document.addEventListener("change", (event) => {
    if (event.target.dataset?.jump !== undefined) byId(event.target.value).scrollIntoView();
  });

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
    (target.tagName === "DETAILS" ? target.querySelector("summary") : target).focus({ preventScroll: true });
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
    if (location.pathname === "/") for (const id of ["new-starter", "new-intake"]) when(() => byId(id), fill_again);
    if (sessionStorage.getItem(draft())) {
      type_again();
      return;
    }
    const wanted = decodeURIComponent(location.hash.slice(1));
    if (wanted) when(() => go(wanted), () => {});
  }, 300));

  return { changed, clicked, submitted, tell_form, made, slid, dropped, answered, show_theirs, bring_up_to_date, go };
})();
