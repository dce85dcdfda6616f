/** The generator against the published first outputs of its two parts, and its numbers against what they must look like. */
import { describe, expect, it } from "vitest";
import { Generator, seededGenerator } from "../../src/operators/random.ts";
import { splitMix64 } from "../../src/operators/splitMix64.ts";

describe("the generator", () => {
  it("gives the first outputs of the authors' xoshiro128** 1.1 from the state 1, 2, 3, 4", () => {
    // Printed in the tests of a widely used random-number library, made with the authors' reference implementation.
    const generator = new Generator([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, () => generator.bits())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it("gives the published first outputs of SplitMix64 from 1234567", () => {
    expect(splitMix64(1_234_567n, 5)).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  it("never gives 0 or 1, and fills both ends", () => {
    const generator = seededGenerator(0);
    let [low, high, sum] = [1, 0, 0];
    const count = 200_000;
    for (let i = 0; i < count; i += 1) {
      const u = generator.uniform();
      low = Math.min(low, u);
      high = Math.max(high, u);
      sum += u;
    }
    expect(low).toBeGreaterThan(0);
    expect(high).toBeLessThan(1);
    expect(low).toBeLessThan(1e-4);
    expect(high).toBeGreaterThan(1 - 1e-4);
    // Mean of n: ½ within four standard deviations of 1/√(12·n).
    expect(Math.abs(sum / count - 0.5)).toBeLessThan(4 / Math.sqrt(12 * count));
  });

  it("gives different streams for neighbouring seeds", () => {
    const first = Array.from({ length: 1000 }, (_, seed) => seededGenerator(seed).bits());
    expect(new Set(first).size).toBe(1000);
  });
});
