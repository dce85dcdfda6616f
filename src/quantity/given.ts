/** The one way in which the library meets a call without its argument. */
import { fail } from "./errors.ts";

/**
 * Requires the argument object itself, so that a call without one is an error of this library and not a TypeError.
 * @param input - what was passed
 * @param path - what to call it in the message; `"input"` if left out
 * @returns the argument, untouched
 * @throws ElectroheatError `missing`, `wrong-type`
 * @example
 * ```ts
 * given(null as never) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function given<T extends object>(input: T, path = "input"): T {
  if (typeof input === "object" && input !== null) return input;
  const code = input === undefined || input === null ? "missing" : "wrong-type";
  return fail({ code, path, expected: "an object with named fields", received: input });
}
