// Search: finds steps by the words typed, in index files that are loaded only when needed.
// The index files call pullcordSearch.start, .words and .places; they are scripts because a page
// opened from a folder may load nothing else. Text goes into the page as text, never as markup.
var pullcordSearch = (function () {
  "use strict";

  const script = document.currentScript;
  const folder = script && script.src ? script.src.replace(/[^/]*$/, "") : "";
  const root = folder ? folder.replace(/assets\/pullcord\/$/, "") : "";
  // The first hits are on the screen before the files of the others are read.
  const FIRST_HITS = 4, MOST_HITS = 20, MOST_WORDS = 100;
  const files = { words: {}, places: {} };
  const waiting = {};
  let index = null;

  function arrived(name) {
    waiting[name]?.tell();
    delete waiting[name];
  }

  // All who ask for a file meanwhile wait for the same, and are told the same when it is missing.
  function load(name) {
    if (waiting[name]) return waiting[name].file;
    const one = waiting[name] = {};
    one.file = new Promise((tell, fail) => {
      one.tell = tell;
      const element = document.createElement("script");
      element.src = folder + name;
      element.onerror = () => { delete waiting[name]; fail(new Error(name)); };
      document.head.append(element);
    });
    return one.file;
  }

  async function file(kind, number) {
    if (!files[kind][number]) await load(`search-${kind}-${number}.js`);
    return files[kind][number];
  }

  // The same words as `pages/search/words.py` makes of the pages.
  function wordsOf(text) {
    const folded = text.toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "");
    return (folded.match(/[\p{L}\p{N}]+/gu) || []).map((word) => word.slice(0, 40));
  }

  // How much each place counts for the words that begin with `typed`; those in full count double.
  // A single letter begins too many words: it is only looked up as it stands.
  async function weightsOf(typed) {
    const first = index.first, weights = new Uint16Array(index.count);
    let number = 0;
    while (number + 1 < first.length && first[number + 1] <= typed) number += 1;
    for (let met = 0; number < first.length; number += 1) {
      for (const entry of await file("words", number)) {
        if (entry.word < typed) continue;
        const isWhole = entry.word === typed;
        if (!isWhole && (typed.length < 2 || !entry.word.startsWith(typed))) return weights;
        if ((met += 1) > MOST_WORDS) return weights;
        addPlaces(weights, entry, isWhole ? 2 : 1);
      }
    }
    return weights;
  }

  function addPlaces(weights, entry, factor) {
    entry.places = entry.places || readPlaces(entry.line);
    const places = entry.places;
    for (let at = 0; at < places.length; at += 2) {
      const weight = factor * places[at + 1];
      if (weight > weights[places[at]]) weights[places[at]] = weight;
    }
  }

  function readPlaces(line) {
    const items = line.split(","), places = new Uint32Array(2 * items.length);
    let place = 0;
    items.forEach((item, number) => {
      const dot = item.indexOf(".");
      place += parseInt(item.slice(0, dot), 36);
      places[2 * number] = place;
      places[2 * number + 1] = parseInt(item.slice(dot + 1), 36);
    });
    return places;
  }

  // The places that hold every word typed, best first.
  async function find(text) {
    if (!index) await load("search-index.js");
    const words = [...new Set(wordsOf(text))];
    return best(await Promise.all(words.map(weightsOf)));
  }

  // What is shown of some places.
  function hitsAt(places) {
    return Promise.all(places.map(async (place) => {
      const at = Math.floor(place / index.places);
      return (await file("places", at))[place - at * index.places].split("\t");
    }));
  }

  // The places that count most for all words together. A common word stands in too many to sort.
  function best(each) {
    const byTotal = [];
    for (let place = 0; each.length && place < index.count; place += 1) {
      let total = 0;
      for (const weights of each) {
        if (!weights[place]) { total = 0; break; }
        total += weights[place];
      }
      if (total) (byTotal[total] = byTotal[total] || []).push(place);
    }
    return byTotal.reverse().flat().slice(0, MOST_HITS);
  }

  function element(name, className, text) {
    const made = document.createElement(name);
    made.className = className;
    if (text) made.textContent = text;
    return made;
  }

  function linesOf(hits) {
    return hits.map(([href, title, under, text]) => {
      const item = element("li", "pc-hit"), link = element("a", "pc-hit-link");
      link.href = root + href;
      link.append(element("strong", "pc-hit-title", title), element("span", "pc-hit-under", under),
        element("span", "pc-hit-text", text));
      item.append(link);
      return item;
    });
  }

  function build(place) {
    const form = element("form", "pc-search"), input = element("input", "pc-search-field");
    const panel = element("div", "pc-search-panel"), list = element("ol", "pc-hits");
    const note = element("p", "pc-search-note");
    form.setAttribute("role", "search");
    Object.assign(input, { type: "search", placeholder: "Search", autocomplete: "off" });
    input.setAttribute("aria-label", "Search all procedures");
    input.setAttribute("enterkeyhint", "search");
    note.setAttribute("role", "status");
    panel.hidden = true;
    panel.append(note, list);
    form.append(input, panel);
    place.append(form);
    return { form, input, panel, list, note };
  }

  function connect({ form, input, panel, list, note }) {
    let turn = 0;
    async function look() {
      const mine = (turn += 1), typed = input.value.trim();
      let isShown = false;
      if (!typed) { panel.hidden = true; return; }
      try {
        const places = await find(typed);
        const first = linesOf(await hitsAt(places.slice(0, FIRST_HITS)));
        if (mine !== turn) return;
        note.textContent = first.length ? "" : "Nothing found. Try fewer or other words.";
        list.replaceChildren(...first);
        panel.hidden = false;
        isShown = true;
        await new Promise((tell) => requestAnimationFrame(() => setTimeout(tell)));
        const others = linesOf(await hitsAt(places.slice(FIRST_HITS)));
        if (mine === turn) list.append(...others);
      } catch (error) {
        if (mine !== turn) return;
        panel.hidden = false;
        if (!isShown) list.replaceChildren();
        note.textContent = "The search index could not be read. Copy the whole folder again.";
      }
    }
    function close() { panel.hidden = true; input.blur(); }
    function move(by) {
      const links = [input, ...list.querySelectorAll("a")];
      const next = links[links.indexOf(document.activeElement) + by];
      if (next) next.focus();
    }
    input.addEventListener("input", look);
    input.addEventListener("focus", () => { if (panel.hidden) look(); });
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const best = list.querySelector("a");
      if (best) { close(); location.href = best.href; }
    });
    list.addEventListener("click", (event) => { if (event.target.closest("a")) close(); });
    form.addEventListener("keydown", (event) => {
      const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
      if (by) { event.preventDefault(); move(by); }
      if (event.key === "Escape") close();
    });
    document.addEventListener("keydown", (event) => {
      const typing = event.target.closest("input, textarea, select, [contenteditable]");
      if (event.key === "/" && !typing) { event.preventDefault(); input.focus(); }
    });
    document.addEventListener("pointerdown", (event) => {
      if (!form.contains(event.target)) panel.hidden = true;
    });
  }

  function begin() {
    const place = document.querySelector("[data-pc-search], .md-header__inner");
    if (place) connect(build(place));
  }
  document.addEventListener("DOMContentLoaded", begin);

  return {
    start(value) { index = value; arrived("search-index.js"); },
    words(number, text) {
      files.words[number] = text.split("\n").map((both) => {
        const [word, line] = both.split(" ");
        return { word, line };
      });
      arrived(`search-words-${number}.js`);
    },
    places(number, text) {
      files.places[number] = text.split("\n");
      arrived(`search-places-${number}.js`);
    },
  };
})();
