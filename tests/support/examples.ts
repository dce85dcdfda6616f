/** The worked examples as arguments of the public functions, and the same with one number changed. */
import { type Issue, isElectroheatError } from "electroheat/quantity";
import { factsOf } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";
import { alternatives, fieldOf, type Place, partsIn, placesIn } from "./places.ts";
import { vectorFiles } from "./shared.ts";
import { spoiled } from "./spoil.ts";

/** How a number is changed: by these factors, powers of two and sums of a few, which add no noise of their own; whole numbers also by one. */
const FACTORS = [-1, 0, 2 ** -10, 0.125, 0.5, 0.875, 1.125, 2, 8, 2 ** 10];
/** Numbers whose product or quotient a double may not hold. */
const BEYOND = [1e308, 1e-308];
/** Worked examples taken of one function, each with fields that none before it had. */
const MOST_EXAMPLES = 6;

/** Combinations of names taken of a function that has no worked example. */
const MOST_NAMED = 40;

/** Value at a dotted path; undefined where there is none. */
export function at(value: unknown, path: string): unknown {
  let found: unknown = value;
  for (const key of path.split(".")) found = (found as Record<string, unknown> | null | undefined)?.[key];
  return found;
}

const files = vectorFiles();

/** Worked examples of a function, each with a field more than those before. */
export function examples(room: string, name: string): object[] {
  const facts = factsOf(room).functions[name];
  if (facts === undefined) return [];
  const names = Object.keys(facts.inputs).map((key) => key.replace("?", ""));
  const found: object[] = [];
  const seen = new Set<string>();
  for (const { call, input, inputs, expected } of files.flatMap(({ vectors }) => vectors)) {
    if (call !== `${room}.${name}` || expected === undefined || found.length >= MOST_EXAMPLES) continue;
    const given = facts.takes === "fields" ? [input ?? inputs?.[0]] : (inputs ?? [input]);
    const whole = (
      facts.takes === "fields" ? given[0] : Object.fromEntries(given.map((one, i) => [names[i], one]))
    ) as object;
    const fields = placesIn(whole, { record: facts.inputs }, "").map(({ path }) => fieldOf(path));
    if (fields.every((field) => seen.has(field))) continue;
    for (const field of fields) seen.add(field);
    found.push(whole);
  }
  return found.length > 0 ? found : namesOnly(facts.inputs);
}

/** Every argument of a function that takes nothing but names of closed lists. */
function namesOnly(inputs: Readonly<Record<string, Shape>>): object[] {
  let found: object[] = [{}];
  for (const [key, shape] of Object.entries(inputs)) {
    if (key.endsWith("?")) continue;
    const names = alternatives(shape).flatMap((kind) =>
      typeof kind === "object" && "names" in kind ? kind.names : [],
    );
    found = found.flatMap((one) => names.map((name) => ({ ...one, [key]: name })));
  }
  return found.slice(0, MOST_NAMED);
}

/** Ways of changing an argument. */
export const CHANGES = ["its numbers", "what it leaves out", "its names"] as const;
export type Change = (typeof CHANGES)[number];

/** Tried for an optional number that an example leaves out, where no other field has its unit. */
const OF_NO_UNIT = [-1, 0, 0.5, 1, 2, 100];

/** The argument with one thing in it changed, each thing in turn. */
export function* variations(
  whole: object,
  shape: Shape,
  places: readonly Place[],
  change: Change,
): Generator<object> {
  const sizes = (unit: string | undefined) =>
    [
      ...new Set(
        places
          .filter((one) => one.unit === unit && one.wrong === undefined)
          .map((one) => at(whole, one.path) as number),
      ),
    ].slice(0, 5);
  if (change === "its numbers") {
    for (const { path, wrong, unit } of places) {
      if (wrong !== undefined) continue;
      const value = at(whole, path) as number;
      for (const factor of FACTORS) yield spoiled(whole, path, factor * value);
      for (const size of BEYOND) yield spoiled(whole, path, size);
      if (Number.isInteger(value)) for (const step of [-1, 1]) yield spoiled(whole, path, value + step);
      // As large as its neighbour, and twice.
      for (const other of sizes(unit))
        for (const factor of [1, 2]) yield spoiled(whole, path, factor * other);
    }
    return;
  }
  for (const { path, kinds, there } of partsIn(whole, shape, "")) {
    // What the user says of a table of their own is not looked into.
    if (/^datasets?\./.test(path)) continue;
    if (change === "its names") {
      if (there && typeof at(whole, path) !== "string") continue;
      const names = kinds.flatMap((kind) => (typeof kind === "object" && "names" in kind ? kind.names : []));
      const texts = there ? [NO_NAME, ""] : [];
      for (const other of [...names, ...texts]) yield spoiled(whole, path, other);
      continue;
    }
    if (there) {
      yield spoiled(whole, path, undefined);
      if (Array.isArray(at(whole, path))) yield spoiled(whole, path, []);
      continue;
    }
    for (const kind of kinds) {
      if (kind === "flag") yield spoiled(whole, path, true);
      if (typeof kind !== "object" || !("number" in kind)) continue;
      const others =
        kind.number === "" ? [] : sizes(kind.number).flatMap((one) => [one, 0.1 * one, 2 * one, -one]);
      for (const other of others.length > 0 ? others : OF_NO_UNIT) yield spoiled(whole, path, other);
    }
  }
}

/** A name that nothing has. */
export const NO_NAME = "no such name";

/** What a public function makes of an argument. */
export function outcomeOf(
  room: string,
  name: string,
  exported: Readonly<Record<string, unknown>>,
  whole: object,
): { readonly refused: Issue } | { readonly answer: unknown } {
  const run = exported[name] as (...args: unknown[]) => unknown;
  try {
    return {
      answer: run(...(factsOf(room).functions[name]?.takes === "fields" ? [whole] : Object.values(whole))),
    };
  } catch (error) {
    if (isElectroheatError(error)) return { refused: error.issues[0] as Issue };
    throw error;
  }
}
