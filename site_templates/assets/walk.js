// The guided walk: one section of the page fills the screen.
//
// The address says where one is: an answer is a link as it is without scripts, and Back goes back
// one step. Each entry of the browser's history carries the record as it was there, so that it
// outlives a reload where the browser keeps nothing else.
(function () {
  "use strict";

  const source = document.getElementById("pc-walk-data");
  if (!source) return;
  const data = JSON.parse(source.textContent);
  const { records, makePad, makeWindow } = window.pullcord;
  const root = document.documentElement;
  const page = document.querySelector(".pc-page");
  const parts = document.getElementById("pc-walk-parts").content.cloneNode(true);
  const [offer, top, bar, pad, view, leave, paper] =
    ["offer", "walk-top", "walk-bar", "pad", "walk-place", "leave", "paper"]
      .map((name) => parts.querySelector(".pc-" + name));
  const $ = (name) => page.querySelector(".pc-" + name);
  const numbers = makePad(pad, data, say, records);
  const around = makeWindow(view, page.querySelector("svg.pc-chart"));

  let here = null; // the section on the screen; null when nobody walks
  let record = null;
  let taken = null; // the answer just tapped

  function say(key, given = {}) {
    const pattern = data.words[key] || "";
    return pattern.replace(/\{(\w+)\}/g, (_, name) => given[name] ?? "");
  }

  const sectionAt = (id) => {
    const target = document.getElementById(id);
    return target && target.closest(".pc-step, #before, #done");
  };
  const titleOf = (id) => {
    const heading = sectionAt(id)?.querySelector("h2, h3");
    return heading ? heading.textContent.trim().replace(/\s+/g, " ") : id;
  };
  const passed = () => records.last(record).answers.map((given) => "step-" + given.step);

  function lineOf(given) {
    const place = data.places["step-" + given.step];
    const answer = place && place.answers.find((one) => one.key === given.answer);
    const said = answer ? answer.said : given.answer;
    return said + (given.reading ? " (" + given.reading + ")" : "");
  }

  function asText() {
    const { began, left, at } = records.last(record);
    const rounds = record.rounds.map((round) => round.answers.map((given, index) =>
      `${index + 1}. ${titleOf("step-" + given.step)}: ${lineOf(given)}`).join("\n"));
    const where = say("left_at", { place: titleOf(records.idOf(at)), left });
    const head = [data.title, data.machine_title, say("began", { began }), say("revision", record)];
    return [head.filter(Boolean).join("\n"), ...rounds, where].filter(Boolean).join("\n\n");
  }

  // The record one section further: an answer more, some taken back, or round again for the proof.
  function goneTo(to) {
    const { answers } = records.last(record);
    const before = answers.findIndex((given) => "step-" + given.step === to);
    const isAgain = here.id.startsWith("cause-") && to === data.start;
    if (isAgain) return records.begin(data, record);
    const at = { at: records.placeOf(to === "before" ? data.start : to) };
    if (taken && taken.from === here.id && taken.to === to) {
      return records.withLast(record, { ...at, answers: [...answers, taken.given] });
    }
    return records.withLast(record, before < 0 ? at : { ...at, answers: answers.slice(0, before) });
  }

  function moved() {
    const section = sectionAt(location.hash.slice(1));
    const state = history.state?.pullcord;
    if (!section || (!state && !here)) return stop();
    record = state || goneTo(section.id);
    taken = null;
    history.replaceState({ pullcord: record }, "");
    const isLost = !here && passed().length > 0 && !records.read(data);
    return show(section, isLost ? say("lost") : "");
  }

  function enter(id, given) {
    history.pushState({ pullcord: given }, "", "#" + id);
  }

  function keep() {
    const { answers, left, at } = records.last(record);
    const place = titleOf(records.idOf(at));
    const home = new URL(data.home, location.href).href;
    const title = [data.title, data.machine_title].filter(Boolean).join(": ");
    const says = say("left_off", { place, left, count: answers.length });
    return records.write(data, { record, title, says, home, page: data.page });
  }

  function show(section, note) {
    stop();
    here = section;
    here.classList.add("pc-here");
    root.classList.add("pc-walking");
    const place = data.places[here.id];
    if (place?.reading) numbers.open(here, place);
    around.open(here, passed());
    const isKept = here.id === "before" || keep();
    tell(place, isKept ? note : say("not_kept"));
    const heading = here.querySelector("h2, h3");
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
    scrollTo(0, 0);
  }

  function tell(place, note) {
    const causes = place ? place.causes : [];
    const { answers } = records.last(record);
    $("walk-left").textContent = place ? place.left : "";
    $("walk-note").textContent = note;
    $("walk-causes").hidden = !causes.length;
    $("walk-causes").open = false;
    $("walk-trail").open = false;
    $("walk-causes").firstElementChild.textContent = say("causes", { count: causes.length });
    list($("walk-causes"), causes.map(([index, percent]) =>
      say(percent ? "cause" : "cause_rare", { title: data.causes[index], percent })));
    $("walk-trail").firstElementChild.textContent = say("trail", { count: answers.length });
    list($("walk-trail"), answers.map((given) => {
      const link = document.createElement("a");
      link.href = "#step-" + given.step;
      link.textContent = titleOf("step-" + given.step) + ": ";
      link.append(Object.assign(document.createElement("b"), { textContent: lineOf(given) }));
      return link;
    }));
  }

  function list(box, items) {
    box.lastElementChild.replaceChildren(...items.map((item) => {
      const line = document.createElement("li");
      line.append(item);
      return line;
    }));
  }

  function stop() {
    if (here) {
      numbers.close();
      around.close();
      here.classList.remove("pc-here");
    }
    here = null;
    root.classList.remove("pc-walking");
    const left = records.read(data);
    const found = left && records.follow(data, left);
    const line = found && say("left_off", {
      place: titleOf(found.at), left: records.last(left).left, count: records.last(left).answers.length,
    });
    offer.querySelector(".pc-offer__left").hidden = !found;
    offer.querySelector(".pc-offer__left").textContent =
      found ? line + (found.isSame ? "" : " " + say("changed")) : "";
    const [on, start] = offer.querySelectorAll(".pc-way");
    on.hidden = !found;
    on.href = found ? "#" + found.at : "";
    start.firstElementChild.textContent = say(found ? "again" : "start");
  }

  // One entry of the history a step, so that Back goes back one step, as if one had walked here.
  function goOn(given, note = "") {
    const found = records.follow(data, given);
    const { answers } = records.last(found.record);
    enter("before", records.withLast(found.record, { answers: [], at: records.placeOf(data.start) }));
    answers.forEach((one, index) => enter("step-" + one.step, records.withLast(found.record, {
      answers: answers.slice(0, index), at: "step " + one.step,
    })));
    enter(found.at, found.record);
    record = found.record;
    show(sectionAt(found.at), found.isSame ? note : say("changed"));
  }

  async function load(input) {
    const given = await records.readFile(input.files[0]);
    input.value = "";
    const isOurs = given && given.walk === data.procedure && (given.machine || "") === data.machine;
    if (leave.open) leave.close();
    if (isOurs) return goOn(given, say("loaded"));
    const note = given ? say("other_walk", { walk: given.walk, machine: given.machine || "" })
      : say("no_record");
    (here ? $("walk-note") : $("offer__note")).textContent = note;
    return undefined;
  }

  function ask() {
    const stops = here.querySelector(".pc-stop ul") || page.querySelector("#walk-away + aside ul");
    leave.querySelector(".pc-leave__list").replaceChildren(stops.cloneNode(true));
    leave.querySelector(".pc-leave__kept").textContent = say(keep() ? "kept" : "not_kept");
    leave.querySelector("textarea").value = asText();
    leave.showModal();
    leave.scrollTop = 0;
  }

  function printList() {
    const stops = leave.querySelector(".pc-leave__list").cloneNode(true);
    const words = Object.assign(document.createElement("pre"), { textContent: asText() });
    paper.replaceChildren(leave.querySelector("h2").cloneNode(true), stops, words);
    root.classList.add("pc-print-list");
    print();
  }

  function copy() {
    const text = leave.querySelector("textarea");
    text.select();
    // The newer way is closed to pages that come from a folder.
    leave.querySelector(".pc-leave__kept").textContent =
      say(document.execCommand("copy") ? "copied" : "not_copied");
  }

  const deeds = {
    start: () => {
      record = records.begin(data, records.read(data));
      enter("before", record);
      show(sectionAt("before"), "");
    },
    on: () => goOn(records.read(data)),
    back: () => history.back(),
    end: () => {
      const section = here;
      history.replaceState(null, "");
      stop();
      section.scrollIntoView();
    },
    ask,
    save: () => records.saveFile(record),
    print: printList,
    copy,
    close: () => leave.close(),
  };

  page.addEventListener("click", (event) => {
    const deed = event.target.closest("[data-deed]");
    if (deed) {
      event.preventDefault();
      deeds[deed.dataset.deed]();
      return;
    }
    const way = here && event.target.closest(".pc-here > .pc-ways > .pc-way");
    const answer = way && data.places[here.id]?.answers[[...way.parentNode.children].indexOf(way)];
    if (!answer) return;
    const reading = numbers.read();
    const given = { step: here.id.slice(5), answer: answer.key, ...(reading && { reading }), when: records.now() };
    taken = { from: here.id, to: answer.to, given };
    if (!document.getElementById(answer.to)) {
      record = goneTo(answer.to); // to another procedure's page
      keep();
    }
  });
  page.addEventListener("change", ({ target }) => target.type === "file" && load(target));
  window.addEventListener("popstate", moved);
  window.addEventListener("hashchange", moved);
  window.addEventListener("afterprint", () => root.classList.remove("pc-print-list"));

  page.prepend(top);
  page.append(bar, leave, paper);
  [...page.querySelectorAll(".pc-symptom")].pop().after(offer);
  moved();
})();
