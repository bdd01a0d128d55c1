// Remembers on this device what was ticked off and what was left open. The page is whole without it.
"use strict";

(() => {
  // A reader may have forbidden storage: then ticks last as long as the page.
  const memory = {
    read(key) {
      try {
        return JSON.parse(localStorage.getItem(key)) || {};
      } catch {
        return {};
      }
    },
    write(key, value) {
      try {
        localStorage.setItem(key, JSON.stringify(value));
      } catch {
        // Nothing to do: the page itself still shows the tick.
      }
    },
  };

  const recipe = document.querySelector("[data-keep]");
  if (!recipe) return;
  const key = `ticks:${recipe.dataset.keep}`;
  const kept = memory.read(key);

  // The list in the bar repeats the ingredients: lines that read the same share one tick.
  const boxes = new Map();

  const show = (name, on) => {
    for (const box of boxes.get(name)) {
      box.checked = on;
      box.closest("[data-tick]").classList.toggle("ticked", on);
    }
  };

  const turn = (name, on) => {
    if (on) kept[name] = true;
    else delete kept[name];
    memory.write(key, kept);
    show(name, on);
  };

  const words = (element) => element.textContent.replace(/\s+/g, " ").trim();

  const nameOf = (item) => {
    if (item.id) return item.id;
    const part = item.closest("[data-part]");
    return `${part ? part.dataset.part : ""}/${words(item)}`;
  };

  const addTick = (item) => {
    const name = nameOf(item);
    const number = item.querySelector(".number");
    const box = document.createElement("input");
    box.type = "checkbox";
    box.className = "tick";
    box.setAttribute("aria-label", number ? `Step ${words(number)} done` : `${words(item)}: weighed out`);
    box.addEventListener("change", () => turn(name, box.checked));
    if (number) {
      const place = document.createElement("label");
      place.className = "tick-place";
      place.append(box);
      number.after(place);
    } else {
      item.prepend(box);
      item.addEventListener("click", (event) => {
        if (event.target === box || event.target.closest("a")) return;
        box.click();
      });
    }
    boxes.set(name, [...(boxes.get(name) || []), box]);
  };

  recipe.ownerDocument.body.classList.add("with-ticks");
  for (const item of document.querySelectorAll("[data-tick]")) addTick(item);
  for (const name of Object.keys(kept)) if (boxes.has(name)) show(name, true);

  for (const details of document.querySelectorAll("details[data-open]")) {
    const place = `open:${details.dataset.open}`;
    details.open = Boolean(memory.read(place).open) || details.open;
    details.addEventListener("toggle", () => memory.write(place, { open: details.open }));
  }
})();
