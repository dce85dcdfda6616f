/**
 * A refusal says the truth about the call that it refuses: it names a field that there is, shows the value that stood there, with the
 * unit of the field's type, and the limit it says is the one it holds to. One number of a worked example at a time is made smaller,
 * larger, zero or negative; names and units come from the types, limits from the sentence of the refusal itself, and whether they
 * are kept from calling again at the limit and a little on either side of it.
 */
import { type ErrorCode, type Issue, showReceived } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { factsOf } from "../src/catalogue/facts.ts";
import type { Shape } from "../src/catalogue/shape.ts";
import { at, CHANGES, examples, outcomeOf, variations } from "./support/examples.ts";
import { alternatives, type Place, partsIn, pathsIn, placesIn, unitsOfTypes } from "./support/places.ts";
import { onlyRoom } from "./support/shared.ts";
import { spoiled } from "./support/spoil.ts";

const ROOMS = ["joint", "material", "process", "wiring"].filter(
  (room) => onlyRoom.length === 0 || onlyRoom.includes(room),
);
/** A dataset of the user's goes through a gate of its own; one of ours, and a size, through the look-up that is public too. */
const REFUSED_WHOLE = ["table", "id", "text", "dataset.temperatureFactor", "flow.massFlow"];
/** What is shown is worked out from the field that is named, or is the field in the unit of the table. */
const WORKED_OUT =
  /^(?:a size (?:of the table|of (?:AWG|SWG|kcmil|mm²)|the standard gives)|one of .* mm$|a round wire from|a nominal size|a design current within|a load that a size)/;

/** A limit in the words of a refusal. */
interface Limit {
  readonly at: number;
  /** The side that is refused. */
  readonly refused: "below" | "above";
  /** Whether the limit itself is refused. */
  readonly itself: boolean;
  /** How far the limit may be from what is said: sentences have twelve digits, zeros at the end left out, and a product ends in the noise of its last bit. */
  readonly off: number;
}

/** Digits of a number as written, without zeros before them. */
const digitsIn = (text: string): number =>
  text.replace(/e.*$/, "").replace(/[-−.]/g, "").replace(/^0+/, "").length;

const NUMBER = String.raw`([-−]?\d+(?:\.\d+)?(?:e[+-]?\d+)?)(?! of the|[\d.]| °C at which| and than)`;
/** Words between the side and the figure. */
const NAMED = String.raw`(?: [a-zA-Z ]+(?: \d)?,?| 1 and than [a-z /]+,)??`;
const WORDINGS: readonly (readonly [string, Limit["refused"], boolean])[] = [
  [`(?:more than|(?<!more |still )above|warmer than)${NAMED} ${NUMBER}`, "below", true],
  [`(?:less than|below)${NAMED} ${NUMBER}`, "above", true],
  [`at least${NAMED} ${NUMBER}`, "below", false],
  [`(?<!of |number of )(?:at most|up to)(?! the largest of)${NAMED} ${NUMBER}`, "above", false],
  [`${NUMBER},? or more(?! above)`, "below", false],
  [`^(?:a whole number )?(?:from )?${NUMBER} (?:to|and) `, "below", false],
  [`^(?:a whole number )?(?:from )?${NUMBER} (?:to|and) ${NUMBER}`, "above", false],
];

function limitsSaid(expected: string): Limit[] {
  return WORDINGS.flatMap(([wording, refused, itself]) => {
    const found = new RegExp(`${wording}( in\\b)?`).exec(expected);
    if (found === null) return [];
    const text = found.at(-2) as string;
    // An inch is 0.0254 m by definition.
    const at = Number(text.replace("−", "-")) * (found.at(-1) ? 0.0254 : 1);
    const off =
      Math.abs(at) *
      (digitsIn(text) >= 10 ? 1e-11 : /\d of the outer|takes off it/.test(expected) ? 2 ** -50 : 0);
    return [{ at, refused, itself, off }];
  });
}

type Call = (whole: object) => Issue | undefined;

/** Fields of a result. */
const fieldsOf = (shape: Shape | undefined): string[] =>
  alternatives(shape).flatMap((kind) =>
    typeof kind === "object" && "record" in kind ? Object.keys(kind.record) : [],
  );

const CODES: ReadonlySet<ErrorCode> = new Set<ErrorCode>([
  ...(["missing", "not-a-number", "out-of-range", "unknown-name", "unknown-field", "wrong-type"] as const),
  ...(["malformed-text", "ambiguous", "duplicate", "inconsistent", "not-identifiable"] as const),
  ...(["outside-table", "no-convergence"] as const),
]);
const everyUnit = unitsOfTypes();

