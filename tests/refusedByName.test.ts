/**
 * What is refused is refused by the name of its field, with the unit of its type. Names and units come from the types of the
 * functions (written by `npm run facts`), the arguments from the worked examples: neither from the guards that are tested here.
 */
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { factsOf, resolved } from "../src/catalogue/facts.ts";
import type { Shape } from "../src/catalogue/shape.ts";
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

/**
 * Records whose own fields are named where they are refused, without the record: an argument has one of them, so that the name says
 * enough. `oven.ambient` is refused as `ambient`.
 */
const SAID_WITHOUT = /^(?:network|bar|face|flow|oven|impedances)\.(?=[^.]+)/;
/** Refused as a whole: a complex number, and a dataset of the user's that goes through a gate of its own. */
const REFUSED_WHOLE = /\.(?:re|im)$|^dataset\./;

/** A number, or a name of a closed list, within an argument: its path, and the unit of its type; undefined where its type has none. */
interface Place {
  readonly path: string;
  readonly unit: string | undefined;
  /** What no field of the type takes; NaN where nothing else is said. */
  readonly wrong?: string;
}

function placesIn(value: unknown, shape: Shape | undefined, path: string): Place[] {
  const inner = (key: string) => (path === "" ? key : `${path}.${key}`);
  const kinds = alternatives(shape);
  if (typeof value === "number") {
    // One of a few numbers is a name, and refused as one.
    if (kinds.some((kind) => typeof kind === "object" && "values" in kind)) return [];
    const units = kinds.flatMap((kind) =>
      typeof kind === "object" && "number" in kind ? [kind.number] : [],
    );
    return [{ path, unit: units.length === 1 ? units[0] || undefined : undefined }];
  }
  if (typeof value === "string") {
    const named = kinds.some((kind) => typeof kind === "object" && "names" in kind);
    const number = kinds.some((kind) => typeof kind === "object" && "number" in kind);
    // What a dataset is of is a word of its owner; nothing is looked up by it.
    return named && !number && !path.startsWith("dataset.")
      ? [{ path, unit: undefined, wrong: "no such name" }]
      : [];
  }
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, part]) =>
    placesIn(
      part,
      kinds
        .filter((kind) => isMeant(kind, value))
        .map((kind) => partOf(kind, key))
        .find((kind) => kind !== undefined),
      inner(key),
    ),
  );
}

/** What a shape may be, names replaced by what they stand for. */
function alternatives(shape: Shape | undefined): Shape[] {
  if (shape === undefined) return [];
  const known = resolved(shape);
  return typeof known === "object" && "either" in known ? known.either.flatMap(alternatives) : [known];
}

/** Whether a record may be this alternative: the names in it are among those that the alternative has. */
function isMeant(shape: Shape, value: object): boolean {
  if (typeof shape !== "object" || !("record" in shape)) return true;
  return Object.entries(shape.record).every(([key, field]) => {
    const name: unknown = (value as Record<string, unknown>)[key.replace("?", "")];
    const kinds = alternatives(field);
    const named = kinds.every((kind) => typeof kind === "object" && "names" in kind);
    return (
      name === undefined ||
      !named ||
      kinds.some((kind) => typeof kind === "object" && "names" in kind && kind.names.includes(name as string))
    );
  });
}

function partOf(shape: Shape, key: string): Shape | undefined {
  if (typeof shape !== "object") return undefined;
  if ("record" in shape) return shape.record[key] ?? shape.record[`${key}?`];
  if ("list" in shape) return shape.list;
  if ("tuple" in shape) return shape.tuple[Number(key)];
  return "map" in shape ? shape.map : undefined;
}

/** Whether an error says where the wrong number stands. */
function isNamed(path: string, said: string | undefined): boolean {
  if (said === path || said === path.replace(SAID_WITHOUT, "")) return true;
  return REFUSED_WHOLE.test(path) && said !== undefined;
}

/** The field of a place, whatever the number in its list. */
const fieldOf = (path: string) => path.replace(/\.\d+(?=\.|$)/g, ".#");

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
