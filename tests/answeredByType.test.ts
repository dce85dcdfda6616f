/**
 * An answer is what its type says, down to the last field: names of closed lists, numbers that are finite, nothing blank, units that there
 * are, sources and tables that lie in `shared/`, and warnings of a field that there is. The types are those that `npm run facts` writes.
 * A warning's limit is where the warning begins: on one side of it the warning is given, on the other it is not. Asked of the worked
 * examples, and of the same with one number changed.
 */
import { describe, expect, it } from "vitest";
import { factsOf } from "../src/catalogue/facts.ts";
import { at, CHANGES, examples, outcomeOf, variations } from "./support/examples.ts";
import { misfits, within } from "./support/misfits.ts";
import { type Place, pathsIn, placesIn, unitsOfTypes } from "./support/places.ts";
import { jsonFiles, onlyRoom, readJson } from "./support/shared.ts";
import { spoiled } from "./support/spoil.ts";

const ROOMS = ["joint", "material", "process", "wiring"].filter(
  (room) => onlyRoom.length === 0 || onlyRoom.includes(room),
);
const sources = new Set((readJson("shared/sources.json") as { id: string }[]).map(({ id }) => id));
/** The units of the types and the tables, and those of a ratio and a size. */
const UNITS = new Set([
  "1",
  "",
  ...jsonFiles("shared/tables").flatMap((path) =>
    (readJson(path) as { columns: { unit: string }[] }).columns.map(({ unit }) => unit),
  ),
  ...unitsOfTypes(),
]);

interface Warned {
  readonly code: string;
  readonly path: string;
  readonly message: string;
  readonly limit?: number;
  readonly unit?: string;
  readonly source?: string;
}

const isWarning = (one: Record<string, unknown>) => "code" in one && "path" in one && "message" in one;
const warningsOf = (answer: unknown): Warned[] =>
  [...within(answer)].map(([, one]) => one).filter(isWarning) as unknown as Warned[];

const isKey = (answer: unknown, key: string) => [...within(answer)].some(([, one]) => key in one);
/** An id, or a sentence about one. */
const isSource = (source: string) => / /.test(source) || sources.has(source);
const isSame = (one: Warned, other: Warned) =>
  one.code === other.code &&
  one.path === other.path &&
  one.limit === other.limit &&
  one.source === other.source;

/** What is untrue of a warning. @param again - whether it is given for another value of a field; undefined where that is refused */
function untrue(
  warning: Warned,
  whole: object,
  answer: unknown,
  places: readonly Place[],
  results: readonly Place[],
  others: ReadonlySet<string>,
  again: (value: number, path: string) => boolean | undefined,
): string[] {
  const { limit, unit } = warning;
  const said = `${warning.path} (${warning.code}) ${limit} ${unit}: ${warning.message}`;
  const field = [...pathsIn(whole)].find((path) => path === warning.path);
  if (field === undefined) {
    const result = results.find(({ path }) => `.${path}`.endsWith(`.${warning.path}`));
    if (limit !== undefined && result !== undefined && (result.unit ?? "1") !== (unit || "1"))
      return [`the unit is ${result.unit ?? "none"}: ${said}`];
    const known =
      at(answer, warning.path) !== undefined || others.has(warning.path) || isKey(answer, warning.path);
    return known ? [] : [`warns of no field: ${said}`];
  }
  const place = places.find(({ path }) => path === field);
  const value = at(whole, field);
  if (limit === undefined || typeof value !== "number" || place === undefined) return [];
  // The limit of something worked out from the field: its difference from another, a load with its motor or what is not continuous.
  if (place.unit === "A" && ("motorCurrent" in whole || "noncontinuousCurrent" in whole)) return [];
  if (place.unit !== undefined && (unit === undefined || (place.unit === "°C" && unit === "K"))) return [];
  if ((place.unit ?? "1") !== (unit || "1")) return [`the unit is ${place.unit ?? "none"}: ${said}`];
  const out = Math.sign(value - limit);
  const step = 1e-9 * Math.max(Math.abs(limit), 1);
  if (out === 0) return [`${limit} has not been passed: ${said}`];
  const faults: string[] = [];
  if (again(limit, field)) faults.push(`given for ${limit} itself: ${said}`);
  const [before, beyond] = [again(limit - out * step, field), again(limit + out * step, field)];
  if (beyond === false) faults.push(`not given for ${limit + out * step}: ${said}`);
  // A voltage to be tested at is missed on either side.
  if (before && !(warning.path === "testVoltage")) faults.push(`given for ${limit - out * step}: ${said}`);
  return faults;
}

const modules: Record<string, Record<string, unknown>> = {};
for (const room of ROOMS) modules[room] = await import(`../src/${room}/index.ts`);

describe.each(Object.entries(modules))("%s", (room, exported) => {
  const functions = Object.keys(factsOf(room).functions)
    .filter((name) => typeof exported[name] === "function" && examples(room, name).length > 0)
    .flatMap((name) => CHANGES.map((change) => [name, change] as const));

  it.each(functions)("%s answers what its type says, whatever is done to %s", (name, change) => {
    const facts = factsOf(room).functions[name];
    if (facts === undefined) throw new Error(name);
    const faults = new Set<string>();
    const others = new Set(Object.keys(facts.inputs).map((key) => key.replace("?", "")));
    for (const whole of examples(room, name)) {
      const places = placesIn(whole, { record: facts.inputs }, "");
      for (const changed of [whole, ...variations(whole, { record: facts.inputs }, places, change)]) {
        const outcome = outcomeOf(room, name, exported, changed);
        if ("refused" in outcome) continue;
        const given = JSON.stringify(changed);
        for (const fault of misfits(outcome.answer, facts.output, "")) faults.add(fault);
        for (const [path, one] of within(outcome.answer)) {
          const { source, unit } = one;
          if (typeof source === "string" && !isSource(source) && !given.includes(JSON.stringify(source)))
            faults.add(`${path}.source: ${source} is not in shared/sources.json`);
          if (typeof unit === "string" && !UNITS.has(unit)) faults.add(`${path}.unit: ${unit} is no unit`);
        }
        const results = placesIn(outcome.answer, facts.output, "");
        for (const warning of warningsOf(outcome.answer)) {
          const again = (value: number, path: string) => {
            const other = outcomeOf(room, name, exported, spoiled(changed, path, value));
            return "refused" in other
              ? undefined
              : warningsOf(other.answer).some((one) => isSame(one, warning));
          };
          for (const fault of untrue(warning, changed, outcome.answer, places, results, others, again))
            faults.add(fault);
        }
      }
    }
    expect([...faults]).toEqual([]);
  });
});
