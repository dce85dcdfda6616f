/** What star, delta and three phasors are told that have no answer, and how each measure of unbalance is named. */
import {
  branchesFromLineCurrents,
  deltaFromStar,
  deltaFromStarImpedance,
  negativeSequenceRatio,
  starFromDelta,
  starFromDeltaImpedance,
  symmetricalComponents,
  unbalance,
  unbalanceByDefinition,
} from "electroheat/circuit";
import { amperes, ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { refusal } from "../support/told.ts";

describe("star, delta and unbalance", () => {
  it("have no equivalent with two shorted arms, without an impedance, in resonance", () => {
    expect(refusal(() => deltaFromStar({ r1: ohms(0), r2: ohms(0), r3: ohms(5) })).slice(0, 3)).toEqual([
      "inconsistent",
      "star",
      "at most one arm of 0 Ω",
    ]);
    const z = (re: number, im: number) => ({ re, im });
    const expected = "a finite impedance, each part at most 1e30";
    const delta = (r12: unknown) => () =>
      starFromDeltaImpedance({ r12, r23: z(1, 0), r31: z(1, 0) } as never);
    expect(refusal(delta(undefined))).toEqual(["missing", "r12", expected, "undefined", "Ω"]);
    expect(refusal(delta(z(1, Number.NaN)))).toEqual(["not-a-number", "r12", expected, "NaN", "Ω"]);
    expect(refusal(delta(z(Number.NaN, 1)))).toEqual(["not-a-number", "r12", expected, "NaN", "Ω"]);
    expect(refusal(delta(z(1, 2e30)))).toEqual(["out-of-range", "r12", expected, "2e+30", "Ω"]);
    expect(refusal(() => starFromDeltaImpedance({ r12: z(0, 1), r23: z(0, -2), r31: z(0, 1) }))).toEqual([
      "inconsistent",
      "delta",
      "impedances whose sum is not 0 (no resonance)",
      "0",
      undefined,
    ]);
    const none = { r1: z(1, 0), r2: z(0, 0), r3: z(1, 0) };
    expect(refusal(() => deltaFromStarImpedance(none))).toEqual([
      "inconsistent",
      "r2",
      "an impedance other than 0",
      "0",
      "Ω",
    ]);
    for (const [call, path] of [
      [starFromDeltaImpedance, "delta"],
      [deltaFromStarImpedance, "star"],
      [deltaFromStar, "star"],
      [starFromDelta, "delta"],
    ] as const)
      expect(refusal(() => call(undefined as never)).slice(0, 2)).toEqual(["missing", path]);
    // j·(1 + 1)·x + j²: with x = −1/2 the products cancel.
    expect(
      refusal(() => deltaFromStarImpedance({ r1: z(0, 1), r2: z(0, 1), r3: z(0, -0.5) })).slice(0, 2),
    ).toEqual(["inconsistent", "star"]);
  });

  it("of phasors names the one that is none, and the system without a positive sequence", () => {
    const x = { re: 1, im: 0 };
    const expected = "a finite phasor, each part at most 1e30";
    expect(refusal(() => symmetricalComponents([x, x] as never)).slice(0, 3)).toEqual([
      "missing",
      "phasors.2",
      expected,
    ]);
    expect(refusal(() => symmetricalComponents([x, { re: Number.NaN, im: 0 }, x])).slice(0, 3)).toEqual([
      "not-a-number",
      "phasors.1",
      expected,
    ]);
    expect(refusal(() => negativeSequenceRatio([x, x, x])).slice(0, 3)).toEqual([
      "inconsistent",
      "phasors",
      "some positive sequence",
    ]);
    // A balanced system of positive sequence has none of the other, to the last digit.
    expect(
      negativeSequenceRatio([x, { re: -0.5, im: -Math.sqrt(3) / 2 }, { re: -0.5, im: Math.sqrt(3) / 2 }]),
    ).toBe(0);
  });

  it("of magnitudes gives each definition its name, and says why one is not told", () => {
    // 230, 232, 225: mean 229; largest deviation 4; spread 7.
    expect(unbalance({ l1: 230, l2: 232, l3: 225 })).toMatchObject({
      mean: 229,
      maxDeviation: expect.closeTo(4 / 229, 14),
      spread: expect.closeTo(7 / 229, 14),
    });
    expect(unbalance({ l1: 3, l2: 1, l3: 1 }).negativeSequence).toBeNull();
    expect(unbalance({ l1: 2, l2: 1, l3: 1 }).negativeSequence).toBeCloseTo(1, 6);
    expect(refusal(() => unbalance({ l1: 0, l2: 0, l3: 0 })).slice(0, 2)).toEqual(["out-of-range", "mean"]);
    expect(refusal(() => unbalance({ l1: 1, l2: -1, l3: 1 })).slice(0, 3)).toEqual([
      "out-of-range",
      "l2",
      "0 or more",
    ]);
    for (const [measured, first, known] of [
      ["line voltages", "line voltage unbalance rate", true],
      ["voltages to neutral", "phase voltage unbalance rate", false],
      ["line currents", "current unbalance rate", false],
    ] as const) {
      const all = unbalanceByDefinition({ l1: 230, l2: 232, l3: 225, measured });
      expect(all.map(({ definition }) => definition)).toEqual([
        first,
        "negative over positive sequence",
        "spread over mean",
      ]);
      const [rate, sequence, spread] = all;
      expect([rate?.value, spread?.value]).toEqual([
        expect.closeTo(4 / 229, 14),
        expect.closeTo(7 / 229, 14),
      ]);
      if (measured === "line voltages")
        expect([sequence?.value !== null, sequence?.reason]).toEqual([known, ""]);
      if (measured === "voltages to neutral")
        expect([sequence?.value, (sequence?.reason ?? "").length > 0]).toEqual([null, true]);
      expect([rate?.reason, spread?.reason]).toEqual(["", ""]);
      for (const { formula, source } of all)
        expect([formula, source].every((text) => text.length > 3)).toBe(true);
    }
  });

  it("of line currents names a triangle of voltages that is none", () => {
    const at =
      (v12: number, l1 = 10) =>
      () =>
        branchesFromLineCurrents({
          connection: "delta",
          v12: volts(v12),
          v23: volts(240),
          v31: volts(240),
          l1: amperes(l1),
          l2: amperes(10),
          l3: amperes(10),
        });
    expect(refusal(at(480))).toEqual([
      "inconsistent",
      "v12",
      "three voltages that close a triangle (each less than the other two together): all lines alive",
      '"480, 240, 240 V"',
      undefined,
    ]);
    expect(at(240)()).toMatchObject({ outcome: "solved" });
    expect(at(240, 0)()).toMatchObject({ outcome: expect.any(String) });
    expect(at(240, 21)()).toEqual({ outcome: "does not fit", why: "closes no triangle" });
  });
});
