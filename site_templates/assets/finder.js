// The finder: every sign becomes a button, and the procedures that fit are ranked as they are
// picked. The measure is that of `analysis/finder.py`; its weights stand in the page.
//
// The address holds what is picked, so that Back takes a pick back and a link can carry picks.
(function () {
  "use strict";

  const parts = document.getElementById("pc-finder-parts");
  if (!parts) return;
  const MOST_TELLING = 3;
  const page = document.querySelector(".pc-page--finder");
  const made = parts.content.cloneNode(true);
  const finds = made.querySelector(".pc-finds");
  const bar = made.querySelector(".pc-finder-bar");
  const told = bar.querySelector("[role=status]");
  const tell = finds.querySelector(".pc-tell");
  const list = finds.querySelector(".pc-finds__list");
  const cards = [...list.children];
  const signs = [...page.querySelectorAll(".pc-signs > li")].map((item) => ({
    id: item.id,
    words: item.querySelector("b").textContent,
    weight: Number(item.dataset.weight),
    names: item.dataset.names.split(" "),
    item,
  }));
  let picked = [];

  function toggleOf(sign) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "pc-toggle";
    button.dataset.sign = sign.id;
    button.textContent = sign.words;
    button.setAttribute("aria-pressed", String(picked.includes(sign)));
    return button;
  }

  function rank() {
    const matches = cards.map((card) => {
      const shares = picked.filter((sign) => sign.names.includes(card.dataset.name));
      const isUrgent = card.classList.contains("pc-find--urgent");
      const score = shares.reduce((sum, sign) => sum + sign.weight, 0);
      return { card, shares, score, isUrgent };
    }).filter((match) => match.shares.length);
    return matches.sort((one, other) => other.isUrgent - one.isUrgent ||
      other.score - one.score || other.shares.length - one.shares.length);
  }

  function telling(names) {
    const pairs = (sign) => {
      const having = sign.names.filter((name) => names.includes(name)).length;
      return having * (names.length - having);
    };
    return signs.filter((sign) => !picked.includes(sign) && pairs(sign))
      .sort((one, other) => pairs(other) - pairs(one) || other.weight - one.weight)
      .slice(0, MOST_TELLING);
  }

  function show() {
    const matches = rank();
    const asked = telling(matches.map(({ card }) => card.dataset.name));
    page.querySelectorAll(".pc-toggle").forEach((button) => {
      const isPicked = picked.some((sign) => sign.id === button.dataset.sign);
      button.setAttribute("aria-pressed", String(isPicked));
    });
    list.replaceChildren(...matches.map(({ card, shares }) => {
      const why = card.querySelector("small");
      const words = shares.map((sign) => sign.words).join(" · ");
      why.textContent = why.dataset.says.replace("{signs}", () => words);
      return card;
    }));
    tell.hidden = !asked.length;
    tell.querySelector(".pc-toggles").replaceChildren(...asked.map(toggleOf));
    finds.hidden = bar.hidden = !picked.length;
    const { one, some, nothing } = told.dataset;
    told.textContent = !picked.length ? nothing
      : matches.length === 1 ? one : some.replace("{count}", matches.length);
  }

  function read() {
    const ids = location.hash.slice(1).split("+");
    picked = signs.filter((sign) => ids.includes(sign.id));
    show();
  }

  function pick(ids) {
    const hash = ids.length ? "#" + ids.join("+") : "";
    history.pushState(null, "", location.href.split("#")[0] + hash);
    read();
  }

  function toggle(id) {
    const ids = picked.map((sign) => sign.id);
    pick(ids.includes(id) ? ids.filter((one) => one !== id) : [...ids, id]);
  }

  page.addEventListener("click", ({ target }) => {
    const button = target.closest("button");
    if (!button) return;
    const { sign, finder } = button.dataset;
    if (sign) {
      const isAsked = tell.contains(button);
      toggle(sign);
      // The button is gone: whoever works by keys goes on at the results.
      if (isAsked) finds.querySelector("h2").focus({ preventScroll: true });
    } else if (finder === "show") {
      finds.querySelector("h2").scrollIntoView();
      finds.querySelector("h2").focus({ preventScroll: true });
    } else if (finder === "clear") {
      pick([]);
      page.querySelector("h1").scrollIntoView();
    }
  });
  window.addEventListener("popstate", read);
  window.addEventListener("hashchange", read);

  signs.forEach((sign) => sign.item.querySelector("b").replaceWith(toggleOf(sign)));
  const says = page.querySelector(".pc-finder-says");
  says.textContent = says.dataset.pick;
  page.classList.add("pc-finding");
  [...page.querySelectorAll(".pc-sense")].pop().after(finds);
  page.querySelector(".pc-imprint").before(bar);
  read();
})();
