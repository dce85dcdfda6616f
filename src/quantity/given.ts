/** The one way in which the library meets a call without its argument. */
import { oneOf } from "./check.ts";
import { fail, type Issue } from "./errors.ts";
import { retold } from "./retold.ts";

function reject(received: unknown, path: string, expected: string, missing: boolean): never {
  return fail({ code: missing ? "missing" : "wrong-type", path, expected, received });
}

/**
 * Requires an object with named fields before they are read, so that a call without one is an error of this library and not a
 * TypeError. A list is no such object.
 * @param input - what was passed
 * @param path - what to call it in the message; `"input"` if left out
 * @param expected - what should have been passed, for the message
 * @returns the argument, untouched
 * @throws ElectroheatError `missing`, `wrong-type`
 * @example
 * ```ts
 * given(null as never) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function given<T extends object>(
  input: T,
  path = "input",
  expected = "an object with named fields",
): T {
  if (typeof input === "object" && input !== null && !Array.isArray(input)) return input;
  return reject(input, path, expected, input === undefined || input === null);
}

/**
 * Requires a list, of at least so many items.
 * @param list - what was passed
 * @param path - what to call it in the message
 * @param least - fewest items allowed; 0 if left out
 * @returns the list, untouched
 * @throws ElectroheatError `missing` when there is none or it is too short, `wrong-type`
 * @example
 * ```ts
 * givenList([], "loads", 1) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function givenList<T>(list: readonly T[], path: string, least = 0): readonly T[] {
  if (Array.isArray(list) && list.length >= least) return list;
  const received: unknown = list;
  const missing = received === undefined || received === null || Array.isArray(received);
  return reject(received, path, least === 0 ? "a list" : `a list of at least ${least}`, missing);
}

/**
 * Requires that a record has no other fields than those named, for plans whose fields may be left out: one that is misspelled would
 * else be one that was left out.
 * @param record - what was passed
 * @param names - the fields that it may have
 * @param path - what to call the record in the message; nothing if left out
 * @throws ElectroheatError `unknown-field`
 * @example
 * ```ts
 * onlyFields({ serie: 3 }, ["series"]) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function onlyFields(record: object, names: readonly string[], path = ""): void {
  for (const name of Object.keys(record)) {
    if (names.includes(name)) continue;
    const at = path === "" ? name : `${path}.${name}`;
    fail({ code: "unknown-field", path: at, expected: oneOf(names), received: name });
  }
}

const under = (path: string, one: Issue): Issue => ({
  ...one,
  path,
  message: path + one.message.slice(one.path.length),
});

/**
 * Calls a calculation on one argument that goes by another name here: what it refuses is told under that name.
 * @param field - name of the argument here
 * @param compute - the calculation
 * @returns what it returns
 * @throws ElectroheatError as the calculation, with the name for each path
 * @example
 * ```ts
 * asField("size", () => given(null as never, "text")) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function asField<T>(field: string, compute: () => T): T {
  return retold(compute, (one) => under(field, one));
}

/**
 * Calls a calculation on a record that is itself a field of the argument: what it refuses is named within that field, `bar.resistivity20`
 * and not `resistivity20`.
 * @param field - name of the field
 * @param compute - the calculation on what the field holds
 * @returns what it returns
 * @throws ElectroheatError as the calculation, with the field before each path
 * @example
 * ```ts
 * inField("bar", () => given(null as never, "section")) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function inField<T>(field: string, compute: () => T): T {
  return retold(compute, (one) => under(`${field}.${one.path}`, one));
}
