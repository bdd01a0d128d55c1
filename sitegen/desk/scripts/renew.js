/* Renews the parts of a page of the desk: as its form changes, and when something was saved. Everything that is
   shown was made by the server; here it is only fetched and set in the old one's place. */
{
  const WAIT_MS = 200;
  const form = document.querySelector("form[data-asks]");
  const said = document.getElementById("said");
  const lost = document.getElementById("lost");
  const kept = new Map();
  let running = null;
  let timer = 0;

  const address = () => {
    if (!form) return location.href;
    const url = new URL(form.action);
    for (const [name, words] of new FormData(form)) if (words.trim()) url.searchParams.set(name, words);
    return url.href;
  };

  const parts = page => [...page.querySelectorAll("[data-part]")];

  for (const part of parts(document)) kept.set(part.id, part.innerHTML);

  /* How to find what has the focus again in what will take its place: by what it says, or by its turn. */
  const finder = part => {
    const one = document.activeElement;
    if (!part.contains(one)) return null;
    const home = one.closest("[id]");
    const place = [...home.querySelectorAll(one.localName)].indexOf(one);
    return () => {
      const alike = [...document.getElementById(home.id)?.querySelectorAll(one.localName) ?? []];
      return alike.find(each => each.textContent === one.textContent) ?? alike[place] ?? part;
    };
  };

  const swap = (part, next) => {
    if (kept.get(part.id) === next.innerHTML) return;
    kept.set(part.id, next.innerHTML);
    const open = [...part.querySelectorAll("details[open]")].map(each => each.id);
    const find = finder(part);
    part.innerHTML = next.innerHTML;
    for (const each of part.querySelectorAll("details")) each.open = open.includes(each.id);
    if (!find) return;
    part.tabIndex = -1;
    find().focus({preventScroll: true});
  };

  /* As high as its page is once it is set in its own type. */
  const fit = async frame => {
    await frame.contentDocument?.fonts.ready;
    const page = frame.contentDocument?.documentElement;
    if (!page || frame.contentDocument.URL === "about:blank") return;
    frame.style.height = `${page.scrollHeight}px`;
    frame.parentNode.style.aspectRatio = `${frame.offsetWidth} / ${page.scrollHeight}`;
  };

  /* The old card stays until the new one is there. */
  const deal = (paper, next) => {
    if (paper.dataset.paper === next.dataset.paper && paper.dataset.mark === next.dataset.mark) return;
    Object.assign(paper.dataset, next.dataset);
    for (const frame of paper.querySelectorAll(".coming")) frame.remove();
    const old = paper.querySelector("iframe");
    const frame = old.cloneNode();
    frame.className = "coming";
    frame.src = paper.dataset.paper;
    frame.addEventListener("load", async () => {
      await fit(frame);
      frame.className = "";
      old.remove();
    }, {once: true});
    paper.append(frame);
  };

  const show = page => {
    const names = parts(document).map(part => part.id).join();
    const paper = document.getElementById("paper");
    const nextPaper = page.getElementById("paper");
    if (names !== parts(page).map(part => part.id).join() || !paper !== !nextPaper) return location.reload();
    for (const part of parts(document)) swap(part, page.getElementById(part.id));
    for (const control of form?.elements ?? []) {
      const next = control.id && page.getElementById(control.id);
      if (!next) continue;
      control.toggleAttribute("aria-invalid", false);
      if (next.ariaInvalid) control.setAttribute("aria-invalid", next.ariaInvalid);
    }
    if (paper) deal(paper, nextPaper);
    const text = page.getElementById("said")?.textContent ?? "";
    if (said && said.textContent !== text) said.textContent = text;
    document.title = page.title;
  };

  const renew = async () => {
    clearTimeout(timer);
    running?.abort();
    running = new AbortController();
    const url = address();
    try {
      const answer = await fetch(url, {signal: running.signal});
      const text = await answer.text();
      if (form) history.replaceState(null, "", url);
      show(new DOMParser().parseFromString(text, "text/html"));
    } catch (problem) {
      if (problem.name !== "AbortError" && !(problem instanceof TypeError)) throw problem;
    }
  };

  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(renew, WAIT_MS);
  };

  document.documentElement.classList.add("scripted");
  form?.addEventListener("input", soon);
  form?.addEventListener("submit", event => {
    event.preventDefault();
    renew();
  });

  for (const frame of document.querySelectorAll("#paper iframe")) {
    frame.addEventListener("load", () => fit(frame));
    fit(frame);
  }

  /* A browser keeps few connections to a host: a page that nobody sees gives its own back. */
  const newsAddress = new URL("../news", document.currentScript.src);
  let news = null;
  let isLate = false;

  const listen = () => {
    news = new EventSource(newsAddress);
    news.addEventListener("message", renew);
    news.addEventListener("open", () => {
      if (isLate) renew();
      isLate = false;
      if (lost) lost.textContent = "";
    });
    news.addEventListener("error", () => {
      isLate = true;
      if (lost) lost.textContent = lost.dataset.lost;
    });
  };

  document.addEventListener("visibilitychange", () => {
    news?.close();
    news = null;
    isLate = true;
    if (!document.hidden) listen();
  });

  if (!document.hidden) listen();
}
