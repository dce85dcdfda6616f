/**
 * What is noted of the fields of a record is what the functions do with them: beyond its limits a function refuses the field by its path,
 * at its limits it does not; what it takes when the field is left out is the default; and every number that a person fills in has a symbol,
 * and a unit that is the one it is read in. The functions are called directly, past the catalogue's own checks. The inputs of one
 * calculation are held to the same in `ranges.test.ts`.
 */
import { type CatalogueEntry, catalogueEntries, catalogueShapes } from "electroheat/catalogue";
import { isElectroheatError } from "electroheat/quantity";
import katex from "katex";
import { describe, expect, it } from "vitest";
import { parseRecord } from "../../src/bench/record/schema.ts";
import { inside } from "../../src/catalogue/facts.ts";
import type { ValueNote } from "../../src/catalogue/note.ts";
import { noteOn } from "../../src/catalogue/read.ts";
import type { Shape } from "../../src/catalogue/shape.ts";
import { full } from "../bench/slips.ts";
import { examples } from "../support/examples.ts";
import { alternatives } from "../support/places.ts";
import { spoiled } from "../support/spoil.ts";

const entries = catalogueEntries();
const rooms: Record<string, Record<string, (...args: unknown[]) => unknown>> = {};
for (const room of new Set(entries.map((entry) => entry.room)))
  rooms[room] = await import(`../../src/${room}/index.ts`);

/** A number that may be filled in, with all that is noted of it. */
interface Field {
  /** `room.Type field`, or `room.function field` where the record has no name. */
  readonly name: string;
  /** Unit of its type; empty for a number without a tag. */
  readonly unit: string;
  readonly note: ValueNote;
}

/** Results of ours that another function takes again: nobody fills them in. */
const PASSED_ON = ["bench.ModuleAssessment", "bench.AssessedModule", "quantity.Warning"];

/** The numbers in a shape, each with its note. */
function* numbersIn(shape: Shape, given: ValueNote | undefined, name: string): Generator<Field> {
  const own = typeof shape === "object" && "ref" in shape ? shape.ref : name;
  if (PASSED_ON.includes(own)) return;
  const note = noteOn(shape, given);
  const unit = inside(shape, "number");
  if (unit !== undefined) yield { name: own, unit, note };
  for (const one of inside(shape, "either") ?? []) yield* numbersIn(one, note, own);
  // What is noted of a list that may also be a number holds for its items.
  const each = note.each ?? (note.symbol === undefined ? undefined : note);
  for (const kind of ["list", "map"] as const) {
    const items = inside(shape, kind);
    if (items !== undefined) yield* numbersIn(items, each, own);
  }
  for (const one of inside(shape, "tuple") ?? []) yield* numbersIn(one, each, own);
  for (const [key, field] of Object.entries(inside(shape, "record") ?? {})) {
    const path = key.replace("?", "");
    yield* numbersIn(field, note.fields?.[path], `${own.split(" ")[0]} ${path}`);
  }
}

/** Numbers that are told by the table they stand in, or by the name that the person gave them. */
const UNTOLD = ["circuit.buildModule elements", "circuit.ModulePlan elements", "wiring.SharedTable rows"];

const filledIn: Field[] = entries
  .filter(({ id }) => id !== "bench.assessmentText")
  .flatMap(({ id, inputs }) => inputs.flatMap((one) => [...numbersIn(one.shape, one, `${id} ${one.name}`)]));
const notedShapes = catalogueShapes().filter(({ note }) => Object.keys(note).length > 0);
const inShapes: Field[] = notedShapes.flatMap(({ name, shape, note }) => [...numbersIn(shape, note, name)]);

describe("every number of a record", () => {
  it.each([
    ["filled in", filledIn],
    ["of a shape with a note", inShapes],
  ] as const)("%s has a symbol in TeX, and says what it is where its type does not", (_what, fields) => {
    expect(fields.length).toBeGreaterThan(50);
    const faults = fields.flatMap(({ name, unit, note }) => {
      if (UNTOLD.includes(name)) return [];
      const kinds = ["ratio", "count", "degrees", "number"];
      return [
        ...(note.symbol ? [] : [`${name} has no symbol`]),
        ...((unit === "" ? kinds.includes(note.is ?? "") : note.is === undefined)
          ? []
          : [`${name} is ${note.is}`]),
        ...(unit === "" || (note.unit ?? unit) === unit ? [] : [`${name} is in ${unit}, not ${note.unit}`]),
      ];
    });
    expect([...new Set(faults)]).toEqual([]);
    for (const symbol of new Set(fields.flatMap(({ note }) => note.symbol ?? [])))
      katex.renderToString(symbol, { throwOnError: true, strict: false, output: "mathml" });
  });
});

