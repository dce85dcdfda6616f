/** Infinity and NaN never leave this room. */
import { fail } from "../quantity/index.ts";

/** Tags a result after making sure that a double could hold it. */
export function held<Q extends number>(value: number, unit: string): Q {
  // Adding 0 turns −0 into 0.
  if (Number.isFinite(value)) return (value + 0) as Q;
  return fail({
    code: "out-of-range",
    path: "result",
    expected: "inputs whose result is within the range of a double",
    received: value,
    unit,
  });
}
