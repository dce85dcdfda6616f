/**
 * Reading data of unknown make: only own data properties are looked at, so that no getter, no inherited name and no
 * method of the value's own ever runs. A proxy may still throw from its traps; whoever calls these catches that.
 */
import { fail } from "../quantity/index.ts";

/** Most items of one list, and most values in one set of inputs: enough for any module, and bounded. */
const MOST_ITEMS = 100_000;
export const MOST_VALUES = 1_000_000;
/** Longest text taken. */
export const LONGEST_TEXT = 1000;

/** Nothing there: absent, null, or text without a character that shows. */
export function isBlank(value: unknown): boolean {
  if (value === undefined || value === null || value === "") return true;
  return typeof value === "string" && value.length <= LONGEST_TEXT && value.trim() === "";
}

/** A record made of own fields: no class of its own (a Date, a Map, a quantity object of another library). */
function isPlainRecord(value: unknown): value is object {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  const prototype = Object.getPrototypeOf(value);
  // Object.prototype of any realm: the one that inherits from nothing.
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}

function dataOf(path: string, value: object, key: string): unknown {
  const found = Object.getOwnPropertyDescriptor(value, key);
  if (found === undefined) return undefined;
  if (!("value" in found)) {
    return fail({ code: "wrong-type", path, expected: "plain data", received: "a computed field" });
  }
  return found.value;
}

const under = (path: string, key: string | number): string => (path === "" ? String(key) : `${path}.${key}`);

/** Names and values of a plain record. What is expected is put into words only when it is not. */
export function fieldsOf(path: string, value: unknown, expected: () => string): ReadonlyMap<string, unknown> {
  const at = path || "inputs";
  if (!isPlainRecord(value)) {
    const code = isBlank(value) ? "missing" : "wrong-type";
    return fail({ code, path: at, expected: expected(), received: value });
  }
  const fields = new Map<string, unknown>();
  for (const key of Reflect.ownKeys(value)) {
    if (typeof key === "symbol") {
      return fail({ code: "unknown-field", path: at, expected: "no such field", received: key });
    }
    if (fields.size >= MOST_ITEMS) tooMany(at, MOST_ITEMS);
    fields.set(key, dataOf(under(path, key), value, key));
  }
  return fields;
}

/** Items of a list; a hole is undefined. */
export function itemsOf(path: string, value: unknown, expected: string): readonly unknown[] {
  if (isBlank(value)) fail({ code: "missing", path, expected, received: value });
  if (!Array.isArray(value)) return fail({ code: "wrong-type", path, expected, received: value });
  const length = dataOf(path, value, "length");
  if (typeof length !== "number" || length > MOST_ITEMS) tooMany(path, MOST_ITEMS);
  const items: unknown[] = [];
  for (let i = 0; i < (length as number); i += 1) items.push(dataOf(under(path, i), value, String(i)));
  return items;
}

export function tooMany(path: string, most: number): never {
  return fail({ code: "out-of-range", path, expected: `at most ${most} values`, received: "more" });
}

/** Path of a field or item below another. */
export function below(path: string, key: string | number): string {
  return under(path, key);
}
