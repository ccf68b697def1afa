// The record of a walk: kept in the browser by procedure and machine, saved to and read from files.
//
// Nothing leaves the tablet. A record is what pullcord.model.walk_record reads.
(function () {
  "use strict";

  const PREFIX = "pullcord.walk.";
  const WARMTH = "pullcord.shop-celsius";
  const FORMAT = 1;
  const MOST_ROUNDS = 40;
  const MOST_CHARACTERS = 200;

  // A browser may refuse to keep anything, or take it and drop it: only reading it back tells.
  function put(key, value) {
    try {
      localStorage.setItem(key, value);
      return localStorage.getItem(key) === value;
    } catch {
      return false;
    }
  }

  function get(key) {
    try {
      return JSON.parse(localStorage.getItem(key));
    } catch {
      return null;
    }
  }

  function keys() {
    try {
      return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
    } catch {
      return [];
    }
  }

  const keyOf = (data) => PREFIX + data.procedure + (data.machine && "." + data.machine);
  const isText = (value) => typeof value === "string" && value.length <= MOST_CHARACTERS;
  const isAnswer = (it) => it && [it.step, it.answer, it.when].every(isText);
  const isRound = (it) =>
    it && [it.began, it.left, it.at].every(isText) && it.answers.every(isAnswer);

  function isRecord(it) {
    try {
      return isText(it.walk) && it.format === FORMAT && it.rounds.length > 0 &&
        it.rounds.every(isRound);
    } catch {
      return false;
    }
  }

  function now() {
    const local = new Date(Date.now() - new Date().getTimezoneOffset() * 60000);
    return local.toISOString().slice(0, 16).replace("T", " ");
  }

  // A section's id and the words a procedure has for it: "step-plug" is "step plug".
  const placeOf = (id) => id.replace("-", " ");
  const idOf = (place) => place.replace(" ", "-");
  const last = (record) => record.rounds[record.rounds.length - 1];

  // The record with its last round changed.
  function withLast(record, change) {
    const round = { ...last(record), left: now(), ...change };
    return { ...record, rounds: [...record.rounds.slice(0, -1), round] };
  }

  // A record with one more round to come; whatever was answered before stays in it.
  function begin(data, before) {
    const rounds = before ? before.rounds.filter((round) => round.answers.length) : [];
    const round = { began: now(), left: now(), at: placeOf(data.start), answers: [] };
    const machine = data.machine && { machine: data.machine };
    const kept = rounds.slice(1 - MOST_ROUNDS);
    return {
      walk: data.procedure, format: FORMAT, revision: data.digest, ...machine,
      rounds: [...kept, round],
    };
  }

  // How far a record's answers still lead on this page, and the section they lead to.
  function follow(data, record) {
    const isSame = record.revision === data.digest;
    const { answers, at: left } = last(record);
    const kept = [];
    let at = data.start;
    for (const given of answers) {
      const step = "step-" + given.step;
      if (!data.places[step] || (step !== at && !isSame)) break;
      const answer = data.places[step].answers.find((one) => one.key === given.answer);
      at = answer ? answer.to : step;
      if (!answer) break;
      kept.push(given);
    }
    const isWhole = kept.length === answers.length;
    if (isSame && isWhole) at = idOf(left);
    if (!document.getElementById(at)) at = kept.length ? "step-" + kept.pop().step : data.start;
    const round = { answers: kept, at: placeOf(at), left: last(record).left };
    return { at, isSame, record: withLast({ ...record, revision: data.digest }, round) };
  }

  function saveFile(record) {
    const link = document.createElement("a");
    const named = ["walk", record.walk, record.machine, last(record).left.slice(0, 10)];
    link.download = named.filter(Boolean).join("-") + ".json";
    const text = JSON.stringify(withWarmth(record), null, 1) + "\n";
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  }

  function withWarmth(record) {
    const celsius = get(WARMTH);
    return celsius === null ? record : { ...record, "shop-celsius": celsius };
  }

  async function readFile(file) {
    try {
      const record = JSON.parse(await file.text());
      return isRecord(record) ? record : null;
    } catch {
      return null;
    }
  }

  window.pullcord = window.pullcord || {};
  window.pullcord.records = {
    begin, follow, idOf, last, now, placeOf, readFile, saveFile, withLast,
      // What is kept besides the record is for the home page: words, and where the page lies.
    write: (data, kept) => put(keyOf(data), JSON.stringify(kept)),
    read: (data) => {
      const kept = get(keyOf(data));
      return kept && isRecord(kept.record) ? kept.record : null;
    },
    all: () => keys().map(get).filter((kept) => kept && isRecord(kept.record)),
    readWarmth: () => get(WARMTH),
    writeWarmth: (celsius) => put(WARMTH, JSON.stringify(celsius)),
  };
})();
