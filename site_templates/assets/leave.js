// Leaving a walk: what to see to at the machine, and the record as text, on paper and in a file.
(function () {
  "use strict";

  window.pullcord = window.pullcord || {};

  // `box` is the dialog, `paper` what is printed of it; the rest words and finds things.
  window.pullcord.makeLeave = function (box, paper, { data, say, titleOf, lineOf, records }) {
    const part = (name) => box.querySelector(name);
    const told = part(".pc-leave__kept");
    const text = part("textarea");

    function asText(record) {
      const { began, left, at } = records.last(record);
      const lines = (round) => round.answers.map((given, index) =>
        `${index + 1}. ${titleOf("step-" + given.step)}: ${lineOf(given)}`).join("\n");
      const head = [
        data.title, data.machine_title, say("began", { began }), say("revision", record),
      ];
      const end = say("left_at", { place: titleOf(records.idOf(at)), left });
      const blocks = [head.filter(Boolean).join("\n"), ...record.rounds.map(lines), end];
      return blocks.filter(Boolean).join("\n\n");
    }

    return {
      open(stops, record, isKept) {
        part(".pc-leave__list").replaceChildren(stops.cloneNode(true));
        told.textContent = say(isKept ? "kept" : "not_kept");
        text.value = asText(record);
        box.showModal();
        box.scrollTop = 0;
      },
      close: () => box.open && box.close(),
      print() {
        const words = document.createElement("pre");
        words.textContent = text.value;
        const [title, stops] = [part("h2"), part(".pc-leave__list")];
        paper.replaceChildren(title.cloneNode(true), stops.cloneNode(true), words);
        document.documentElement.classList.add("pc-print-list");
        print();
      },
      copy() {
        text.select();
        // The newer way is closed to pages that come from a folder.
        told.textContent = say(document.execCommand("copy") ? "copied" : "not_copied");
      },
    };
  };

  window.addEventListener("afterprint", () => {
    document.documentElement.classList.remove("pc-print-list");
  });
})();
