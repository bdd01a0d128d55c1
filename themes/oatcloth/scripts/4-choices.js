// Sets another batch or edition in the page's place. Its page was computed and written before, as every page was:
// it is fetched, and shown at the step that one was reading. From a disk nothing can be fetched: a link is a link.
{
  const OF_THE_PAGE =
    'title, link[rel="canonical"], link[hreflang], meta[name="description"], meta[property], script[type$="json"]';
  let shown = location.pathname;

  const chosen = () => document.querySelector("[data-choices]");
  const recipe = (page) => page.querySelector("[data-keep]")?.dataset.keep;
  const body = (page) => [...page.body.children].filter((part) => !part.matches("[data-at-hand]"));

  const fetched = async (address) => {
    const answer = await fetch(address);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    // A host that asks for a log-in answers with another page.
    if (!answer.ok || recipe(page) !== recipe(document)) throw new Error(address);
    return page;
  };

  // What stays in the head keeps its address when that of the window changes.
  for (const link of document.querySelectorAll('link[rel="icon"], link[rel="manifest"]')) link.href = `${link.href}`;

  // A photo that waits below the fold is fetched later, perhaps when the window has the next page's address already.
  const keepPhotos = (page) => {
    for (const cut of page.querySelectorAll("[srcset]"))
      cut.srcset = cut.srcset.replace(/\S+(?= \d+w)/g, (place) => new URL(place, location));
  };
  if (isHosted && chosen()) keepPhotos(document);

  // still: what does not move in the window while all else changes. The window has the page's address already,
  // from which all addresses on it count.
  const setInPlace = (page, still) => {
    const top = still.getBoundingClientRect().top;
    const before = [...document.head.querySelectorAll(OF_THE_PAGE), ...body(document)];
    shown = location.pathname;
    keepPhotos(page);
    document.documentElement.lang = page.documentElement.lang;
    document.head.append(...page.head.querySelectorAll(OF_THE_PAGE));
    atHand.before(...body(page));
    before.forEach((part) => part.remove());
    atHand.querySelector(".bar")?.replaceWith(page.querySelector(".bar"));
    document.dispatchEvent(new Event("page"));
    const moved = document.getElementById(still.id) || chosen();
    scrollBy({ top: moved.getBoundingClientRect().top - top, behavior: "instant" });
    say(`Now set for ${chosen().dataset.choices}`);
  };

  const choose = async (link) => {
    const address = link.href.split("#")[0];
    const lists = () => [...chosen().querySelectorAll("ul")];
    const list = lists().indexOf(link.closest("ul"));
    try {
      const page = await fetched(address);
      // Going back keeps the step too; whoever leaves the page finds it again where it was.
      history.scrollRestoration = "manual";
      history.pushState(null, "", address);
      setInPlace(page, chosen());
      lists()[list].querySelector("[aria-current]")?.focus({ preventScroll: true });
    } catch {
      location.assign(link.href);
    }
  };

  document.addEventListener("click", (event) => {
    const link = event.target.closest("[data-choices] a");
    const elsewhere = event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
    if (!link || elsewhere || !isHosted) return;
    event.preventDefault();
    if (!link.ariaCurrent) choose(link);
  });

  addEventListener("pagehide", () => {
    history.scrollRestoration = "auto";
  });
  addEventListener("popstate", () => {
    if (location.pathname === shown || !chosen()) return;
    fetched(location.href).then(
      (page) => setInPlace(page, inReading("main [id^='step-'], main [id^='part-']") || chosen()),
      () => location.reload(),
    );
  });
}
