/**
 * Banks of unlike size: a branch of a bank of power P in star reads U²/P, with n equal elements side by side (U/√3)² over P/(3n) each.
 * Nine elements of 4 kW on 480 V, three in bank A and six in bank B: 12 kW and 24 kW.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const record = (powers: readonly (string | undefined)[]): BenchRecord => ({
  title: "invented annealing oven",
  nameplate: { power: "36 kW", voltage: "480 V" },
  wiring: {
    banks: ["A", "B"].map((id, i) => {
      const power = powers[i];
      const bank = { id, connection: "star" as const, elementsInParallel: i + 1 };
      return power === undefined ? bank : { ...bank, power };
    }),
    starPoints: "separate",
  },
});
const shared = (assessment: ReturnType<typeof assessModule>) =>
  assessment.warnings.filter(({ path }) => path === "wiring.banks");

describe("banks with their own power", () => {
  it("have targets of their own, from all powers or from all but one", () => {
    for (const powers of [
      ["12 kW", "24 kW"],
      [undefined, "24 kW"],
      ["12 kW", undefined],
    ]) {
      const found = assessModule(record(powers));
      const branches = found.targets.map(({ targets }) => targets.branchResistanceHot as number);
      expect(branches[0]).toBeCloseTo(480 ** 2 / 12_000, 9);
      expect(branches[1]).toBeCloseTo(480 ** 2 / 24_000, 9);
      // Like elements: 4 kW on 277 V each.
      for (const { targets } of found.targets)
        expect(targets.elementResistanceHot).toBeCloseTo(480 ** 2 / 3 / 4000, 9);
      expect(shared(found)).toEqual([]);
      expect(found.draw?.repaired.power).toBeCloseTo(36_000, 6);
    }
  });

  it("are warned of where an equal share makes unlike elements of them, and not where it does not", () => {
    // 18 kW each: 6 kW an element in A, 3 kW in B.
    const [warning] = shared(assessModule(record([undefined, undefined])));
    expect(warning?.message).toContain("6000 W in bank A, 3000 W in bank B");
    const like = record([undefined, undefined]);
    const banks = like.wiring.banks.map((bank) => ({ ...bank, elementsInParallel: 2 }));
    expect(shared(assessModule({ ...like, wiring: { ...like.wiring, banks } }))).toEqual([]);
  });

  it("are refused where they do not add up to the plate", () => {
    for (const powers of [
      ["12 kW", "30 kW"],
      ["36 kW", undefined],
      ["40 kW", undefined],
    ]) {
      try {
        assessModule(record(powers));
        expect.unreachable();
      } catch (error) {
        if (!isElectroheatError(error)) throw error;
        expect(error.issues.map(({ path, code }) => [path, code])).toEqual([
          ["wiring.banks", "inconsistent"],
        ]);
      }
    }
  });
});
