// Finds recipes by words and by the cards of the drawer; the address keeps what was asked, so that a link shows it.
{
  const offerFinding = (form) => {
    const every = (selector) => [...document.querySelectorAll(selector)];
    const index = JSON.parse(every("[data-index]")[0].textContent);
    const entries = every("[data-number]");
    const boxes = every("[data-drawer] [value]");
    const [told, ways] = every("[data-told], [data-ways]");
    const field = form.elements.words;

    // The rules by which words are compared come with the index, which was made by them.
    const plain = (text) =>
      index.letters.reduce(
        (rest, [letter, instead]) => rest.replaceAll(letter, instead),
        text.normalize("NFD").replace(/['’\p{M}]/gu, "").toLowerCase(),
      );
    const split = (text) =>
      (plain(text).match(/[\p{L}\p{N}]+/gu) || []).filter((word) => !index.passedOver.includes(word));
    const stem = (word) =>
      index.endings.reduce(
        (rest, [end, instead]) => (rest.endsWith(end) ? rest.slice(0, -end.length) + instead : rest),
        word,
      );

    // Number of each entry that has the word -> the ingredient or component that has it, '' for its own text.
    const holders = (asked) => {
      const holding = new Map();
      const fits = (word) => word.startsWith(asked) || stem(word) === stem(asked);
      const look = (rows, tells) => {
        for (const [texts, numbers] of rows) {
          const text = texts.find((one) => split(one).some(fits));
          if (text) for (const number of numbers) if (!holding.has(number)) holding.set(number, tells && text);
        }
      };
      look(index.words, "");
      look(index.names, true);
      return holding;
    };
    const marked = (name, value) => new Map(index.marks[name][value].map((number) => [number]));

    // Everything that is asked for at once. by: the entries that have it.
    const wishes = () => [
      ...split(field.value).map((word) => ({ name: "words", value: word, says: `‘${word}’`, by: holders(word) })),
      ...boxes
        .filter((box) => box.checked && box.value)
        .map(({ name, value, dataset }) => ({ name, value, says: dataset.says, by: marked(name, value) })),
    ];
    const matching = (asked) => entries.filter((entry) => asked.every(({ by }) => by.has(+entry.dataset.number)));
    const address = (asked) => `#${new URLSearchParams(asked.map(({ name, value }) => [name, value]))}`;

    const show = () => {
      const asked = wishes();
      const found = matching(asked);
      for (const entry of entries) {
        const names = new Set(asked.map(({ by }) => by.get(+entry.dataset.number)).filter(Boolean));
        const note = entry.querySelector("[data-holds]");
        entry.hidden = !found.includes(entry);
        if (note) note.textContent = names.size ? `Contains ${[...names].join(", ")}.` : "";
      }
      for (const count of every("[data-count]")) {
        const { name, value, type } = count.closest("label").control;
        const others = asked.filter((wish) => type !== "radio" || wish.name !== name);
        count.textContent = matching([...others, { by: marked(name, value) }]).length;
      }
      const counts = every("[data-list]").flatMap((list) => {
        const shown = found.filter((entry) => list.contains(entry)).length;
        list.hidden = !shown;
        return shown ? `${shown} ${list.dataset.list.split(" ")[+(shown > 1)]}` : [];
      });
      const says = asked.map((wish) => wish.says).join(", ");
      told.textContent = says && `${counts.join(" and ") || "Nothing has all of it"}: ${says}`;
      ways.replaceChildren(
        ...(found.length ? [] : asked).flatMap((wish) => {
          const others = asked.filter((one) => one !== wish);
          const left = matching(others).length;
          return left ? made("a", { href: address(others), textContent: `Drop ${wish.says}: ${left}` }) : [];
        }),
      );
      form.toggleAttribute("data-asked", says);
    };

    const read = () => {
      // Whoever skips to the text goes on with what was asked.
      if (location.hash === "#main") return;
      const state = new URLSearchParams(location.hash.slice(1));
      field.value = state.getAll("words").join(" ");
      for (const box of boxes) box.checked = state.has(box.name) ? state.getAll(box.name).includes(box.value) : !box.value;
      show();
    };

    form.addEventListener("input", ({ target }) => {
      const typing = target === field;
      // One step back undoes all that was typed.
      history[typing && history.state?.typing ? "replaceState" : "pushState"]({ typing }, "", address(wishes()));
      show();
    });
    form.addEventListener("submit", (event) => event.preventDefault());
    addEventListener("popstate", read);
    form.hidden = false;
    read();
  };

  document.querySelectorAll("[data-drawer]").forEach(offerFinding);
}
