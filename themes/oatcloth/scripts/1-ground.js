// What the other scripts share. Every page is whole without any of them; all that they keep stays on this device.
"use strict";

// A reader may have forbidden storage: then what is kept lasts as long as the page.
const memory = {
  read(key, place = "localStorage") {
    try {
      return JSON.parse(window[place].getItem(key)) || {};
    } catch {
      return {};
    }
  },
  write(key, value, place = "localStorage") {
    try {
      window[place].setItem(key, JSON.stringify(value));
    } catch {
      // The page itself still shows it.
    }
  },
};

// From a disk nothing can be fetched and no worker begun.
const isHosted = location.protocol.startsWith("http");

const words = (element) => element.textContent.replace(/\s+/g, " ").trim();

const made = (tag, properties, ...children) => {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
};

// What is being read: the last of them that begins above the middle of the window.
const inReading = (selector) =>
  [...document.querySelectorAll(selector)].findLast((each) => each.getBoundingClientRect().top < innerHeight / 2);

// What lies at the foot of the window, over every page.
const atHand = document.querySelector("[data-at-hand]");
const tellHeight = () => document.documentElement.style.setProperty("--at-hand", `${atHand.offsetHeight}px`);
new ResizeObserver(tellHeight).observe(atHand);

// Tells a reader who listens what has changed, when nothing else interrupts.
const said = made("p", { className: "unseen", role: "status" });
atHand.append(said);
const say = (text) => {
  said.textContent = text;
};

// Runs now, and again when another batch or edition of the recipe has taken the page's place.
const onPage = (begin) => {
  begin();
  document.addEventListener("page", begin);
};