/** What is untrue of a refusal. */
function faultsOf(
  issue: Issue,
  whole: object,
  places: readonly Place[],
  others: ReadonlySet<string>,
  call: Call,
): string[] {
  const said = `${issue.path} (${issue.code}): ${issue.expected}, got ${issue.received} ${issue.unit ?? ""}`;
  if (!CODES.has(issue.code)) return [`no code: ${said}`];
  if (issue.expected === "") return [`says nothing: ${said}`];
  if (issue.path === "result")
    return everyUnit.has(issue.unit ?? "") ? [] : [`a result without its unit: ${said}`];
  const named = pathsIn(whole).filter((path) => path === issue.path);
  // A result beyond what it may be, and a field that is needed because of another.
  if (named.length === 0) return others.has(issue.path) ? [] : [`names no field: ${said}`];
  const isShown = (path: string) => showReceived(at(whole, path)) === issue.received;
  if (issue.unit === "") return [`an empty unit: ${said}`];
  if (WORKED_OUT.test(issue.expected)) return [];
  const path = named.find(isShown) ?? (named[0] as string);
  const place = places.find((one) => one.path === path);
  const value = at(whole, path);
  const blank = value === undefined || value === "" || (Array.isArray(value) && value.length === 0);
  if (isShown(path) && blank !== (issue.code === "missing"))
    return [`${blank ? "not " : ""}called missing: ${said}`];
  const list = /^one of (?!the columns)(.+?)(?: \(.*\))?(?: mm)?$/.exec(issue.expected)?.[1] ?? "";
  // Names with a comma in them are quoted.
  const listed = [...list.matchAll(/(?:"([^"]*)"|([^,]+?))(?:, |$)/g)].map(
    ([, quoted, plain]) => quoted ?? (plain as string),
  );
  const isTaken = (name: string) => {
    const kept = Number.isNaN(Number(name)) || typeof value === "string" ? name : Number(name);
    const other = call(spoiled(whole, path, kept));
    return !(other?.path === issue.path && other.code === issue.code);
  };
  // A name may have a comma in it.
  const unknown = listed.filter(
    (name, i) => ![name, `${listed[i - 1]}, ${name}`, `${name}, ${listed[i + 1]}`].some(isTaken),
  );
  // An edition that is held need not have the table that was asked for.
  if (unknown.length > 0 && issue.path !== "edition")
    return [`lists ${unknown.join(" and ")}, which it refuses: ${said}`];
  // A list, or a size in words.
  if (place === undefined || place.wrong !== undefined) return [];
  const faults: string[] = [];
  if (!isShown(path)) faults.push(`another value stood there: ${said}`);
  // Names that are numbers are listed without their unit.
  if ((place.unit ?? issue.unit) !== issue.unit && !issue.expected.startsWith("one of"))
    faults.push(`the unit is ${place.unit ?? "none"}: ${said}`);
  // Nothing is measured so large or small, and something worked out from it may pass the same limit.
  if (Math.abs(Math.log10(Math.abs(Number(value)))) > 200) return faults;
  for (const { at: limit, refused, itself, off } of limitsSaid(issue.expected)) {
    const out = refused === "above" ? 1 : -1;
    const step = issue.expected.startsWith("a whole number") ? 1 : 1e-9 * Math.max(Math.abs(limit), 1e-9);
    const again = (value: number) => {
      const other = call(spoiled(whole, path, value));
      return other?.path === issue.path ? other : undefined;
    };
    if (!again(limit + out * step)) faults.push(`${limit + out * step} is not refused: ${said}`);
    if (itself && !again(limit + out * off)) faults.push(`${limit} itself is not refused: ${said}`);
    for (const fine of itself ? [limit - out * step] : [limit - out * off, limit - out * step])
      if (again(fine)?.expected === issue.expected) faults.push(`${fine} is refused: ${said}`);
  }
  return faults;
}

const modules: Record<string, Record<string, unknown>> = {};
for (const room of ROOMS) modules[room] = await import(`../src/${room}/index.ts`);

describe.each(Object.entries(modules))("%s", (room, exported) => {
  const functions = Object.keys(factsOf(room).functions)
    .filter((name) => typeof exported[name] === "function" && examples(room, name).length > 0)
    .flatMap((name) => CHANGES.map((change) => [name, change] as const));

  it.each(functions)(
    "%s says a limit that it holds to, of a field that there is, whatever is done to %s",
    (name, change) => {
      const facts = factsOf(room).functions[name];
      if (facts === undefined) throw new Error(name);
      const call: Call = (whole) => {
        const outcome = outcomeOf(room, name, exported, whole);
        return "refused" in outcome ? outcome.refused : undefined;
      };
      const others = new Set([
        ...Object.keys(facts.inputs).map((key) => key.replace("?", "")),
        ...fieldsOf(facts.output),
        ...REFUSED_WHOLE,
      ]);
      // What an argument leaves out is missing by its name.
      const left = (whole: object) =>
        partsIn(whole, { record: facts.inputs }, "").flatMap(({ path, there }) => (there ? [] : [path]));
      const faults: string[] = [];
      for (const whole of examples(room, name)) {
        const places = placesIn(whole, { record: facts.inputs }, "");
        for (const changed of variations(whole, { record: facts.inputs }, places, change)) {
          const issue = call(changed);
          if (issue !== undefined)
            faults.push(...faultsOf(issue, changed, places, new Set([...others, ...left(changed)]), call));
        }
      }
      expect([...new Set(faults)]).toEqual([]);
    },
  );
});
