// Ticks off ingredients and steps, and remembers them.
{
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

  const recipe = document.querySelector("[data-keep]");
  if (recipe) offerTicks(recipe);
}
