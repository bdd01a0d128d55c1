// Ticks off ingredients and steps, and remembers them for every batch and edition of the recipe.
{
  const offerTicks = (items) => {
    const key = `ticks:${document.querySelector("[data-keep]").dataset.keep}`;
    const clear = document.querySelector("[data-clear]");
    let kept = memory.read(key);
    let cleared = null;

    const show = () => {
      for (const item of items) {
        const on = item.dataset.tick in kept;
        item.classList.toggle("ticked", on);
        item.querySelector(".tick").checked = on;
      }
      clear.textContent = cleared ? "Put the ticks back" : "Clear the ticks";
      if (Object.keys(kept).length) clear.hidden = false;
    };

    // before: what a floury thumb has cleared by mistake can be put back.
    const keep = (ticks, before = null) => {
      kept = ticks;
      cleared = before;
      memory.write(key, kept);
      show();
    };

    const boxFor = (item, label) => {
      const { tick } = item.dataset;
      const turn = ({ target: { checked } }) => {
        const { [tick]: _, ...others } = kept;
        keep(checked ? { ...others, [tick]: true } : others);
      };
      return made("input", { type: "checkbox", className: "tick", ariaLabel: label, onchange: turn });
    };

    for (const item of items) {
      const number = item.querySelector(".number");
      if (number) {
        number.after(made("label", { className: "tick-place" }, boxFor(item, `Step ${words(number)} done`)));
      } else {
        const box = boxFor(item, words(item));
        item.prepend(box);
        item.onclick = ({ target }) => {
          if (target !== box) box.click();
        };
      }
    }
    clear.onclick = () => {
      say(cleared ? "The ticks are back" : "All ticks are cleared");
      if (cleared) keep(cleared);
      else keep({}, kept);
    };
    document.body.classList.add("with-ticks");
    show();
  };

  onPage(() => {
    const items = [...document.querySelectorAll("[data-tick]")];
    if (items.length) offerTicks(items);
  });
}
