// Timers for the waiting times of steps: several at once, on every page of the site, and after a reload.
{
  const KEY = "timers";
  const HOUR_MS = 3600000;
  const rung = made("ul", { className: "rung" });
  const running = made("ul", {});
  const dock = made("aside", { className: "timers", ariaLabel: "Timers" }, running);
  const rows = new Map();
  let title = "";
  // Each {key, of, until, page, rings}; rings: times in ms at which it rings, the next one first.
  let timers = [];

  const read = () => {
    timers = [memory.read(KEY).timers || []].flat();
  };

  const change = (next) => {
    timers = next;
    memory.write(KEY, { timers });
    show();
  };

  // What is left of a timer: nothing, or its later ring.
  const answer = (key, rings) =>
    change(timers.flatMap((timer) => (timer.key !== key ? timer : rings.length ? { ...timer, rings } : [])));

  const rings = (timer) => timer.rings[0] <= Date.now();

  const told = ({ rings: [next, last] }) => {
    const left = Math.ceil((next - Date.now()) / 1000) * 1000;
    if (left > 0) return `${new Date(left).toISOString().slice(left < HOUR_MS ? 14 : 11, 19)} left`;
    const hour = new Date(next).toLocaleTimeString([], { hour: "numeric", minute: "2-digit" });
    return (last ? "Time to look" : "Time is up") + (left < -60000 ? `, since ${hour}` : "");
  };

  const button = (text, of, press) =>
    made("button", { type: "button", onclick: press }, text, made("span", { className: "unseen" }, `, ${of}`));

  const rowOf = ({ key, of, until, page, rings: [, ...later] }, isRinging) => {
    const row = made("li", {}, made("p", {}, made("a", { href: page }, of)), made("span", { className: "left" }));
    if (until) row.firstChild.append(made("span", { className: "until" }, ` until ${until}`));
    if (isRinging && later.length) row.append(button("A little longer", of, () => answer(key, later)));
    row.append(button(isRinging ? "Done" : "Stop", of, () => answer(key, [])));
    return row;
  };

  // A row stays as it is until its timer rings or ends, so that no focus is lost and nothing is told twice.
  const place = (timer) => {
    const isRinging = rings(timer);
    const name = [timer.key, timer.rings.length, isRinging].join(" ");
    if (!rows.has(name)) {
      rows.set(name, rowOf(timer, isRinging));
      (isRinging ? rung : running).append(rows.get(name));
    }
    const left = rows.get(name).querySelector(".left");
    if (left.textContent !== told(timer)) left.textContent = told(timer);
    return name;
  };

  const show = () => {
    for (const timer of timers) while (timer.rings[1] <= Date.now()) timer.rings.shift();
    const names = timers.map(place);
    const hadFocus = atHand.contains(document.activeElement);
    for (const [name, row] of rows) {
      if (names.includes(name)) continue;
      row.remove();
      rows.delete(name);
    }
    if (hadFocus && document.activeElement === document.body) {
      (atHand.querySelector("button") || document.querySelector("main")).focus();
    }
    dock.hidden = !running.children.length;
    const [first] = [...timers].sort((one, other) => one.rings[0] - other.rings[0]);
    document.title = first ? `${told(first)} · ${title}` : title;
    for (const start of document.querySelectorAll("[data-rings]")) {
      const timer = timers.find(({ key }) => key === start.dataset.timer);
      start.firstChild.data = timer ? told(timer) : start.dataset.words;
    }
    bell.ring(timers.filter(rings).length);
  };

  const begin = ({ timer: key, of, until, rings }) => {
    bell.wake();
    if (timers.some((timer) => timer.key === key)) return;
    const [page] = location.href.split("#");
    const ends = rings.split(" ").map((seconds) => Date.now() + seconds * 1000);
    change([...timers, { key, of, until, page: page + key.slice(key.indexOf("#")), rings: ends }]);
    say(`Timer started, ${of}`);
  };

  atHand.append(made("div", { role: "alert" }, rung), dock);
  read();
  onPage(() => {
    title = document.title;
    for (const start of document.querySelectorAll("[data-rings]")) {
      start.dataset.words = start.firstChild.data;
      start.hidden = false;
      start.onclick = () => begin(start.dataset);
    }
    show();
  });
  setInterval(show, 1000);
  for (const touch of ["pointerdown", "keydown"]) addEventListener(touch, () => timers.length && bell.wake());
  // What another tab of the site has changed meanwhile.
  for (const change of ["storage", "pageshow"]) {
    addEventListener(change, () => {
      read();
      show();
    });
  }
}
