// What the other scripts share. Every page is whole without any of them; all that they keep stays on this device.
"use strict";

// A reader may have forbidden storage: then ticks last as long as the page.
const memory = {
  read(key) {
    try {
      return JSON.parse(localStorage.getItem(key)) || {};
    } catch {
      return {};
    }
  },
  write(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
    } catch {
      // The page itself still shows the tick.
    }
  },
};

const words = (element) => element.textContent.replace(/\s+/g, " ").trim();
