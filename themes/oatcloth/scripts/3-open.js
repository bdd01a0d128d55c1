// Remembers which parts of a page were left open.
{
  const keepOpen = (details) => {
    const key = `open:${details.dataset.open}`;
    details.open = Boolean(memory.read(key).open);
    details.addEventListener("toggle", () => memory.write(key, { open: details.open }));
  };

  document.querySelectorAll("details[data-open]").forEach(keepOpen);
}
