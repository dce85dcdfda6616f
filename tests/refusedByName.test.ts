/**
 * What is refused is refused by the name of its field, with the unit of its type. Names and units come from the types of the
 * functions (written by `npm run facts`), the arguments from the worked examples: neither from the guards that are tested here.
 */
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { factsOf } from "../src/catalogue/facts.ts";
import { fieldOf, type Place, placesIn } from "./support/places.ts";
import { onlyRoom, vectorFiles } from "./support/shared.ts";
import { spoiled } from "./support/spoil.ts";

const ROOMS = [
  "bench",
  "circuit",
  "decision",
  "element",
  "joint",
  "material",
  "numeric",
  "process",
  "wiring",
];

/** Refused as a whole: a complex number, and a dataset or a table of the user's that goes through a gate of its own. */
const REFUSED_WHOLE = /\.(?:re|im)$|^dataset\.|\.(?:temperatures|values)\.\d+$/;

/** Whether an error says where the wrong number stands. */
function isNamed(path: string, said: string | undefined): boolean {
  if (said === path) return true;
  return REFUSED_WHOLE.test(path) && said !== undefined;
}

/** For every number and every name of a closed list that a worked example gives to a function: one argument that holds it. */
function cases(room: string, name: string): { place: Place; input: object }[] {
  const facts = factsOf(room).functions[name];
  if (facts === undefined) return [];
  const names = Object.keys(facts.inputs).map((key) => key.replace("?", ""));
  const found = new Map<string, { place: Place; input: object }>();
  for (const { vectors } of files) {
    for (const { call, input, inputs, expected } of vectors) {
      if (call !== `${room}.${name}` || expected === undefined) continue;
      const given = facts.takes === "fields" ? [input ?? inputs?.[0]] : (inputs ?? [input]);
      const whole =
        facts.takes === "fields" ? given[0] : Object.fromEntries(given.map((one, i) => [names[i], one]));
      for (const place of placesIn(whole, { record: facts.inputs }, "")) {
        const key = fieldOf(place.path);
        if (!found.has(key)) found.set(key, { place, input: whole as object });
      }
    }
  }
  return [...found.values()];
}

const files = vectorFiles();
const modules: Record<string, Record<string, unknown>> = {};
for (const room of ROOMS)
  if (onlyRoom.length === 0 || onlyRoom.includes(room))
    modules[room] = await import(`../src/${room}/index.ts`);

describe.each(Object.entries(modules))("%s", (room, exported) => {
  const functions = Object.keys(factsOf(room).functions).filter(
    (name) => typeof exported[name] === "function",
  );

  it.each(functions)("%s refuses what is no number or no name by the name and unit of its field", (name) => {
    const call = exported[name] as (...args: unknown[]) => unknown;
    const fields = factsOf(room).functions[name]?.takes === "fields";
    const faults: string[] = [];
    for (const { place, input } of cases(room, name)) {
      const wrong = spoiled(input, place.path, place.wrong ?? Number.NaN);
      let thrown: unknown = "nothing";
      try {
        call(...(fields ? [wrong] : Object.values(wrong)));
      } catch (error) {
        thrown = error;
      }
      const [issue] = isElectroheatError(thrown) ? thrown.issues : [];
      const unit = issue?.unit ?? place.unit;
      if (!isNamed(place.path, issue?.path) || unit === "" || (place.unit ?? unit) !== unit)
        faults.push(
          `${place.path} ${place.unit}: ${issue ? `${issue.code} ${issue.path} ${issue.unit}` : thrown}`,
        );
    }
    expect(faults).toEqual([]);
  });
});
