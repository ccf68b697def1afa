// The place in the flowchart: a window that shows the boxes around one, those passed marked.
//
// The window is inert: its boxes are links, and neither a glove nor the Tab key shall meet them.
(function () {
  "use strict";

  // Small enough for the box before and the box after to be seen as well.
  const SCALE = 0.8;

  window.pullcord = window.pullcord || {};

  // Where a box or an arrow lies, read from its first path. Asking the browser would make it lay out
  // the whole chart, which is the dearest thing on the page and need not be shown in a walk.
  function boxOf(part) {
    const path = part.querySelector("path").getAttribute("d").replace(/A\S+ \S+ 0 0 1 /g, " ");
    const numbers = path.match(/-?[\d.]+/g).map(Number);
    const [across, down] = [0, 1].map((odd) => numbers.filter((_, place) => place % 2 === odd));
    const [x, y] = [Math.min(...across), Math.min(...down)];
    return { x, y, width: Math.max(...across) - x, height: Math.max(...down) - y };
  }

  // `figure` is the window's HTML; `chart` the page's flowchart.
  window.pullcord.makeWindow = function (figure, chart) {
    const svg = figure.querySelector("svg");
    const whole = chart.viewBox.baseVal;
    const parts = [...chart.querySelectorAll(".pc-edge, .pc-node")].map((part) => ({
      part, box: boxOf(part), to: part.getAttribute("href"),
    }));
    // The window's size in the chart's units. Asking for it makes the browser lay out the page, so it
    // is asked once for steps, which may have two columns, and once for all else.
    let sizes = {};
    let here, passed, kind;

    // The window's edge that keeps its middle in sight and shows nothing beside the chart.
    const edge = (middle, size, most) =>
      most < size ? (most - size) / 2 : Math.min(Math.max(middle - size / 2, 0), most - size);

    function draw() {
      if (!here || !figure.isConnected) return;
      const { x, y, width, height } = here.box;
      sizes[kind] = sizes[kind] || [svg.clientWidth / SCALE, svg.clientHeight / SCALE];
      const [across, down] = sizes[kind];
      const left = edge(x + width / 2, across, whole.width);
      const top = edge(y + height / 2, down, whole.height);
      const isSeen = ({ box }) => box.x < left + across && box.x + box.width > left &&
        box.y < top + down && box.y + box.height > top;
      svg.setAttribute("viewBox", [left, top, across, down].join(" "));
      svg.replaceChildren(...parts.filter(isSeen).map((one) => {
        const copy = one.part.cloneNode(true);
        copy.removeAttribute("id");
        copy.classList.toggle("pc-now", one === here);
        copy.classList.toggle("pc-passed", passed.includes(one.to));
        return copy;
      }));
    }

    window.addEventListener("resize", () => {
      sizes = {};
      draw();
    });

    return {
      close: () => figure.remove(),
      open(section, ids) {
        // The first step has two boxes: where the chart begins, and its own.
        here = parts.filter((one) => one.to === "#" + section.id).pop();
        kind = section.matches(".pc-step") ? "step" : "other";
        passed = ids.map((id) => "#" + id);
        // A drawing of the plug says more than the chart.
        if (!here || section.querySelector(".pc-plug")) return;
        // So does the meter, and its keys need the room: there the chart comes last.
        if (section.querySelector(".pc-pad")) section.append(figure);
        else section.querySelector(":scope > .pc-ask, :scope > .pc-ways").before(figure);
        draw();
      },
    };
  };
})();
