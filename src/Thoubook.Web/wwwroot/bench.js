// The keypad, and nothing that a page needs: with script off every page reads and every form posts.
(() => {
  "use strict";
  const units = /\s*(in|thou|mm)\s*$/;

  const arm = root => {
    for (const pad of root.querySelectorAll("[data-keypad]")) {
      const entry = document.getElementById(pad.dataset.keypad);
      if (!entry || pad.dataset.armed) continue;
      pad.dataset.armed = "yes";
      pad.hidden = false;
      for (const other of entry.form.querySelectorAll("[data-without-keypad]")) other.hidden = true;
      // Under a thumb the keypad stands in for the telephone's own keys; a real keyboard, or a gauge that types like one, still writes.
      if (window.matchMedia("(pointer: coarse)").matches) entry.inputMode = "none";
      pad.addEventListener("click", event => press(event.target.closest("button"), entry));
    }
  };

  const press = (key, entry) => {
    if (!key || key.type !== "button") return;
    const held = entry.form.elements.held;
    if (key.dataset.key) write(entry, key.dataset.key);
    else if (key.dataset.unit) set(entry, entry.value.replace(units, "").trimEnd() + " " + key.dataset.unit);
    else if ("rub" in key.dataset) rub(entry);
    else if ("sign" in key.dataset) set(entry, entry.value.startsWith("-") ? entry.value.slice(1) : "-" + entry.value);
    else if ("place" in key.dataset) nextPlace(entry.form);
    else if ("hold" in key.dataset) {
      held.value = held.value ? "" : entry.value.replace(units, "").trim();
      key.setAttribute("aria-pressed", held.value ? "true" : "false");
      key.textContent = held.value ? held.value + " held" : "hold";
    }
  };

  const set = (entry, text) => {
    entry.value = text;
    entry.dispatchEvent(new Event("input", { bubbles: true }));
  };

  const write = (entry, text) => {
    const unit = entry.value.match(units);
    const number = unit ? entry.value.slice(0, unit.index) : entry.value;
    set(entry, number + text + (unit ? unit[0] : ""));
  };

  const rub = entry => {
    const unit = entry.value.match(units);
    set(entry, unit ? entry.value.slice(0, unit.index) : entry.value.slice(0, -1));
  };

  const nextPlace = form => {
    const places = [...form.querySelectorAll("input[name=place][type=radio]")];
    if (places.length === 0) return;
    const now = places.findIndex(place => place.checked);
    places[(now + 1) % places.length].checked = true;
  };

  document.addEventListener("DOMContentLoaded", () => arm(document));
  document.addEventListener("htmx:load", event => arm(event.target));
})();
