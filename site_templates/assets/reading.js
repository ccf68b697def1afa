// The number pad of a reading, and what a number proves.
(function () {
  "use strict";

  const OVER = /^(ol|o\.l\.?|open)$/i;
  const AMOUNT = /^(-?(?:\d+\.?\d*|\.\d+))\s*(\S.*)?$/;

  // What was typed: a number in base units, its words for the record, or what is missing.
  function parse(text, units) {
    const typed = text.trim().replace(",", ".").replace("\u2212", "-");
    if (OVER.test(typed)) return { value: Infinity, said: "OL" };
    const [, number, named] = AMOUNT.exec(typed) || [];
    const only = units.length === 1 ? units[0] : undefined;
    const unit = units.find((one) => named === one.name || named === one.key) || (!named && only);
    if (!number || !unit) return { lacks: number ? "unit" : "number" };
    // Twelve digits: 4.35 kohm are 4350 ohm, and not a hair less.
    const value = Number((Number(number) * unit.factor + unit.offset).toPrecision(12));
    return { value, said: number + " " + unit.name };
  }

  function judge(reading, row, value) {
    if (value < 0 && !reading.is_signed) return { kind: "minus" };
    const isIn = (band) => value < (band.end ?? Infinity) ||
      (band.holds_end && value === (band.end ?? Infinity));
    return row.bands.find(isIn) || { kind: "unknown" };
  }

  function button(text, key) {
    const made = document.createElement("button");
    made.type = "button";
    made.textContent = text;
    made.dataset.key = key;
    return made;
  }

  window.pullcord = window.pullcord || {};

  // `box` is the pad's HTML; `say` words a sentence.
  window.pullcord.makePad = function (box, data, say, records) {
    const part = (name) => box.querySelector(".pc-pad__" + name);
    const [shown, units, verdict, shop] = ["shown", "units", "verdict", "shop"].map(part);
    let section, place, row;

    const ways = () => [...section.querySelectorAll(":scope > .pc-ways > .pc-way")];
    const unitsHere = () => data.units[place.reading.quantity];
    const typed = () => parse(shown.value, unitsHere());

    function press(key) {
      const [, number, unit] = /^(OL|[-.\d]*)\s*(.*)$/.exec(shown.value);
      const isOver = OVER.test(number);
      if (key === "over") shown.value = "OL";
      else if (key === "rub") shown.value = isOver ? "" : (number.slice(0, -1) + " " + unit).trim();
      else if (key.startsWith("unit ")) shown.value = (isOver ? "" : number) + " " + key.slice(5);
      else shown.value = ((isOver ? "" : number) + key + " " + unit).trim();
      tell();
    }

    function tell() {
      const { value, said, lacks } = typed();
      const band = lacks ? { kind: lacks } : judge(place.reading, row, value);
      const fitting = (band.answers || []).map((index) => place.answers[index].said);
      const given = { ...band, reading: said, said: fitting.join(` ${say("or")} `) };
      const lines = [say("is_" + band.kind, given), say("then_" + band.kind, given)];
      if (value === Infinity) lines.push(say("over"));
      verdict.dataset.kind = band.kind;
      verdict.replaceChildren(...lines.filter(Boolean).map((line, index) => {
        const made = document.createElement(index ? "span" : "b");
        made.textContent = line;
        return made;
      }));
      mark(band.kind === "close" ? [] : band.answers || []);
    }

    function mark(fitting) {
      ways().forEach((way, index) => {
        way.classList.toggle("pc-fits", fitting.includes(index));
        way.dataset.fits = fitting.includes(index) ? say("fits") : "";
      });
    }

    // Limits of a copper coil go with the warmth of the shop, on the answers' links too.
    function choose(celsius) {
      const { rows } = place.reading;
      row = rows.find((one) => one.celsius === celsius) || rows[0];
      shop.hidden = rows.length === 1;
      shop.querySelectorAll("button").forEach((key) => {
        key.setAttribute("aria-pressed", String(Number(key.dataset.key) === row.celsius));
      });
      part("limits").textContent = say("limits_at", row);
      ways().forEach((way, index) => {
        const band = row.bands.find((one) => String(one.answers) === String(index));
        const shows = way.querySelector(".pc-way__shows");
        if (shows) shows.textContent = band ? ": " + band.shows : "";
      });
      tell();
    }

    box.addEventListener("click", ({ target }) => {
      if (!target.dataset.key) return;
      if (shop.contains(target)) {
        records.writeWarmth(Number(target.dataset.key));
        choose(Number(target.dataset.key));
      } else press(target.dataset.key);
    });
    shown.addEventListener("input", tell);

    return {
      close() {
        if (section) choose(null);
        box.remove();
        section = undefined;
      },
      open(where, what) {
        section = where;
        place = what;
        shown.value = "";
        units.replaceChildren(...unitsHere().map((one) => button(one.key, "unit " + one.name)));
        const rows = [...place.reading.rows].sort((one, other) => one.celsius - other.celsius);
        shop.querySelector("div").replaceChildren(...rows.map((one) =>
          button(say("celsius", one).replace("-", "\u2212"), one.celsius)));
        section.querySelector(":scope > .pc-ask, :scope > .pc-ways").before(box);
        choose(records.readWarmth());
      },
      read: () => (section && typed().said) || "",
    };
  };
})();
