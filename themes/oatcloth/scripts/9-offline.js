// Lets the browser keep what was opened, to open again with no signal: the worker, offline.js, does the keeping.
{
  const worker = new URL("../offline.js", document.currentScript.src);
  const opened = location.href.split("#")[0];

  const choicesOf = (page, base) =>
    [...page.querySelectorAll("[data-choices] a")].map((a) => new URL(a.getAttribute("href").split("#")[0], base).href);
  // Read now: when the worker is ready, another choice may stand here, or the window be on its way to another.
  const choices = new Set(choicesOf(document, opened));

  const kept = async (address) => (await caches.match(address)) || fetch(address);

  // Every batch and edition: a page of one leads to its neighbours, and so by and by to all.
  const keepChoices = async () => {
    for (const address of choices) {
      const page = new DOMParser().parseFromString(await (await kept(address)).text(), "text/html");
      choicesOf(page, address).forEach((each) => choices.add(each));
    }
  };

  // The first page was there before its worker: so it is asked for once more, with all that it was shown with.
  const keepWhole = async () => {
    for (const { name } of [{ name: opened }, ...performance.getEntriesByType("resource")]) {
      if (name.startsWith(new URL(".", worker).href)) await kept(name);
    }
    if (!document.querySelector("[data-keep]") || navigator.connection?.saveData) return;
    for (const image of document.images) image.loading = "eager";
    await keepChoices();
  };

  const begin = async () => {
    await navigator.serviceWorker.register(worker);
    await navigator.serviceWorker.ready;
    if (!navigator.serviceWorker.controller) {
      await new Promise((done) => navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }));
    }
    await keepWhole();
  };

  // With no signal, or where a reader forbids it, the page is as good without.
  if (isHosted && "serviceWorker" in navigator) addEventListener("load", () => begin().catch(() => {}));
}
