// The ingredients at the foot of a phone: opened where one reads, shut by Escape or a touch beside them.
{
  const bar = () => document.querySelector("[data-bar]");

  // The part whose steps stand in the window comes first into sight; the page itself does not move.
  const open = () => {
    const list = bar().lastElementChild;
    const part = inReading("main [id^='part-']");
    list.scrollTop = (part && list.querySelector(`[data-part="${part.id.slice(5)}"]`)?.offsetTop) || 0;
  };

  onPage(() => bar()?.addEventListener("toggle", () => bar().open && open()));
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !bar()?.open) return;
    bar().open = false;
    bar().firstElementChild.focus();
  });
  document.addEventListener("click", (event) => {
    if (bar()?.open && !bar().contains(event.target)) bar().open = false;
  });
}
