/** The integrator against closed forms, against an independent package, and at what it must refuse. */
import { integrateOde } from "electroheat/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { odexState } from "../support/odex.ts";

type Derivative = (at: number, state: readonly number[]) => readonly number[];
const value = (state: readonly number[], i = 0): number => state[i] as number;

// Systems with a solution in closed form.
const cases: readonly (readonly [string, Derivative, readonly number[], number, readonly number[]])[] = [
  ["decay", (_, [y]) => [-(y as number)], [1], 3, [Math.exp(-3)]],
  ["growth by place", (x, [y]) => [2 * x * (y as number)], [1], 1.5, [Math.exp(2.25)]],
  ["logistic", (_, [y]) => [(y as number) * (1 - (y as number))], [0.1], 4, [1 / (1 + 9 * Math.exp(-4))]],
  ["oscillator", (_, [y, v]) => [v as number, -(y as number)], [1, 0], 20, [Math.cos(20), -Math.sin(20)]],
  ["a polynomial", (x) => [5 * x ** 4], [1], 2, [33]],
  ["a square root", (_, [y]) => [1 / (2 * (y as number))], [1], 8, [3]],
];

describe("integrateOde", () => {
  it.each(cases)("%s reaches its closed form", (_, derivative, initial, end, expected) => {
    const found = integrateOde({ derivative, start: 0, end, initial, relativeTolerance: 1e-12 });
    expect(found.at).toBe(end);
    expect(found.stopped).toBe("end");
    expected.forEach((wanted, i) => {
      expect(Math.abs(value(found.state, i) - wanted)).toBeLessThan(1e-9 * Math.max(1, Math.abs(wanted)));
    });
  });

  it.each(cases)("%s agrees with odex to 1e-8", (_, derivative, initial, end) => {
    const { state } = integrateOde({ derivative, start: 0, end, initial, relativeTolerance: 1e-12 });
    odexState(derivative, 0, initial, end).forEach((other, i) => {
      expect(Math.abs(value(state, i) - other)).toBeLessThan(1e-8 * Math.max(1, Math.abs(other)));
    });
  });

  it("gets better in proportion to what is asked", () => {
    const errors = [1e-4, 1e-6, 1e-8, 1e-10].map((relativeTolerance) => {
      const { state } = integrateOde({
        derivative: (_, [y, v]) => [v as number, -(y as number)],
        start: 0,
        end: 10,
        initial: [1, 0],
        relativeTolerance,
        absoluteTolerance: relativeTolerance,
      });
      return Math.hypot(value(state) - Math.cos(10), value(state, 1) + Math.sin(10));
    });
    errors.slice(1).forEach((error, i) => {
      expect(error).toBeLessThan((errors[i] as number) / 20);
    });
  });

  it("keeps what a system of linear exchange keeps: the sum", () => {
    const rate = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(rate, rate, rate, fc.double({ min: 0.1, max: 10, noNaN: true }), (a, b, c, end) => {
        const { state } = integrateOde({
          derivative: (_, [x, y, z]) => {
            const first = a * (x as number) - b * (y as number);
            const second = c * (y as number);
            return [-first, first - second, second + 0 * (z as number)];
          },
          start: 0,
          end,
          initial: [1, 2, 3],
        });
        expect(Math.abs(value(state) + value(state, 1) + value(state, 2) - 6)).toBeLessThan(1e-12);
      }),
      { numRuns: 1000 },
    );
  });

  it("stops where the event is, as exactly as the state", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (level, rate) => {
          const found = integrateOde({
            derivative: (_, [y]) => [-rate * (y as number)],
            start: 0,
            end: 10 / rate,
            initial: [1],
            relativeTolerance: 1e-12,
            event: (_, [y]) => (y as number) - level,
          });
          expect(found.stopped).toBe("event");
          expect(Math.abs(found.at * rate + Math.log(level))).toBeLessThan(1e-10);
          expect(Math.abs(value(found.state) - level)).toBeLessThan(1e-11);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("stops at once on an event that holds at the start, and not at all on one that never comes", () => {
    const input = { derivative: () => [1], start: 2, end: 3, initial: [0] };
    expect(integrateOde({ ...input, event: () => 0 })).toEqual({
      at: 2,
      state: [0],
      stopped: "event",
      steps: 0,
    });
    expect(integrateOde({ ...input, event: () => 1 }).stopped).toBe("end");
    expect(integrateOde({ ...input, event: (_, [y]) => (y as number) - 1 }).at).toBeCloseTo(3, 12);
  });

  it("stops at a place, wherever the state is (y = x⁴ from 1 on)", () => {
    const { at, state } = integrateOde({
      derivative: (x) => [4 * x ** 3],
      start: 1,
      end: 3,
      initial: [1],
      event: (x) => 1.7 - x,
    });
    expect(at).toBeCloseTo(1.7, 12);
    expect(value(state)).toBeCloseTo(1.7 ** 4, 8);
  });

  it("sees a jump of the slope", () => {
    const { state } = integrateOde({
      derivative: (x) => [x < 1 / 3 ? 1 : 5],
      start: 0,
      end: 1,
      initial: [0],
    });
    expect(value(state)).toBeCloseTo(1 / 3 + 10 / 3, 8);
  });

  it("takes no step longer than allowed", () => {
    const input = { derivative: () => [1], start: 0, end: 1, initial: [0] };
    expect(integrateOde({ ...input, largestStep: 0.001 }).steps).toBeGreaterThanOrEqual(1000);
    expect(integrateOde(input).steps).toBeLessThan(10);
  });

  it("fails loudly where the solution runs away", () => {
    const error = caught(() =>
      integrateOde({ derivative: (_, [y]) => [(y as number) ** 2], start: 0, end: 2, initial: [1] }),
    );
    expect(["no-convergence", "not-a-number"]).toContain(error.code);
    expect(error.argument).toBe("derivative");
    // y = 1/(1 − x): it stands before the pole, and long before the steps run out.
    const [, tries, place] = /after (\d+) steps it stands at ([\d.]+)/.exec(error.message) ?? [];
    expect(Number(tries)).toBeLessThan(2000);
    expect(Number(place)).toBeCloseTo(1, 6);
  });

  it("fails loudly on a stiff system when the steps run out, and says where it stands", () => {
    const error = caught(() =>
      integrateOde({
        derivative: (x, [y]) => [-1e6 * ((y as number) - Math.cos(x))],
        start: 0,
        end: 10,
        initial: [0],
        maximumSteps: 1000,
      }),
    );
    expect(error.code).toBe("no-convergence");
    expect(error.message).toMatch(/after 1000 steps it stands at/);
  });

  it.each([
    ["a slope that is not a number", { derivative: () => [Number.NaN] }, "not-a-number", "derivative"],
    ["a slope of another size", { derivative: () => [1, 2] }, "not-a-number", "derivative"],
    ["ends that are not in order", { end: 0 }, "inconsistent", "end"],
    ["an end that is not a number", { end: Number.POSITIVE_INFINITY }, "not-a-number", "end"],
    ["no state", { initial: [] }, "missing", "initial"],
    ["a state that is not a number", { initial: [Number.NaN] }, "not-a-number", "initial.0"],
    ["a tolerance of a fifth", { relativeTolerance: 0.2 }, "out-of-range", "relativeTolerance"],
    ["a tolerance of zero", { relativeTolerance: 0 }, "out-of-range", "relativeTolerance"],
    ["an absolute tolerance of zero", { absoluteTolerance: 0 }, "out-of-range", "absoluteTolerance"],
    ["too few absolute tolerances", { absoluteTolerance: [] }, "missing", "absoluteTolerance"],
    ["a step of zero", { largestStep: 0 }, "out-of-range", "largestStep"],
    ["no steps", { maximumSteps: 0 }, "out-of-range", "maximumSteps"],
  ] as const)("refuses %s", (_, change, code, argument) => {
    const input = { derivative: () => [1], start: 0, end: 1, initial: [0], ...change };
    const error = caught(() => integrateOde(input));
    expect([error.code, error.argument]).toEqual([code, argument]);
  });
});