/** A place within an argument that is noted: its path, what is noted of it, and the shape it has. */
interface Place {
  readonly name: string;
  readonly path: string;
  readonly value: unknown;
  readonly note: ValueNote;
  readonly shape: Shape;
  readonly optional: boolean;
}

/** The places of a value, and those that it leaves out. */
function* placesOf(
  value: unknown,
  shape: Shape,
  given: ValueNote | undefined,
  path: string,
  name: string,
  optional = false,
): Generator<Place> {
  const own = typeof shape === "object" && "ref" in shape ? shape.ref : name;
  const note = noteOn(shape, given);
  yield { name: own === name ? name : `${name} ${own}`, path, value, note, shape, optional };
  if (typeof value !== "object" || value === null) return;
  const kinds = alternatives(shape);
  for (const kind of kinds) {
    const items = inside(kind, "list") ?? inside(kind, "map");
    if (items !== undefined)
      for (const [key, one] of Object.entries(value))
        yield* placesOf(one, items, note.each, `${path}.${key}`, own);
    const chosen = Object.entries(inside(kind, "record") ?? {});
    // Of several records the one whose names these are.
    const isMeant = chosen.every(([key, field]) => {
      const names = inside(field, "names");
      const found: unknown = (value as Record<string, unknown>)[key];
      return names === undefined || kinds.length === 1 || names.includes(found as string);
    });
    if (!isMeant) continue;
    for (const [key, field] of chosen) {
      const at = key.replace("?", "");
      const one: unknown = (value as Record<string, unknown>)[at];
      yield* placesOf(
        one,
        field,
        note.fields?.[at],
        `${path}.${at}`,
        `${own.split(" ")[0]} ${at}`,
        key !== at,
      );
    }
  }
}

function call({ room, name, takes, declared }: CatalogueEntry, inputs: Record<string, unknown>): unknown {
  const run = rooms[room]?.[name] as (...args: unknown[]) => unknown;
  return takes === "fields" ? run(inputs) : run(...declared.map((one) => inputs[one]));
}

/** Code and path of what a call is refused for; undefined for an answer. */
function refusals(entry: CatalogueEntry, inputs: Record<string, unknown>): [code: string, path: string][] {
  try {
    if (entry.id === "bench.assessModule") parseRecord(inputs);
    else call(entry, inputs);
    return [];
  } catch (error) {
    if (!isElectroheatError(error)) return [[String(error), ""]];
    return error.issues.map(({ code, path }) => [code, path]);
  }
}

const beside = (value: number, sign: 1 | -1, is: string | undefined): number =>
  is === "count" ? value + sign : value === 0 ? sign * 1e-12 : value + sign * Math.abs(value) * 1e-9;

function probesOf({ min, max, above, below, is }: ValueNote): (readonly [value: number, allowed: boolean])[] {
  return [
    ...(min === undefined
      ? []
      : ([
          [min, true],
          [beside(min, -1, is), false],
        ] as const)),
    ...(max === undefined
      ? []
      : ([
          [max, true],
          [beside(max, 1, is), false],
        ] as const)),
    ...(above === undefined ? [] : ([[above, false]] as const)),
    ...(below === undefined ? [] : ([[below, false]] as const)),
    ...(is === "count" ? ([[(min ?? 1) + 0.5, false]] as const) : []),
  ];
}

/** Every place of the worked examples that is noted within a record, once for each field. */
const places = new Map<
  string,
  readonly [entry: CatalogueEntry, whole: Record<string, unknown>, place: Place]
