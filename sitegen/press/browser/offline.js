// Keeps what a reader has opened, so that it opens again with no signal (W3C Service Workers).
// Pages and cards: what the host says, else the kept copy. Files that bear a hash in their name: the kept copy first.
// PUBLISHED, which the press writes above: version, address of the school, and what every device keeps.
"use strict";

// How many of each kind a device keeps, the newest.
const LIMITS = { pages: 120, cards: 8, pictures: 400, theme: 60 };
const WAIT_MS = 3000;
// Only what this tree publishes is touched: another tree may lie below the same folder.
const KINDS = [
  ["theme", /^theme\/.+-[0-9a-f]{16}\.\w+$|^not-kept\.html$/],
  ["pictures", /^pictures\/[0-9a-f]{16}-\d+\.\w+$/],
  ["cards", /^cards\/.+\.pdf$/],
  ["pages", /^(contents\.html|bundles\/index\.html|(recipes|tutorials|tags)\/.*)?$/],
];
const NOT_KEPT = "not-kept.html";

const root = self.registration.scope;
const cacheOf = (kind) => `${root} ${kind}${kind === "pages" ? ` ${PUBLISHED.version}` : ""}`;
const isOurs = (name) => name.startsWith(`${root} `);
const open = (kind) => caches.open(cacheOf(kind));

// Path below the root as the press writes it, '' for the front page, null outside; hosts drop 'index' and '.html'.
const pathOf = (address) => {
  const place = new URL(address);
  const whole = place.origin + place.pathname;
  if (!whole.startsWith(root)) return null;
  return whole.slice(root.length).replace(/(^|\/)index(\.html)?$/, "$1").replace(/(^|\/)([^/.]+)$/, "$1$2.html");
};
const kindOf = (path) => path !== null && KINDS.find(([, pattern]) => pattern.test(path))?.[0];

const find = async (path) => (await open(kindOf(path))).match(root + path, { ignoreVary: true });

const keep = async (path, answer) => {
  const kind = kindOf(path);
  const cache = await open(kind);
  // An answer that came by a detour would be refused for a page: what it holds is kept.
  const { status, statusText, headers } = answer;
  await cache.put(root + path, new Response(await answer.blob(), { status, statusText, headers }));
  const kept = await cache.keys();
  await Promise.all(kept.slice(0, -LIMITS[kind]).map((oldest) => cache.delete(oldest)));
};

const forget = async (path) => (await open(kindOf(path))).delete(root + path);

const forgetAll = async () => {
  const names = await caches.keys();
  await Promise.all(names.filter(isOurs).map((name) => caches.delete(name)));
};

// What the host says, and what follows from it for the kept copy. A log-in page under this address is not the page.
const ask = async (event, path, request) => {
  const answer = await fetch(request);
  const isIt = answer.status === 200 && pathOf(answer.url) === path;
  // Where the device is full, the page is shown all the same.
  if (isIt) event.waitUntil(keep(path, answer.clone()).catch(() => {}));
  if ([404, 410].includes(answer.status)) event.waitUntil(forget(path));
  if ([401, 403].includes(answer.status)) event.waitUntil(forgetAll());
  return answer;
};

// Recipes and techniques by the title that a page gives to a shared link, which is escaped there.
const listOfKept = async () => {
  const cache = await open("pages");
  const kept = (await cache.keys()).filter((each) => /^(recipes|tutorials)\/[^/]+$/.test(pathOf(each.url)));
  const lines = kept.reverse().map(async (each) => {
    const title = /property="og:title" content="([^"]+)"/.exec(await (await cache.match(each)).text());
    return title ? `<li><a href="${each.url}">${title[1]}</a></li>` : "";
  });
  return (await Promise.all(lines)).join("\n");
};

// The page has full addresses, since it answers at any depth: they lead to where this tree is served.
const notKept = async () => {
  const page = await find(NOT_KEPT);
  if (!page) return Response.error();
  const text = (await page.text()).replaceAll(PUBLISHED.address, root).replace("<!-- kept -->", await listOfKept());
  return new Response(text, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
};

const page = async (event, path) => {
  const asked = ask(event, path, event.request);
  event.waitUntil(asked.catch(() => null));
  const kept = await find(path);
  if (!kept) return asked.catch(() => (kindOf(path) === "pages" ? notKept() : Response.error()));
  const late = new Promise((resolve) => setTimeout(resolve, WAIT_MS, kept));
  return Promise.race([asked.then((answer) => (answer.status < 500 ? answer : kept), () => kept), late]);
};

// A phone that was turned asks for a picture in another width: with no signal, any cut of it will do.
const anotherCut = async (path) => {
  const cache = await open("pictures");
  const start = root + path.replace(/-\d+\.\w+$/, "-");
  const cut = (await cache.keys()).find((each) => each.url.startsWith(start));
  return cut ? cache.match(cut) : Response.error();
};

const file = async (event, path) => {
  const kept = await find(path);
  return kept || ask(event, path, event.request).catch(() => anotherCut(path));
};

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const path = pathOf(request.url);
  const kind = kindOf(path);
  if (request.method !== "GET" || !kind || request.headers.has("range")) return;
  event.respondWith(kind === "theme" || kind === "pictures" ? file(event, path) : page(event, path));
});

// Every page that an older version kept is fetched anew, so that a correction reaches the copies too. What
// cannot be fetched now stays as it is.
const renew = async (event) => {
  const older = (await caches.keys()).filter((name) => name.startsWith(`${root} pages `) && name !== cacheOf("pages"));
  for (const name of older) {
    const cache = await caches.open(name);
    for (const each of await cache.keys()) {
      const path = pathOf(each.url);
      const answer = await ask(event, path, new Request(each.url, { cache: "no-cache" })).catch(() => null);
      if (!answer || answer.status >= 500) await keep(path, await cache.match(each));
    }
  }
};

const install = async (event) => {
  for (const path of PUBLISHED.everywhere) {
    if (path !== NOT_KEPT && kindOf(path) === "theme" && (await find(path))) continue;
    const answer = await fetch(root + path, { cache: "no-cache" });
    if (answer.status !== 200) throw new Error(`${path}: ${answer.status}`);
    await keep(path, answer);
  }
  await renew(event);
  await self.skipWaiting();
};

const activate = async () => {
  const current = Object.keys(LIMITS).map(cacheOf);
  const names = await caches.keys();
  await Promise.all(names.filter((name) => isOurs(name) && !current.includes(name)).map((name) => caches.delete(name)));
  await self.clients.claim();
};

self.addEventListener("install", (event) => event.waitUntil(install(event)));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
