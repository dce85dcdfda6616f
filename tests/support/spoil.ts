/** Spoils one field of a valid input at a time and says what must be refused. */
import { isElectroheatError } from "electroheat/quantity";
import { expect } from "vitest";
import { expectTold } from "./caught.ts";

/** Values no quantity takes, with the code each must be refused with. */
export const notQuantities: readonly (readonly [unknown, string])[] = [
  [undefined, "missing"],
  [null, "missing"],
  ["", "missing"],
  ["5", "not-a-number"],
  ["OL", "not-a-number"],
  [Number.NaN, "not-a-number"],
  [Number.POSITIVE_INFINITY, "not-a-number"],
  [Number.NEGATIVE_INFINITY, "not-a-number"],
  [true, "not-a-number"],
  [{}, "not-a-number"],
  [[5], "not-a-number"],
  [5n, "not-a-number"],
];

export const negative: readonly (readonly [unknown, string])[] = [
  [-1, "out-of-range"],
  [-5e-324, "out-of-range"],
];
export const zero: readonly (readonly [unknown, string])[] = [
  [0, "out-of-range"],
  [-0, "out-of-range"],
];
export const absurd: readonly (readonly [unknown, string])[] = [
  [5e-324, "out-of-range"],
  [9.9e-31, "out-of-range"],
  [1.01e30, "out-of-range"],
  [Number.MAX_VALUE, "out-of-range"],
];
export const notNames: readonly (readonly [unknown, string])[] = [
  [undefined, "missing"],
  [null, "missing"],
  ["", "missing"],
];

/** A copy of plain data with the value at a dotted path replaced. */
export function spoiled<T>(input: T, path: string, value: unknown): T {
  if (path === "") return value as T;
  const [head, ...rest] = path.split(".") as [string, ...string[]];
  if (Array.isArray(input)) {
    return input.map((item, i) => (String(i) === head ? spoiled(item, rest.join("."), value) : item)) as T;
  }
  const record = input as Record<string, unknown>;
  return { ...record, [head]: spoiled(record[head], rest.join("."), value) } as T;
}

/** Expects a typed error with this code on this argument, and nothing else. */
export function expectRefusal(call: () => unknown, code: string, argument: string, message: string): void {
  let thrown: unknown = "nothing";
  try {
    call();
  } catch (error) {
    thrown = error;
  }
  if (!isElectroheatError(thrown)) expect.fail(`${message}: threw ${String(thrown)}`);
  expect([thrown.code, thrown.argument], message).toEqual([code, argument]);
  expectTold(thrown.issues);
}
