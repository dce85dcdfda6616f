/**
 * Domain checks of this room: those of quantity, within what anyone can measure. A quantity beyond 1e±30 is a slip,
 * and without this bound powers and ratios of such numbers could leave float64 as NaN or infinity.
 */
import * as quantity from "../quantity/index.ts";

const SMALLEST = 1e-30;
const LARGEST = 1e30;

function checkMeasurable(path: string, value: number, unit?: string): void {
  const size = Math.abs(value);
  if (size > LARGEST || (size < SMALLEST && size > 0)) {
    quantity.fail({
      code: "out-of-range",
      path,
      expected: `0 or a size from ${SMALLEST} to ${LARGEST}`,
      received: value,
      ...(unit === undefined ? {} : { unit }),
    });
  }
}

/** A finite number anyone can measure. */
export function checkFinite(path: string, value: number, unit?: string): void {
  quantity.checkFinite(path, value, unit);
  checkMeasurable(path, value, unit);
}

/** The same, above zero. */
export function checkPositive(path: string, value: number, unit?: string): void {
  quantity.checkPositive(path, value, unit);
  checkMeasurable(path, value, unit);
}

/** The same, zero or more. */
export function checkNonNegative(path: string, value: number, unit?: string): void {
  quantity.checkNonNegative(path, value, unit);
  checkMeasurable(path, value, unit);
}

/** A record where one is needed. */
export function checkRecord(path: string, value: unknown): void {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return;
  const missing = value === undefined || value === null;
  quantity.fail({ code: missing ? "missing" : "wrong-type", path, expected: "a record", received: value });
}

/** A list of at least so many items. */
export function checkList(path: string, value: unknown, least: number): void {
  if (Array.isArray(value) && value.length >= least) return;
  const missing = value === undefined || value === null || Array.isArray(value);
  const expected = `a list of at least ${least}`;
  quantity.fail({ code: missing ? "missing" : "wrong-type", path, expected, received: value });
}

/** Text that is not blank: the name or source of a value of the caller's own. */
export function checkText(path: string, value: unknown): void {
  if (typeof value === "string" && value.trim() !== "") return;
  const missing = value === undefined || value === null || typeof value === "string";
  quantity.fail({ code: missing ? "missing" : "wrong-type", path, expected: "text", received: value });
}
