// The guided walk: one section of the page fills the screen.
//
// The address says where one is: an answer is a link as it is without scripts, and Back goes back
// one step. Each entry of the browser's history carries the record as it was there, so that it
// outlives a reload where the browser keeps nothing else.
(function () {
  "use strict";

  const source = document.getElementById("pc-walk-data");
  // A browser too old for dialogs shows the page as it is without scripts.
  if (!source || !window.HTMLDialogElement) return;
  const data = JSON.parse(source.textContent);
  const { records, makePad, makeWindow, makeLeave } = window.pullcord;
  const root = document.documentElement;
  const page = document.querySelector(".pc-page");
  const parts = document.getElementById("pc-walk-parts").content.cloneNode(true);
  const [offer, top, bar, pad, view, leave, paper] =
    ["offer", "walk-top", "walk-bar", "pad", "walk-place", "leave", "paper"]
      .map((name) => parts.querySelector(".pc-" + name));
  const $ = (name) => page.querySelector(".pc-" + name);
  const numbers = makePad(pad, data, say, records);
  const around = makeWindow(view, page.querySelector("svg.pc-chart"));
  const leaving = makeLeave(leave, paper, { data, say, titleOf, lineOf, records });

  let here = null; // the section on the screen; null when nobody walks
  let record = null;

  function say(key, given = {}) {
    const pattern = data.words[key] || "";
    return pattern.replace(/\{(\w+)\}/g, (_, name) => given[name] ?? "");
  }

  function sectionAt(id) {
    const target = document.getElementById(id);
    return target && target.closest(".pc-step, #before, #done");
  }

  function titleOf(id) {
    const heading = sectionAt(id)?.querySelector("h2, h3");
    return heading ? heading.textContent.trim().replace(/\s+/g, " ") : records.placeOf(id);
  }

  function lineOf(given) {
    const answers = data.places["step-" + given.step]?.answers || [];
    const answer = answers.find((one) => one.key === given.answer);
    return (answer ? answer.said : given.answer) + (given.reading ? ` (${given.reading})` : "");
  }

  function leftOff({ answers, left, at }) {
    return say("left_off", { place: titleOf(records.idOf(at)), left, count: answers.length });
  }

  // The record one section further: an answer more, some taken back, or round again for the proof.
  function goneTo(id, given) {
    const { answers } = records.last(record);
    const earlier = answers.findIndex((given) => "step-" + given.step === id);
    if (here.id.startsWith("cause-") && id === data.start) return records.begin(data, record);
    const at = records.placeOf(id === "before" ? data.start : id);
    if (given) return records.withLast(record, { at, answers: [...answers, given] });
    const left = earlier < 0 ? answers : answers.slice(0, earlier);
    return records.withLast(record, { at, answers: left });
  }

  function moved() {
    const section = sectionAt(location.hash.slice(1));
    const state = history.state?.pullcord;
    if (!section || (!state && !here)) return stop();
    // A browser tells of one move twice, and in between it goes to the section by itself.
    const isTold = section === here && JSON.stringify(state) === JSON.stringify(record);
    if (isTold) return face();
    record = state || goneTo(section.id);
    history.replaceState({ pullcord: record }, "");
    const isLost = !here && records.last(record).answers.length > 0 && !records.read(data);
    return show(section, isLost ? say("lost") : "");
  }

  function enter(id, given) {
    record = given;
    history.pushState({ pullcord: record }, "", "#" + id);
  }

  // The browser's own way to a section scrolls to it first and tells of it twice, which makes a tap
  // slower on a slow tablet.
  function answerWith(id, given) {
    enter(id, goneTo(id, given));
    show(sectionAt(id), "");
  }

  // What is kept besides the record is for the home page.
  function keep() {
    const title = [data.title, data.machine_title].filter(Boolean).join(": ");
    const home = new URL(data.home, location.href).href;
    const says = leftOff(records.last(record));
    return records.write(data, { record, title, says, home, page: data.page });
  }

  function show(section, note) {
    clear();
    here = section;
    here.classList.add("pc-here");
    here.parentNode.classList.add("pc-around");
    root.classList.add("pc-walking");
    const place = data.places[here.id];
    if (place?.reading) numbers.open(here, place);
    around.open(here, records.last(record).answers.map((given) => "step-" + given.step));
    const isKept = here.id === "before" || keep();
    tell(place, isKept ? note : say("not_kept"));
    face();
  }

  function face() {
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
    fold($("walk-causes"), say("causes", { count: causes.length }), causes.map(([index, percent]) =>
      say(percent ? "cause" : "cause_rare", { title: data.causes[index], percent })));
    fold($("walk-trail"), say("trail", { count: answers.length }), answers.map((given) => {
      const link = document.createElement("a");
      const said = document.createElement("b");
      said.textContent = lineOf(given);
      link.href = "#step-" + given.step;
      link.append(titleOf("step-" + given.step) + ": ", said);
      return link;
    }));
  }

  function fold(box, summary, items) {
    box.open = false;
    box.firstElementChild.textContent = summary;
    box.lastElementChild.replaceChildren(...items.map((item) => {
      const line = document.createElement("li");
      line.append(item);
      return line;
    }));
  }

  function clear() {
    if (!here) return;
    numbers.close();
    around.close();
    here.classList.remove("pc-here");
    here.parentNode.classList.remove("pc-around");
    here = null;
  }

  function stop() {
    clear();
    root.classList.remove("pc-walking");
    const kept = records.read(data);
    const found = kept && records.follow(data, kept);
    const [on, start] = offer.querySelectorAll(".pc-way");
    const line = offer.querySelector(".pc-offer__left");
    on.hidden = line.hidden = !found;
    start.firstElementChild.textContent = say(found ? "again" : "start");
    if (!found) return;
    on.href = "#" + found.at;
    line.textContent = leftOff(records.last(kept)) + (found.isSame ? "" : " " + say("changed"));
  }

  // One entry of the history a step, so that Back goes back one step, as if one had walked here.
  function goOn(given, note) {
    const { at, isSame, record: found } = records.follow(data, given);
    const { answers } = records.last(found);
    const upTo = (id, count) => enter(id, records.withLast(found, {
      at: records.placeOf(id), answers: answers.slice(0, count),
    }));
    enter("before", records.withLast(found, { at: records.placeOf(data.start), answers: [] }));
    answers.forEach((one, count) => upTo("step-" + one.step, count));
    upTo(at, answers.length);
    show(sectionAt(at), isSame ? note : say("changed"));
  }

  async function load(input) {
    const file = input.files[0];
    input.value = "";
    const given = await records.readFile(file);
    leaving.close();
    if (given?.walk === data.procedure && (given.machine || "") === data.machine) {
      goOn(given, say("loaded"));
    } else {
      const note = say(given ? "other_walk" : "no_record", given || {});
      (here ? $("walk-note") : $("offer__note")).textContent = note;
    }
  }

  const deeds = {
    start() {
      enter("before", records.begin(data, records.read(data)));
      show(sectionAt("before"), "");
    },
    on: () => goOn(records.read(data), ""),
    back: () => history.back(),
    end() {
      const section = here;
      history.replaceState(null, "");
      stop();
      location.replace("#" + section.id); // Again, for the browser to mark it and go there.
    },
    ask() {
      const stops = here.querySelector(".pc-stop ul");
      leaving.open(stops || page.querySelector("#walk-away + aside ul"), record, keep());
    },
    save: () => records.saveFile(record),
    print: leaving.print,
    copy: leaving.copy,
    close: leaving.close,
  };

  page.addEventListener("click", (event) => {
    const { deed } = event.target.closest("[data-deed]")?.dataset || {};
    const way = here && event.target.closest(".pc-here > .pc-ways > .pc-way");
    const answer = way && data.places[here.id]?.answers[[...way.parentNode.children].indexOf(way)];
    if (deed) {
      event.preventDefault();
      deeds[deed]();
    } else if (answer) {
      const isHere = sectionAt(answer.to);
      if (isHere && (event.ctrlKey || event.metaKey || event.shiftKey || event.altKey)) return;
      const reading = numbers.read();
      const given = { step: here.id.slice(5), answer: answer.key, when: records.now() };
      if (reading) given.reading = reading;
      if (isHere) {
        event.preventDefault();
        answerWith(answer.to, given);
      } else {
        record = goneTo(answer.to, given); // on another procedure's page
        keep();
      }
    }
  });
  page.addEventListener("change", ({ target }) => target.type === "file" && load(target));
  window.addEventListener("popstate", moved);
  window.addEventListener("hashchange", moved);

  page.prepend(top);
  page.append(bar, leave);
  $("imprint").before(paper);
  [...page.querySelectorAll(".pc-symptom")].pop().after(offer);
  moved();
})();
