/**
 * A star point that should float and lies on the neutral or the frame: each branch then has its own phase voltage whatever the others do.
 * Ohm: 480 V/√3 across 7.68 Ω is 36.08 A; floating, with one branch open, two in series across 480 V carry 31.25 A.
 */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, topOf, volts3 } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 7.68)] };
const SUPPLY = volts3([480, 480, 480]);
const OPEN = pairs(["open", 15.4, "open"]);

describe("line currents of 0, 36.1 and 36.1 A with one open branch", () => {
  it.each(["pairs", "single"])("say that the star point does not float, %s", (depth) => {
    const found = diagnose(asked(STAR, [...amps([0, 36.1, 36.1]), ...SUPPLY, ...OPEN], { depth }));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toContainEqual({ kind: "mis-linked", bank: null, as: "neutral" });
    expect(topOf(found)[0]?.faults).toHaveLength(2);
  });

  it("are no part of a drawing with the neutral connected, which is then simply an open branch", () => {
    const drawn = { ...STAR, neutral: "connected" };
    const found = diagnose(asked(drawn, [...amps([0, 36.1, 36.1]), ...SUPPLY, ...OPEN]));
    expect(firstFaults(found)[0]?.kind).toBe("element open");
    const faults = found.groups.flatMap(({ explanations }) => explanations).flatMap((one) => one.faults);
    expect(faults.filter(({ kind }) => kind === "mis-linked")).toEqual([]);
  });
});

it("31.25 A in the two others is a floating star with an open branch", () => {
  const found = diagnose(asked(STAR, [...amps([0, 31.3, 31.2]), ...SUPPLY, ...OPEN], { depth: "pairs" }));
  expect(firstFaults(found)).toEqual([{ kind: "element open", element: "A-L1" }]);
});

it("three equal currents do not tell: the prior stays, and without voltage it is not spoken of", () => {
  const neutral = (readings: Parameters<typeof asked>[1]): number[] =>
    diagnose(asked(STAR, readings))
      .groups.flatMap(({ explanations }) => explanations)
      .filter(({ faults }) => faults.some((one) => one.kind === "mis-linked" && one.as === "neutral"))
      .map(({ probability }) => probability);
  const [live] = neutral([...amps([36.1, 36.1, 36.1]), ...SUPPLY]);
  expect(live).toBeGreaterThan(0.001);
  expect(live).toBeLessThan(0.01);
  expect(neutral(pairs([15.4, 15.4, 15.4]))).toEqual([]);
});
