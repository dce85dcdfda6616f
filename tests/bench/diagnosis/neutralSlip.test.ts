/**
 * A line voltage that reads its own over √3, 480 V / 1.732 = 277.1 V: common practice holds a probe on the neutral for it before a supply
 * that no transformer gives; no published source. Ohms of a sound delta of 12 Ω between lines: 12 beside 24, 8.0 Ω.
 */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, probabilityOf, reading, topOf, volts3 } from "./sheets.ts";

const DELTA = { banks: [bank("A", "delta", 12)] };
const OHMS = pairs([8.1, 8.2, 8.1]);
const between = (from: string, to: string, reads: number) => reading({ kind: "voltage", from, to, reads });
const misread = (row: number, from: string, to: string) => ({
  kind: "misread",
  reading: row,
  of: { kind: "voltage", from, to },
});
const WORDS = /277 V is 480 V over √3: was a probe on the neutral\? Read it again between the lines\.$/;

describe("one line voltage that is another's over √3", () => {
  it("beside ohms alone is a slip before it is an unbalance, which is not ruled out", () => {
    const found = diagnose(asked(DELTA, [...OHMS, ...volts3([480, 480, 277])]));
    expect(firstFaults(found)).toEqual([misread(5, "L3", "L1")]);
    expect(found.groups[0]?.probability).toBeLessThan(0.999);
    expect(probabilityOf(found, [{ kind: "supply unbalance" }])).toBeGreaterThan(0.001);
    expect(found.warnings.map(({ path }) => path)).toEqual(["readings.5.reads"]);
    expect(found.warnings[0]?.message).toMatch(WORDS);
  });

  it.each([
    ["alone, beside the voltage stated", [between("L1", "L2", 277)], 3],
    ["beside one that is right", [between("L1", "L2", 480), between("L2", "L3", 277)], 4],
  ] as const)("%s: misread, and no lost line", (_, volts, row) => {
    const found = diagnose(asked(DELTA, [...OHMS, ...volts]));
    expect(topOf(found)[0]?.faults[0]?.kind).toBe("misread");
    expect(found.warnings.map(({ path }) => path)).toEqual([`readings.${row}.reads`]);
    expect(found.warnings[0]?.message).toMatch(WORDS);
  });

  it("is warned of where no slip may be weighed", () => {
    const found = diagnose(asked(DELTA, [...OHMS, between("L1", "L2", 277)], { priors: { misread: 0 } }));
    expect(found.outcome).toBe("nothing fits");
    const [warning] = found.warnings;
    expect([warning?.code, warning?.path, warning?.limit, warning?.unit]).toEqual([
      "suspicious",
      "readings.3.reads",
      480,
      "V",
    ]);
    expect(warning?.message).toMatch(/^readings\.3\.reads: 277 V is 480 V over √3/);
  });

  it("is taken as read where the amps belong to it", () => {
    // A delta of 12 Ω on 480, 480 and 277 V: 40, 40 and 23.1 A. The triangle's angles: 33.5° between the long sides, 73.3° beside the short one.
    // L1: 40 and 23.1 A at 73.3°, √(40² + 23.1² + 2·40·23.1·cos 73.3°) = 51.7 A, as L3; L2: 2·40·cos(33.5°/2) = 76.6 A. Hot over 1.04.
    const found = diagnose(asked(DELTA, [...amps([49.7, 73.7, 49.7]), ...volts3([480, 480, 277])]));
    expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
    expect(found.warnings).toEqual([]);
  });

  it.each([
    ["two sides: a line wire on the neutral", [480, 277, 277]],
    ["another ratio", [480, 480, 400]],
    ["just beside it", [480, 480, 267]],
  ])("is none: %s", (_, volts) => {
    const found = diagnose(asked(DELTA, [...OHMS, ...volts3(volts)]));
    expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
    expect(found.warnings).toEqual([]);
  });

  it("is none where it was read so twice", () => {
    const found = diagnose(asked(DELTA, [...OHMS, ...volts3([480, 480, 277]), between("L1", "L3", 277)]));
    expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
  });
});
