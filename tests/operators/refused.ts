/** Calls of the operators that are refused, and what those calls share. */
import { expect, it } from "vitest";
import { caught } from "../support/caught.ts";

/** Change of a valid argument, and the whole message. */
export type Case = readonly [change: object, message: string];

/** Refusals of a function, each from a change of one valid argument that is answered as it stands. */
export function refusals(call: (input: never) => unknown, valid: object, cases: readonly Case[]) {
  it("answers the argument as it stands", () => {
    expect(() => call(valid as never)).not.toThrow();
  });
  it.each(cases)("%j", (change, message) => {
    expect(caught(() => call({ ...valid, ...change } as never)).message).toBe(message);
  });
}

export const normal = { distribution: "normal", estimate: 2, standardUncertainty: 0.1 } as const;
export const rectangular = { distribution: "rectangular", estimate: 2, halfWidth: 0.1 } as const;
export const sum = ({ a, b }: { a: number; b: number }) => a + b;
export const both = { a: normal, b: normal };
export const related = (coefficients: unknown, inputs: unknown = ["a", "b"]) => ({
  correlation: { inputs, coefficients },
});
export const calculation = "a function of one object with named fields";

export const correlations: readonly Case[] = [
  [related(undefined), "correlation.coefficients: missing; expected 2 rows of 2 numbers"],
  [related(null), "correlation.coefficients: missing; expected 2 rows of 2 numbers"],
  [related(5), "correlation.coefficients: 5 is not allowed; expected 2 rows of 2 numbers"],
  [related([[1]]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [related([[1, 0], [0]]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [related(["10", "01"]), "correlation.coefficients: an array is not allowed; expected 2 rows of 2 numbers"],
  [
    related([
      [1, 0],
      [0, Number.NaN],
    ]),
    "correlation.coefficients.1.1: NaN is not allowed; expected a finite number",
  ],
  [
    related([
      [1, 0],
      [0, 0.9],
    ]),
    "correlation.coefficients.1.1: 0.9 is not allowed; expected 1 on the diagonal",
  ],
  [
    related([
      [1, -1.5],
      [-1.5, 1],
    ]),
    "correlation.coefficients.0.1: -1.5 is not allowed; expected -1 to 1",
  ],
  [
    related([
      [1, 0.5],
      [0.25, 1],
    ]),
    "correlation.coefficients.0.1: 0.5 is not allowed; expected the same as correlation.coefficients.1.0, 0.25",
  ],
  [related([], "ab"), "correlation.inputs: missing; expected a list of inputs"],
  [related([], ["a", "c"]), 'correlation.inputs.1: "c" is not allowed; expected one of a, b'],
  [related([], ["b", "b"]), 'correlation.inputs.1: "b" is not allowed; expected each input once'],
  [{ correlation: null }, "correlation: missing; expected an object with named fields"],
];
