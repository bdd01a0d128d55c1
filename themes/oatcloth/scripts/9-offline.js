// Lets the browser keep what was opened, to open again with no signal: the worker, offline.js, does the keeping.
{
  const worker = new URL("../offline.js", document.currentScript.src);

  const kept = async (address) => (await caches.match(address)) || fetch(address);

  // Every batch and edition: a page of one leads to its neighbours, and so by and by to all.
  const keepChoices = async (page, base, seen) => {
    for (const link of page.querySelectorAll("[data-choices] a")) {
      const address = new URL(link.getAttribute("href"), base);
      address.hash = "";
      if (seen.has(address.href)) continue;
      seen.add(address.href);
      const text = await (await kept(address)).text();
      await keepChoices(new DOMParser().parseFromString(text, "text/html"), address, seen);
    }
  };

  // The first page was there before its worker: so it is asked for once more, with all that it was shown with.
  const keepWhole = async () => {
    const page = location.href.split("#")[0];
    for (const { name } of [{ name: page }, ...performance.getEntriesByType("resource")]) {
      if (name.startsWith(new URL(".", worker).href)) await kept(name);
    }
    if (!document.querySelector("[data-keep]") || navigator.connection?.saveData) return;
    for (const image of document.images) image.loading = "eager";
    await keepChoices(document, location.href, new Set([page]));
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
