// The place in the flowchart: a window on the page's own chart, with the way so far marked in it.
// The window is inert: its boxes are links, and neither a glove nor the Tab key shall meet them.
(function () {
  "use strict";

  window.pullcord = window.pullcord || {};

  // `figure` is the window's HTML; `chart` the page's flowchart.
  window.pullcord.makeWindow = function (figure, chart) {
    const svg = figure.querySelector("svg");
    svg.querySelector("use").setAttribute("href", "#" + chart.id);
    // The first step has two: where the chart begins, and its own.
    const nodeOf = (id) => [...chart.querySelectorAll(`a[href="#${id}"]`)].pop();
    const whole = chart.viewBox.baseVal;
    let here;

    function look() {
      if (!here || !figure.isConnected) return;
      const box = here.getBBox();
      const [width, height] = [svg.clientWidth, svg.clientHeight];
      const from = (middle, size, most) =>
        most < size ? (most - size) / 2 : Math.min(Math.max(middle - size / 2, 0), most - size);
      const left = from(box.x + box.width / 2, width, whole.width);
      const top = from(box.y + box.height / 2, height, whole.height);
      svg.setAttribute("viewBox", [left, top, width, height].join(" "));
    }

    window.addEventListener("resize", look);

    return {
      close() {
        chart.querySelectorAll(".pc-passed, .pc-now").forEach((node) => {
          node.classList.remove("pc-passed", "pc-now");
        });
        figure.remove();
        here = undefined;
      },
      open(section, passed) {
        here = nodeOf(section.id);
        if (!here) return;
        passed.map(nodeOf).forEach((node) => node && node.classList.add("pc-passed"));
        here.classList.add("pc-now");
        // A drawing of the plug says more than the chart.
        if (section.querySelector(".pc-plug")) return;
        // So does the meter, and its keys need the room: there the chart comes last.
        if (section.querySelector(".pc-pad")) section.append(figure);
        else section.querySelector(":scope > .pc-ask, :scope > .pc-ways").before(figure);
        look();
      },
    };
  };
})();
