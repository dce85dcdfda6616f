/**
 * One checker for all boundaries: reads a value of unknown make by its shape and note into a fresh copy, or fails with the argument's
 * path, what was seen and what is allowed. Quantities may be text with their unit; a blank is missing, never 0.
 */
import {
  type CanonicalUnit,
  checkOneOf,
  type ElectroheatError,
  fail,
  isElectroheatError,
  parseQuantity,
} from "../quantity/index.ts";
import { choiceAmong } from "./alternatives.ts";
import { resolved } from "./facts.ts";
import type { ValueNote } from "./note.ts";
import { below, fieldsOf, isBlank, itemsOf, LONGEST_TEXT, MOST_VALUES, tooMany } from "./plain.ts";
import type { NumberShape, Shape } from "./shape.ts";
import { SHAPE_NOTES } from "./shapes/index.ts";
import { inOurWords, ratioIn } from "./typed.ts";

/** How many values may still be read. */
interface Budget {
  left: number;
}

const NO_NOTE: ValueNote = {};

/** Note on a shape: the entry's own over the one of the named shape. */
export function noteOn(shape: Shape, note: ValueNote | undefined): ValueNote {
  const named = typeof shape === "object" && "ref" in shape ? SHAPE_NOTES[shape.ref] : undefined;
  if (named === undefined) return note ?? NO_NOTE;
  return note?.fields === undefined
    ? named
    : { ...named, ...note, fields: { ...named.fields, ...note.fields } };
}

/** Unit a number is taken in: its tag's, or what its note says of an untagged one. */
export function unitOf(shape: NumberShape, note: ValueNote): string {
  if (shape.number !== "") return shape.number;
  return note.unit ?? (note.is === "degrees" ? "°" : "");
}

/** What a number's note allows, in words. */
export function rangeWords({ min, max, above, below: under, is }: ValueNote): string {
  const whole = is === "count" ? "a whole number" : "";
  if (min !== undefined && max !== undefined) {
    return whole === "" ? `${min} to ${max}` : `${whole} from ${min} to ${max}`;
  }
  const low = min !== undefined ? `${min} or more` : above !== undefined ? `more than ${above}` : "";
  const high = max !== undefined ? `at most ${max}` : under !== undefined ? `less than ${under}` : "";
  const limits = [low, high].filter((one) => one !== "").join(" and ");
  return [whole, limits].filter((one) => one !== "").join(", ") || "a finite number";
}

/** Whether a finite number keeps the limits of its note. */
function keepsRange(value: number, { min, max, above, below: under, is }: ValueNote): boolean {
  return (
    (min === undefined || value >= min) &&
    (max === undefined || value <= max) &&
    (above === undefined || value > above) &&
    (under === undefined || value < under) &&
    (is !== "count" || Number.isSafeInteger(value))
  );
}

function readNumber(shape: NumberShape, note: ValueNote, value: unknown, path: string): unknown {
  let number = value;
  if (typeof value === "string" && shape.number === "" && note.is === "ratio") number = ratioIn(value);
  if (typeof value === "string" && shape.number !== "" && !isBlank(value)) {
    number = parseQuantity(value, { unit: shape.number as CanonicalUnit, path }).value;
  }
  const finite = typeof number === "number" && Number.isFinite(number);
  // + 0: −0 is 0 to people and to JSON.
  if (finite && keepsRange(number as number, note)) return (number as number) + 0;
  const code = finite ? "out-of-range" : isBlank(value) ? "missing" : "not-a-number";
  const unit = unitOf(shape, note);
  const inUnit = unit === "" ? {} : { unit };
  return fail({ code, path, expected: rangeWords(note), received: value, ...inUnit });
}

function readText(value: unknown, path: string): string {
  const expected = `text of at most ${LONGEST_TEXT} characters`;
  if (isBlank(value)) return fail({ code: "missing", path, expected, received: value });
  if (typeof value !== "string") return fail({ code: "wrong-type", path, expected, received: value });
  if (value.length > LONGEST_TEXT) return fail({ code: "malformed-text", path, expected, received: value });
  return value;
}

function readList(of: Shape, note: ValueNote, value: unknown, path: string, budget: Budget): unknown[] {
  const items = itemsOf(path, value, "a list");
  const { least = 0, most = Number.POSITIVE_INFINITY } = note;
  if (items.length < least || items.length > most) {
    const code = items.length === 0 ? "missing" : "out-of-range";
    const expected = most === Number.POSITIVE_INFINITY ? `at least ${least}` : `${least} to ${most}`;
    fail({ code, path, expected: `${expected} in the list`, received: items.length });
  }
  return items.map((item, i) => read(of, note.each, item, below(path, i), budget));
}

