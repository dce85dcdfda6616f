/**
 * Student's t against its closed forms for one, two and four degrees of freedom (Abramowitz and Stegun, Handbook of Mathematical
 * Functions, 1964, 26.7.3 and 26.7.4), and against itself where one way of computing it hands over to the other.
 */
import { normalCumulative, normalQuantile, studentCumulative, studentQuantile } from "electroheat/numeric";
import type { ElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectRefusal } from "../support/spoil.ts";

/** P(T ≤ t), written down from the handbook's angle θ = atan(t/√ν). */
const CLOSED: Readonly<Record<number, (t: number) => number>> = {
  1: (t) => 0.5 + Math.atan(t) / Math.PI,
  2: (t) => 0.5 + t / (2 * Math.sqrt(2 + t * t)),
  4: (t) => {
    const [sin, cos] = [t / Math.sqrt(4 + t * t), 2 / Math.sqrt(4 + t * t)];
    return 0.5 + (sin * (1 + cos ** 2 / 2)) / 2;
  },
};
const whole = fc.constantFrom(1, 2, 4);

describe("Student's t", () => {
  it("is its closed forms on both sides of 0, and back again", () => {
    fc.assert(
      fc.property(whole, fc.double({ min: -50, max: 50, noNaN: true }), (degreesOfFreedom, t) => {
        const closed = (CLOSED[degreesOfFreedom] as (t: number) => number)(t);
        const probability = studentCumulative({ t, degreesOfFreedom });
        expect(Math.abs(probability - closed)).toBeLessThan(1e-14);
        if (Math.abs(t) < 1e-3) return;
        // Near 1 a probability of float64 no longer says its t.
        const back = studentQuantile({ probability, degreesOfFreedom });
        expect(Math.abs(back / t - 1)).toBeLessThan(1e-11 + 1e-15 / (1 - probability));
      }),
      { numRuns: 1000 },
    );
  });

  it("is the normal distribution without limit of its degrees of freedom", () => {
    for (const t of [-3, -0.5, 0, 1.96]) {
      expect(studentCumulative({ t, degreesOfFreedom: "infinite" })).toBe(normalCumulative(t));
    }
    for (const probability of [0.025, 0.5, 0.975]) {
      expect(studentQuantile({ probability, degreesOfFreedom: "infinite" })).toBe(
        normalQuantile(probability),
      );
    }
    expect(studentQuantile({ probability: 0.5, degreesOfFreedom: 3 })).toBe(0);
  });

  it("does not jump where the series takes over from the continued fraction", () => {
    for (const t of [-9, -2.5, -0.3, 0.3, 1, 2.5, 4]) {
      const [below, above] = [1e5, 100_000.000_01].map((degreesOfFreedom) =>
        studentCumulative({ t, degreesOfFreedom }),
      ) as [number, number];
      // Nine deviations out the series itself ends at 3e-12 of the tail: 9·(6271/92160)·9⁹/ν⁴, its next term.
      expect(Math.abs(above / below - 1)).toBeLessThan(Math.abs(t) > 5 ? 1e-11 : 5e-13);
    }
  });

  it("nor does its inverse, far out in the tail", () => {
    for (const probability of [1e-22, 1e-15, 1e-6, 0.025, 0.4, 0.975]) {
      const [below, above] = [1e5, 100_000.000_01].map((degreesOfFreedom) =>
        studentQuantile({ probability, degreesOfFreedom }),
      ) as [number, number];
      // Ten thousand-millionths of a degree of freedom are a part in 10¹⁵; the series ends at 79·z⁹/92160/ν⁴ or 1e-14.
      expect(Math.abs(above / below - 1), String(probability)).toBeLessThan(2e-12);
    }
  });

  it("takes 0.1 degrees of freedom, no fewer, and no t beyond 1e150", () => {
    const at = (degreesOfFreedom: number) => () => studentCumulative({ t: 1, degreesOfFreedom });
    expect(at(0.1)()).toBeGreaterThan(0.5);
    expectRefusal(at(0.0999), "out-of-range", "degreesOfFreedom", "0.0999");
    // A tail of ν degrees of freedom falls as t^−ν: 1e-20 at ν = 0.1 is a t of about 1e200.
    const far = () => studentQuantile({ probability: 1e-20, degreesOfFreedom: 0.1 });
    expectRefusal(far, "out-of-range", "probability", "1e-20");
    try {
      far();
    } catch (error) {
      expect((error as ElectroheatError).message).toContain("1e150");
    }
  });
});
