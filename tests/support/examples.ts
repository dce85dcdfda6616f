/** The worked examples as arguments of the public functions, and the same with one number changed. */
import { type Issue, isElectroheatError } from "electroheat/quantity";
import { factsOf } from "../../src/catalogue/facts.ts";
import { fieldOf, type Place, placesIn } from "./places.ts";
import { vectorFiles } from "./shared.ts";
import { spoiled } from "./spoil.ts";

/** How a number is changed: by these factors; whole numbers also by one. */
const FACTORS = [-1, 0, 1e-3, 0.1, 0.5, 0.9, 1.1, 2, 10, 1e3];
/** Worked examples taken of one function, each with fields that none before it had. */
const MOST_EXAMPLES = 6;

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
  return found;
}

/** The argument with one of its numbers made smaller, larger, zero or negative; each number in turn. */
export function* variations(whole: object, places: readonly Place[]): Generator<object> {
  for (const { path, wrong } of places) {
    if (wrong !== undefined) continue;
    const value = at(whole, path) as number;
    for (const factor of FACTORS) yield spoiled(whole, path, factor * value);
    if (Number.isInteger(value)) for (const step of [-1, 1]) yield spoiled(whole, path, value + step);
  }
}

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
