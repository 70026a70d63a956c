import { makeCells } from "./cells.js";
import { codeOf } from "./code.js";
import { drawAt, part, playSlowly, tracksOf, way } from "./floor.js";
import { keep, kept } from "./keep.js";
import { answeredCard, today } from "./schedule.js";

/** @typedef {import("./types.js").Quiz} Quiz */
/** @typedef {import("./types.js").Question} Question */

/** @type {Quiz} */
const quiz = JSON.parse(part("quiz").textContent);
const state = kept(quiz.key);
const svg = part("floor");
const cells = makeCells(svg, part("cells"), (place) => answer(place));

/** @type {Question[]} */
let round = [];
let at = 0;
let rightNow = 0;
let answered = false;
/** @type {ReturnType<typeof tracksOf>} */
let tracks;
let stop = () => {};

/**
 * @param {string} message
 * @param {Object<string, string | number>} values
 */
function say(message, values) {
  return quiz.words[message].replace(/\{(\w+)\}/g, (whole, name) => (name in values ? String(values[name]) : whole));
}

/** @param {number} n @param {string} one @param {string} many */
function sayMany(n, one, many) {
  return say(n === 1 ? one : many, { n: n });
}

/** @param {string} id @param {boolean} seen */
function show(id, seen) {
  part(id).hidden = !seen;
}

/** @param {string} tag @param {string} kind @param {string} text */
function element(tag, kind, text) {
  const node = document.createElement(tag);
  if (kind) node.className = kind;
  node.textContent = text;
  return node;
}

/** @param {Question} question */
function due(question) {
  const card = state.cards[question.id];
  return !card || card[3] <= today();
}

/** @param {Question[]} asked */
function begin(asked) {
  round = asked;
  at = 0;
  rightNow = 0;
  if (round.length) ask(false);
  else end();
}

/** @param {boolean} move whether the focus goes to the question */
function ask(move) {
  const question = round[at];
  stop();
  answered = false;
  tracks = tracksOf(question);
  show("asked", true);
  show("end", false);
  document.body.className = "asking";
  part("count").textContent = say("count", { n: at + 1, all: round.length });
  part("words").textContent = question.words;
  part("told").textContent = question.told;
  part("said").textContent = "";
  part("said").className = "said";
  part("next").hidden = true;
  part("slow").hidden = question.ask !== "mistake";
  part("slow").textContent = quiz.words[question.ask === "mistake" ? "mistake" : "slow"];
  part("under").innerHTML = question.under;
  part("over").innerHTML = question.over;
  part("way").removeAttribute("d");
  part("floor-said").textContent = question.floor;
  const tapped = question.cells.length > 0;
  part("hint").textContent = tapped ? quiz.words[question.ask] : "";
  part("cells").setAttribute("aria-label", quiz.words.cells);
  svg.setAttribute("class", svg.getAttribute("class").replace(" tapped", "") + (tapped ? " tapped" : ""));
  cells.set(question.cells);
  people(question);
  drawAt(question, tracks, quiz.turn, question.times[0], false);
  options(question);
  if (move) part("words").focus();
  window.scrollTo(0, 0);
}

/**
 * Who is asked has a heavy disc, and the word at it where it is the player himself.
 * @param {Question} question
 */
function people(question) {
  Object.keys(question.tracks.p).forEach((n) => {
    const node = part("p" + n);
    const mine = question.mark !== null && String(question.mark) === n;
    node.setAttribute("class", mine ? "you" : "");
    const word = node.querySelector(".you-word");
    word.textContent = mine && question.you ? quiz.words.you : "";
    part("g" + n).setAttribute("class", "away");
  });
}

/** @param {Question} question */
function options(question) {
  const list = part("options");
  list.textContent = "";
  question.options.forEach((option, i) => {
    const button = element("button", "option", "");
    button.setAttribute("type", "button");
    if (option[0]) button.appendChild(element("span", "tab", option[0]));
    const words = element("span", "option-words", "");
    words.appendChild(element(option[2] ? "b" : "span", "", option[1] + (option[2] ? "." : "")));
    if (option[2]) words.appendChild(document.createTextNode(" " + option[2]));
    button.appendChild(words);
    button.addEventListener("click", () => answer(i));
    const item = document.createElement("li");
    item.appendChild(button);
    list.appendChild(item);
  });
}

/** @param {number} taken */
function answer(taken) {
  const question = round[at];
  if (answered) return;
  answered = true;
  stop();
  const all = question.cells.length ? question.cells : question.options;
  const right = Boolean(all[taken][3]);
  if (right) rightNow += 1;
  state.cards[question.id] = answeredCard(quiz.schedule, state.cards[question.id] || null, right, today());
  keep(quiz.key, state);
  if (question.cells.length) cells.mark(taken);
  Array.prototype.forEach.call(part("options").querySelectorAll("button"), (button, i) => {
    button.disabled = true;
    if (all[i][3]) button.className = "option right";
    else button.className = i === taken ? "option wrong" : "option other";
  });
  part("hint").textContent = "";
  feedback(question, right, String(all[taken][4]));
  part("under").innerHTML = question.answered[0];
  part("over").innerHTML = question.answered[1];
  drawAt(question, tracks, quiz.turn, question.times[0], false);
  part("g" + question.runner).setAttribute("class", "");
  part("slow").hidden = false;
  part("slow").textContent = quiz.words.slow;
  part("next").hidden = false;
  part("next").textContent = quiz.words[at + 1 < round.length ? "next" : "result"];
  part("next").focus({ preventScroll: true });
  if (part("next").getBoundingClientRect().bottom > window.innerHeight) part("said").scrollIntoView({ block: "nearest" });
}