function readTuple(
  parts: readonly Shape[],
  note: ValueNote,
  value: unknown,
  path: string,
  budget: Budget,
): unknown[] {
  const items = itemsOf(path, value, `a list of ${parts.length}`);
  if (items.length > parts.length) {
    const received = `${items.length}`;
    fail({ code: "inconsistent", path, expected: `a list of ${parts.length}`, received });
  }
  return parts.map((part, i) => read(part, note.each, items[i], below(path, i), budget));
}

/** `key` may be "__proto__": defined, not assigned, it is a field like any other. */
function put(into: object, key: string, value: unknown): void {
  Object.defineProperty(into, key, { value, enumerable: true, writable: true, configurable: true });
}

function readMap(of: Shape, note: ValueNote, value: unknown, path: string, budget: Budget): object {
  const copy = {};
  for (const [key, one] of fieldsOf(path, value, () => "a record of names and values")) {
    put(copy, key, read(of, note.each, one, below(path, key), budget));
  }
  return copy;
}

/** Fields of a record as they are read, worked out once for each record of shapes. */
interface Field {
  readonly name: string;
  readonly shape: Shape;
  readonly optional: boolean;
  readonly nullable: boolean;
}

const KNOWN_FIELDS = new WeakMap<object, ReadonlyMap<string, Field>>();

function fieldsIn(shapes: Readonly<Record<string, Shape>>): ReadonlyMap<string, Field> {
  const known = KNOWN_FIELDS.get(shapes);
  if (known !== undefined) return known;
  const fields = new Map<string, Field>();
  for (const [key, shape] of Object.entries(shapes)) {
    const optional = key.endsWith("?");
    const name = optional ? key.slice(0, -1) : key;
    fields.set(name, { name, shape, optional, nullable: allowsNull(shape) });
  }
  KNOWN_FIELDS.set(shapes, fields);
  return fields;
}

/** Reads named fields: of a record, or the inputs of an entry. */
export function readFields(
  shapes: Readonly<Record<string, Shape>>,
  notes: Readonly<Record<string, ValueNote>> | undefined,
  value: unknown,
  path: string,
  budget: Budget,
): Record<string, unknown> {
  const fields = fieldsIn(shapes);
  const names = (): string => [...fields.keys()].join(", ");
  const given = fieldsOf(path, value, () => `a record with ${names()}`);
  for (const [key, one] of given) {
    if (fields.has(key)) continue;
    const at = below(path, key || '""');
    fail({ code: "unknown-field", path: at, expected: `one of ${names()}`, received: one });
  }
  const copy: Record<string, unknown> = {};
  for (const { name, shape, optional, nullable } of fields.values()) {
    const one = given.get(name);
    if (optional && isBlank(one) && !(one === null && nullable)) continue;
    copy[name] = read(shape, notes?.[name], one, below(path, name), budget);
  }
  return copy;
}

function allowsNull(shape: Shape): boolean {
  const at = resolved(shape);
  return at === "null" || (typeof at === "object" && "either" in at && at.either.some(allowsNull));
}

