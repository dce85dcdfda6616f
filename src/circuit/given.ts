/** The one way in which this room meets a call without its argument. */
import { fail } from "../quantity/index.ts";

/** Requires the argument object itself, so that a call without one is an error of this library and not a TypeError. */
export function given<T extends object>(input: T, path = "input"): T {
  if (typeof input === "object" && input !== null) return input;
  const code = input === undefined || input === null ? "missing" : "wrong-type";
  return fail({ code, path, expected: "an object with named fields", received: input });
}
