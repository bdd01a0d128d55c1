// Remembers on this device what was ticked off and what was left open, and finds a recipe in the list.
// Every page is whole without it.
"use strict";

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
      // The page itself still shows the tick.
    }
  },
};

const words = (element) => element.textContent.replace(/\s+/g, " ").trim();

const offerTicks = (recipe) => {
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

  const boxFor = (name, label) => {
    const box = document.createElement("input");
    box.type = "checkbox";
    box.className = "tick";
    box.setAttribute("aria-label", label);
    box.addEventListener("change", () => turn(name, box.checked));
    boxes.set(name, [...(boxes.get(name) || []), box]);
    return box;
  };

  const offerStep = (step) => {
    const number = step.querySelector(".number");
    const place = document.createElement("label");
    place.className = "tick-place";
    place.append(boxFor(step.id, `Step ${words(number)} done`));
    number.after(place);
  };

  const offerLine = (line) => {
    const text = words(line);
    const box = boxFor(`${line.parentElement.dataset.part}/${text}`, text);
    line.prepend(box);
    line.addEventListener("click", (event) => {
      if (event.target !== box) box.click();
    });
  };

  document.body.classList.add("with-ticks");
  for (const item of document.querySelectorAll("[data-tick]")) (item.id ? offerStep : offerLine)(item);
  for (const name of Object.keys(kept)) if (boxes.has(name)) show(name, true);
};

const keepOpen = (details) => {
  const key = `open:${details.dataset.open}`;
  details.open = Boolean(memory.read(key).open);
  details.addEventListener("toggle", () => memory.write(key, { open: details.open }));
};

const offerFinding = (place) => {
  const field = place.querySelector("input");
  const found = document.querySelector("[data-found]");
  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const entries = [...document.querySelectorAll("[data-words]")].map((entry) => ({
    entry,
    text: plain(`${entry.dataset.words} ${words(entry)}`),
  }));
  place.hidden = false;
  field.addEventListener("input", () => {
    const asked = plain(field.value).split(/\s+/);
    for (const { entry, text } of entries) entry.hidden = !asked.every((word) => text.includes(word));
    found.textContent = entries.every(({ entry }) => entry.hidden) ? "No recipe has these words." : "";
  });
};

const recipe = document.querySelector("[data-keep]");
if (recipe) offerTicks(recipe);
document.querySelectorAll("details[data-open]").forEach(keepOpen);
document.querySelectorAll("[data-find]").forEach(offerFinding);