>();
for (const entry of entries) {
  const wholes = entry.id === "bench.assessModule" ? [full()] : examples(entry.room, entry.name);
  for (const whole of wholes as Record<string, unknown>[])
    for (const input of entry.inputs)
      for (const place of placesOf(
        whole[input.name],
        input.shape,
        input,
        input.name,
        `${entry.id} ${input.name}`,
      ))
        if (place.path !== input.name) {
          const key = `${place.name} ${place.value === undefined}`;
          if (!places.has(key)) places.set(key, [entry, whole, place]);
        }
}
const present = [...places.values()].filter(([, , { value }]) => value !== undefined);
const isNumber = ({ shape, value, note }: Place) =>
  alternatives(shape).some((kind) => inside(kind, "number") !== undefined) &&
  (typeof value === "number" || note.unit !== undefined);

/** Allowed elsewhere, and not in the first of a list: a healthy oven has power. */
const NARROWED = ["process.heatUpOptions power of process.heatUpOptions: 0"];

describe("limits of a field", () => {
  const limited = present
    .filter(([, , place]) => isNumber(place) && probesOf(place.note).length > 0)
    .map(([entry, whole, place]) => [`${place.name} of ${entry.id}`, entry, whole, place] as const);

  it("are stated", () => {
    expect(limited.length).toBeGreaterThan(50);
  });

  it.each(limited)("%s", (name, entry, whole, { path, note }) => {
    const faults = probesOf(note).flatMap(([value, allowed]) => {
      // A diagnosis of ten thousand elements takes its time; a record is only read here.
      if (allowed && entry.room === "bench" && entry.id !== "bench.assessModule") return [];
      if (NARROWED.includes(`${name}: ${value}`)) return [];
      const found = refusals(entry, spoiled(whole, path, value));
      const blamed = found.some(([code, at]) => code === "out-of-range" && at === path);
      return blamed === allowed ? [`${value} should be ${allowed ? "allowed" : "refused"}: ${found}`] : [];
    });
    expect(faults).toEqual([]);
  });
});

describe("defaults of a field", () => {
  const left = [...places.values()]
    .filter(
      ([, , { note, optional, value }]) => note.default !== undefined && optional && value === undefined,
    )
    .map(([entry, whole, place]) => [`${place.name} of ${entry.id}`, entry, whole, place] as const);

  it("are stated", () => {
    expect(left.length).toBeGreaterThan(5);
  });

  it.each(left)("%s", (_name, entry, whole, { path, note }) => {
    expect(call(entry, spoiled(whole, path, note.default))).toEqual(call(entry, whole));
  });
});

describe("a quantity of a record", () => {
  const quoted = present.filter(([{ id }, , { shape, note }]) => {
    const read = alternatives(shape);
    return (
      id === "bench.assessModule" && read.includes("text") && note.symbol !== undefined && read.length > 1
    );
  });

  it.each(quoted.map(([, whole, place]) => [place.name, whole, place] as const))(
    "%s is in the unit that the record reads it in",
    (_name, whole, { path, note }) => {
      // A flag is no quantity, and the refusal says what would be one.
      let said = "";
      try {
        parseRecord(spoiled(whole, path, true));
      } catch (error) {
        if (isElectroheatError(error)) said = error.issues.find((one) => one.path === path)?.expected ?? "";
      }
      const unit = / as a number in (\S+) or text with its unit/.exec(said)?.[1];
      // The last digit of an instrument is in the unit that it reads.
      if (note.unit === undefined) expect(["Ω", "A", "V"], said).toContain(unit);
      else expect(note.unit, said).toBe(unit);
      expect(note.min === 0 || note.above === 0 || unit === "°C", said).toBe(true);
    },
  );

  it("is one of many", () => {
    expect(quoted.length).toBeGreaterThan(20);
  });
});

describe("a list", () => {
  const lists = present.filter(([, , { note }]) => note.least !== undefined || note.most !== undefined);

  it.each(
    lists.map(([entry, whole, place]) => [`${place.name} of ${entry.id}`, entry, whole, place] as const),
  )(
    "%s has as many items as its note says, and no fewer",
    (_name, entry, whole, { path, value, note: { least = 0, most = 0 } }) => {
      const items = value as readonly unknown[];
      for (const size of [least - 1, most + 1].filter((one) => one >= 0 && one !== 1)) {
        const other = Array.from({ length: size }, (_, i) => items[i % items.length]);
        const found = refusals(entry, spoiled(whole, path, other));
        expect(
          found.some(([, at]) => at === path || at.startsWith(`${path}.`) || path.startsWith(`${at}.`)),
          `${size}: ${found}`,
        ).toBe(true);
      }
    },
  );
});