/** Whether a value is of the kind that a shape takes, before its contents are looked at. */
function mayBe(shape: Shape, value: unknown): boolean {
  const at = resolved(shape);
  if (at === "null") return value === null;
  if (at === "flag") return typeof value === "boolean";
  if (at === "text") return typeof value === "string";
  if (at === "opaque") return false;
  if ("names" in at) return typeof value === "string" && at.names.includes(value);
  if ("values" in at) return typeof value === "number" && at.values.includes(value);
  if ("number" in at) return typeof value === "number" || (typeof value === "string" && at.number !== "");
  if ("list" in at || "tuple" in at) return Array.isArray(value);
  if ("either" in at) return at.either.some((one) => mayBe(one, value));
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** How far into a value a failed reading got: an unknown name in a field that tells alternatives apart counts least. */
function depthOf(error: ElectroheatError): number {
  const steps = error.argument.split(".").length;
  return error.code === "unknown-name" || error.code === "unknown-field" ? steps - 0.5 : steps;
}

/** Names before numbers, so that "open" is not read as a quantity; then whichever alternative reads the value. */
function readEither(
  shapes: readonly Shape[],
  note: ValueNote,
  value: unknown,
  path: string,
  budget: Budget,
): unknown {
  const names = shapes.flatMap((one) => (typeof one === "object" && "names" in one ? one.names : []));
  if (typeof value === "string" && names.includes(value)) return value;
  const number = shapes.find((one): one is NumberShape => typeof one === "object" && "number" in one);
  if (typeof value === "string" && number?.number === "Ω" && names.includes("open") && !isBlank(value)) {
    const read = parseQuantity(value, { unit: "Ω", path }).value;
    return read === "open" ? read : readNumber(number, note, read, path);
  }
  const choice = choiceAmong(shapes);
  if (choice !== undefined && shapes.some((one) => mayBe(one, value))) {
    const { field, by } = choice;
    const tag = fieldsOf(path, value, () => `a record with ${field}`).get(field);
    const name = checkOneOf(below(path, field), isBlank(tag) ? undefined : tag, [...by.keys()]);
    return read(by.get(name) as Shape, note, value, path, budget);
  }
  let best: ElectroheatError | undefined;
  for (const shape of shapes) {
    if (!mayBe(shape, value)) continue;
    try {
      return read(shape, note, value, path, budget);
    } catch (error) {
      if (!isElectroheatError(error)) throw error;
      if (best === undefined || depthOf(error) > depthOf(best)) best = error;
    }
  }
  if (best !== undefined) throw best;
  const expected = [...new Set([...shapes.map((one) => shapeWords(one, note))])].join(", or ");
  const unknown = typeof value === "string" && names.length > 0 ? "unknown-name" : "wrong-type";
  const wanted = number === undefined ? unknown : "not-a-number";
  return fail({ code: isBlank(value) ? "missing" : wanted, path, expected, received: value });
}

/** A shape in words, for messages. */
export function shapeWords(shape: Shape, note: ValueNote): string {
  const at = resolved(shape);
  if (at === "text") return "text";
  if (at === "flag") return "true or false";
  if (at === "null") return "null";
  if (at === "opaque") return "a value that plain data cannot be";
  if ("number" in at) {
    const unit = unitOf(at, note);
    return `${rangeWords(note)}${unit === "" ? "" : ` ${unit}`}`;
  }
  if ("names" in at) return at.names.map((name) => `"${name}"`).join(" or ");
  if ("values" in at) return at.values.join(" or ");
  if ("list" in at) return "a list";
  if ("tuple" in at) return `a list of ${at.tuple.length}`;
  if ("map" in at) return "a record of names and values";
  if ("either" in at) return at.either.map((one) => shapeWords(one, note)).join(", or ");
  return `a record with ${[...fieldsIn(at.record).keys()].join(", ")}`;
}

/** Reads a value by its shape; the copy shares nothing with it. */
function read(
  shape: Shape,
  given: ValueNote | undefined,
  value: unknown,
  path: string,
  budget: Budget = { left: MOST_VALUES },
): unknown {
  budget.left -= 1;
  if (budget.left < 0) tooMany(path, MOST_VALUES);
  const note = noteOn(shape, given);
  const at = resolved(shape);
  if (at === "text") return readText(value, path);
  if (at === "null" || at === "opaque") {
    if (at === "null" && value === null) return null;
    return fail({ code: "wrong-type", path, expected: shapeWords(at, note), received: value });
  }
  if (at === "flag") {
    if (typeof value === "boolean") return value;
    const code = isBlank(value) ? "missing" : "wrong-type";
    return fail({ code, path, expected: "true or false", received: value });
  }
  if ("number" in at) return readNumber(at, note, value, path);
  if ("names" in at)
    return checkOneOf(path, isBlank(value) ? undefined : inOurWords(value, at.names), at.names);
  if ("values" in at) {
    const number = readNumber({ number: "" }, note, value, path) as number;
    if (at.values.includes(number)) return number;
    return fail({ code: "out-of-range", path, expected: at.values.join(" or "), received: value });
  }
  if ("list" in at) return readList(at.list, note, value, path, budget);
  if ("tuple" in at) return readTuple(at.tuple, note, value, path, budget);
  if ("map" in at) return readMap(at.map, note, value, path, budget);
  if ("either" in at) return readEither(at.either, note, value, path, budget);
  return readFields(at.record, note.fields, value, path, budget);
}
