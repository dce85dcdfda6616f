/** The page at work: what is entered becomes a record, the record an assessment, the assessment the report beside the form. */
import { isElectroheatError } from "electroheat";
import { assessModule } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { whatChanged } from "./changes.mjs";
import { byId, element } from "./dom.mjs";
import { readRecord, saveRecord } from "./files.mjs";
import { makeForm } from "./form.mjs";
import { leftOut } from "./paths.mjs";
import { plannedPicture } from "./picture.mjs";
import { makeProblems } from "./problems.mjs";
import { showReport } from "./result.mjs";
import sample from "./sample.json";
import { namesOf } from "./wiringNames.mjs";

/** @import { BenchRecord, ModuleAssessment } from "electroheat/bench" */
/** @import { Units } from "./values.mjs" */

/** Pauses in typing: short enough to see the picture move, long enough not to work out every digit; and before it is said aloud. */
const SETTLE = 200;
const LONGEST_WAIT = 1000;
const SAY = 900;

const status = byId("status", HTMLElement);
const stale = byId("stale", HTMLElement);
const notice = byId("notice", HTMLElement);
const hosts = { report: byId("report", HTMLElement), picture: byId("picture", HTMLElement) };
const problems = makeProblems(byId("problems", HTMLElement));
const unitsChoice = byId("units", HTMLElement);

/** @returns {Units} */
const units = () =>
  unitsChoice.querySelector("input:checked")?.getAttribute("value") === "US" ? "US" : "SI";

/** @type {ModuleAssessment | null} */
let last = null;
let lastText = "";
let lastUnfinished = 0;
let took = 0;
let saved = "";
/** @type {{ settle?: ReturnType<typeof setTimeout>, say?: ReturnType<typeof setTimeout> }} */
const timers = {};

const formHost = byId("form", HTMLFormElement);
const form = makeForm(formHost, { edited: soon, units });

function soon() {
  clearTimeout(timers.settle);
  // Working out never takes more than about half of the time, on a slow machine or with a large module either.
  timers.settle = setTimeout(() => update(), Math.min(LONGEST_WAIT, Math.max(SETTLE, took)));
}

/** @param {string} text */
function say(text) {
  clearTimeout(timers.say);
  timers.say = setTimeout(() => {
    status.textContent = text;
  }, SAY);
}

function draw() {
  if (last === null) return;
  showReport(hosts, benchReport({ assessment: last, format: "html", units: units() }), plannedPicture(last));
}

/** @param {number} unfinished */
const waiting = (unfinished) =>
  unfinished === 0
    ? ""
    : ` ${unfinished === 1 ? "One unfinished row does" : `${unfinished} unfinished rows do`} not count yet.`;

/** @param {string} [loaded] said first */
function update(loaded = "") {
  const { record, places, unfinished } = form.read();
  const text = JSON.stringify(record);
  if (text === lastText && unfinished === lastUnfinished) return;
  lastText = text;
  lastUnfinished = unfinished;
  form.suggest(...namesOf(record));
  const start = performance.now();
  try {
    const assessment = assessModule(/** @type {BenchRecord} */ (/** @type {unknown} */ (record)));
    const changed = whatChanged(last, assessment);
    last = assessment;
    draw();
    took = performance.now() - start;
    problems.show([], places);
    stale.hidden = true;
    say(`${loaded}${changed}${waiting(unfinished)}`);
  } catch (error) {
    const known = isElectroheatError(error);
    const said = problems.show(known ? error.issues : [], places);
    stale.hidden = false;
    stale.textContent =
      last === null
        ? "No assessment yet: the entries named above the form come first."
        : "Not current: this is the assessment as of before the entries that are named above the form.";
    say(
      known
        ? `${loaded}${said}`
        : `The sheet itself failed: ${error instanceof Error ? error.message : String(error)}`,
    );
    if (!known) throw error;
  }
}

/** @param {unknown} record @param {string} name */
function take(record, name) {
  form.fill(record);
  last = null;
  lastText = "";
  for (const host of Object.values(hosts)) host.replaceChildren();
  update(`Filled from ${name}. `);
  const kept = form.read().record;
  saved = JSON.stringify(kept);
  const lost = leftOut(record, kept);
  notice.hidden = lost.length === 0;
  const many = lost.length > 20 ? [...lost.slice(0, 20), `and ${lost.length - 20} more`] : lost;
  notice.replaceChildren(
    element("p", {}, `The sheet has no place for these fields of ${name}; they are left out:`),
    element("ul", {}, ...many.map((path) => element("li", {}, path))),
  );
}

const isSaved = () => JSON.stringify(form.read().record) === saved;
/** @param {string} what */
const mayReplace = (what) => isSaved() || confirm(`What you entered is not saved. ${what}?`);

const file = byId("file", HTMLInputElement);
byId("load", HTMLButtonElement).addEventListener("click", () => file.click());
file.addEventListener("change", async () => {
  const [chosen] = file.files ?? [];
  file.value = "";
  if (chosen === undefined || !mayReplace("Load another record")) return;
  const read = await readRecord(chosen);
  if ("problem" in read) {
    notice.hidden = false;
    notice.replaceChildren(element("p", {}, read.problem));
    say(read.problem);
    return;
  }
  take(read.record, chosen.name);
});
byId("save", HTMLButtonElement).addEventListener("click", () => {
  const { record } = form.read();
  saved = JSON.stringify(record);
  say(`Saved as ${saveRecord(record)}.`);
});
byId("sample", HTMLButtonElement).addEventListener("click", () => {
  if (mayReplace("Fill in the sample")) take(sample, "the sample");
});
byId("empty", HTMLButtonElement).addEventListener("click", () => {
  if (mayReplace("Empty the sheet")) take({}, "the record");
});
byId("print", HTMLButtonElement).addEventListener("click", () => print());
unitsChoice.addEventListener("change", () => {
  formHost.classList.toggle("units-us", units() === "US");
  draw();
});
addEventListener("beforeunload", (event) => {
  if (!isSaved()) event.preventDefault();
});

take(sample, "the sample");
