// Keeps the screen lit while the page is in sight, where the browser can, until the visit ends.
{
  let wanted = memory.read("lit", "sessionStorage").on;
  let lock = null;
  const box = () => document.querySelector("[data-lit] input");

  const hold = async () => {
    if (!wanted || !box() || document.hidden || (lock && !lock.released)) return;
    try {
      lock = await navigator.wakeLock.request("screen");
      if (!wanted) lock.release();
    } catch {
      turn(false);
      say("The screen cannot be kept lit now");
    }
  };

  const turn = (on) => {
    wanted = on;
    memory.write("lit", { on }, "sessionStorage");
    box().checked = on;
    if (on) hold();
    else lock?.release();
  };

  if (navigator.wakeLock) {
    onPage(() => {
      if (!box()) return;
      box().onchange = () => turn(box().checked);
      box().parentElement.hidden = false;
      box().checked = wanted;
      hold();
    });
    document.addEventListener("visibilitychange", hold);
  }
}
