// Finds a recipe in the list.
{
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

  document.querySelectorAll("[data-find]").forEach(offerFinding);
}