/**
 * @param {Question} question
 * @param {boolean} right
 * @param {string} why
 */
function feedback(question, right, why) {
  const said = part("said");
  said.className = "said " + (right ? "yes" : "no");
  const first = element("p", "verdict", "");
  first.appendChild(element("b", "", quiz.words[right ? "yes" : "no"]));
  first.appendChild(document.createTextNode(" " + why));
  said.appendChild(first);
  if (!right) said.appendChild(element("p", "", question.answer));
  const rule = element("p", "rule", "");
  rule.appendChild(element("span", "tab on", question.sentence[0]));
  const words = element("span", "won", "");
  words.appendChild(element("b", "", question.sentence[1] + "."));
  words.appendChild(document.createTextNode(" " + question.sentence[2]));
  rule.appendChild(words);
  said.appendChild(rule);
}

function slow() {
  const question = round[at];
  const wrong = !answered;
  const deed = question.deed;
  stop();
  part("under").innerHTML = "";
  part("over").innerHTML = "";
  const to = wrong && deed ? Math.max(deed[2] + 60, question.times[0] + 150) : question.times[2];
  const runner = tracks.p[String(question.runner)];
  stop = playSlowly({
    from: question.times[1],
    to: to,
    draw: (t) => {
      drawAt(question, tracks, quiz.turn, t, wrong);
      if (!wrong) part("way").setAttribute("d", way(runner, question.times[1], t));
    },
    done: () => {
      part("slow").textContent = quiz.words[wrong ? "mistake" : "again"];
    },
  });
}

/** Per sentence: how many of the questions answered so far were right at the last answer, and how many were answered. */
function counts() {
  const out = quiz.sentences.map(() => [0, 0]);
  quiz.questions.forEach((question) => {
    const card = state.cards[question.id];
    if (!card) return;
    out[question.rank][1] += 1;
    out[question.rank][0] += card[4];
  });
  return out;
}

function code() {
  const shirt = Number(part("shirt").value);
  const good = part("shirt").value !== "" && shirt >= 0 && shirt <= 99 && Math.floor(shirt) === shirt;
  const told = counts();
  const some = told.some((count) => count[1] > 0);
  part("code").textContent = good && some ? codeOf(shirt, quiz.book, told) : "";
  show("code-part", good && some);
  part("shirt").setAttribute("aria-invalid", String(!good && part("shirt").value !== ""));
  if (good) {
    state.shirt = shirt;
    keep(quiz.key, state);
  }
}

function end() {
  stop();
  show("asked", false);
  show("end", true);
  document.body.className = "ended";
  const told = counts();
  const days = quiz.questions.map((question) => (state.cards[question.id] ? state.cards[question.id][3] : today())).reduce((a, b) => Math.min(a, b), Infinity) - today();
  part("end-words").textContent = round.length ? say("of", { n: rightNow, all: round.length }) : quiz.words.nothing;
  part("end-then").textContent = days <= 1 ? quiz.words.tomorrow : sayMany(days, "in-one", "in-many");
  const list = part("counts");
  list.textContent = "";
  told.forEach((count, i) => {
    if (!count[1]) return;
    const row = element("li", "", "");
    row.appendChild(element("span", "tab", quiz.sentences[i][0]));
    row.appendChild(element("span", "cue", quiz.sentences[i][1]));
    row.appendChild(element("span", "figure", say("of-short", { n: count[0], all: count[1] })));
    list.appendChild(row);
  });
  part("shirt").value = state.shirt === null ? (quiz.shirt === null ? "" : quiz.shirt) : state.shirt;
  code();
  part("end-words").focus();
  window.scrollTo(0, 0);
}

function copy() {
  const text = part("code").textContent;
  const field = /** @type {HTMLTextAreaElement} */ (document.createElement("textarea"));
  field.value = text;
  field.className = "unseen";
  document.body.appendChild(field);
  field.select();
  let done = false;
  try {
    done = document.execCommand("copy");
  } catch (error) {
    done = false;
  }
  document.body.removeChild(field);
  part("copied").textContent = done ? quiz.words.copied : quiz.words["not-copied"];
  part("copy").focus();
}

function look() {
  const night = state.light === "night" || (!state.light && window.matchMedia && window.matchMedia("(prefers-color-scheme: dark)").matches);
  if (state.light) document.documentElement.setAttribute("data-light", state.light);
  part("light").textContent = quiz.words[night ? "day" : "night"];
  part("turn").setAttribute("aria-pressed", String(state.turned));
  const tapped = / tapped/.test(svg.getAttribute("class")) ? " tapped" : "";
  svg.setAttribute("class", "half" + (state.turned ? " turned" : "") + tapped);
  return night;
}

part("light").addEventListener("click", () => {
  state.light = look() ? "day" : "night";
  look();
  keep(quiz.key, state);
});
part("turn").addEventListener("click", () => {
  state.turned = !state.turned;
  look();
  keep(quiz.key, state);
});
part("slow").addEventListener("click", slow);
part("next").addEventListener("click", () => {
  at += 1;
  if (at < round.length) ask(true);
  else end();
});
part("shirt").addEventListener("input", code);
part("copy").addEventListener("click", copy);
part("all").addEventListener("click", () => begin(quiz.questions));
document.documentElement.className = "";
look();
begin(quiz.questions.filter(due));
