/**
 * What joints in doubt are told to be, one of them and several, and which of like joints is the one to hold the others against. Limits of the
 * trade (50 % above the lowest like joint) are common practice without a published source.
 */
import type { BenchRecord, JointAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { contactMeanwhile, contactSteps, doubtfulJoint } from "../../../src/bench/day/contactConcerns.ts";
import { assessJoints } from "../../../src/bench/day/joints.ts";
import { scanBefore, scanMeanwhile } from "../../../src/bench/day/scanConcerns.ts";
import { day, joint, read, rise } from "../site/made.ts";

const of = (...joints: readonly JointAssessment[]) => day([], { joints });

describe("drops in doubt by themselves", () => {
  const warm = (id: string, millivolts: number, watts: number) =>
    joint(id, {
      contact: {
        drop: (millivolts / 1000) as never,
        spot: 60 as never,
        verdict: "undecided",
        rule: "invented",
      },
      power: watts as never,
    });
  const [a, b] = [warm("a", 35.24, 1.2686), warm("b", 41, 1.5)];
  it("are told of with the drop and the heat", () => {
    expect(doubtfulJoint(a)).toEqual([
      "joint a 35.2 mV and 1.27 W in one contact, much even if its like show the same: not cleared",
    ]);
    expect(doubtfulJoint(joint("c", {}))).toEqual([]);
  });
  it("are one joint or several", () => {
    expect(contactMeanwhile(of(a))).toBe(
      "Not at full load before joint a is opened, or cleared by a drop read across the contact alone: like joints may be bad alike, and nothing beside it shows how low a good one reads.",
    );
    expect(contactMeanwhile(of(a, joint("c", {}), b))).toBe(
      "Not at full load before joints a and b are opened, or cleared by a drop read across the contact alone: like joints may be bad alike, and nothing beside them shows how low a good one reads.",
    );
    expect(contactMeanwhile(of(joint("c", {})))).toBeNull();
    const [one, ...more] = contactSteps(of(a, b));
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      reason:
        "a 35.2 mV and 1.27 W in one contact, b 41.0 mV and 1.50 W in one contact: from about 30 mV on the spots of a tinned contact may soften. Line currents cannot show this, and joints that are bad alike clear each other.",
      about: ["a", "b"],
    });
    expect(one?.action).toMatch(/^Read joints a and b again with the probes on either side of one contact/);
    expect(contactSteps(of(a))[0]?.action).toMatch(/^Read joint a again with the probes/);
    expect([contactSteps(of(joint("c", {}))), contactSteps(null)]).toEqual([[], []]);
  });
});

describe("rises in doubt", () => {
  const seen = (id: string, level: number, atMost: number) =>
    joint(id, { rise: { ...(rise(level, level) as object), atMost } as never });
  // ANSI/NETA ATS-2003, Table 100.18: level 2 is repaired as time permits, level 4 at once.
  const [later, hidden, unclear, fine] = [
    seen("later", 2, 3),
    seen("hidden", 2, 4),
    seen("unclear", 1, 4),
    seen("fine", 1, 3),
  ];
  it("that may hide a bad joint come before full load, one or several", () => {
    expect(scanBefore(of(hidden, later, fine))).toBe(
      "Not at full load before joint hidden is opened, or cleared by the drop in millivolts or a scan nearer to full load: the rise seen does not exclude a bad joint, and full load only adds to it.",
    );
    expect(scanBefore(of(hidden, unclear))).toBe(
      "Not at full load before joints hidden and unclear are opened, or cleared by the drop in millivolts or a scan nearer to full load: the rise seen does not exclude a bad joint, and full load only adds to them.",
    );
    expect(scanBefore(of(later, fine))).toBeNull();
  });
  it("that can wait are repaired in time, one or several", () => {
    expect(scanMeanwhile(of(later, unclear, fine))).toBe(
      "Nothing read here forbids it, but joint later asks for repair: scan again under load until it is remade, and stop if the rise grows; what is not tested has not passed.",
    );
    expect(scanMeanwhile(of(later, hidden))).toBe(
      "Nothing read here forbids it, but joints later and hidden ask for repair: scan again under load until they are remade, and stop if the rise grows; what is not tested has not passed.",
    );
    expect(scanMeanwhile(of(unclear, fine))).toBeNull();
  });
});

describe("like joints", () => {
  const assess = (joints: NonNullable<NonNullable<BenchRecord["asFound"]>["joints"]>) =>
    new Map(
      assessJoints(read({ asFound: { joints } }).asFound?.joints ?? [], {}).map((one) => [one.id, one]),
    );
  const compared = (drop: string | number) =>
    assess([
      { id: "best", drop: 0.004, current: 40 },
      { id: "a", drop, current: 40 },
    ]).get("a")?.comparison;
  it("are investigated only where they are more than half as high again for certain", () => {
    // A plain number has no digit to be off by; one quoted to 0.1 mV may be off by that. 6 mV over 4 mV is 1.5.
    expect([compared(0.006), compared(0.00601), compared(0.00599)]).toEqual([
      "like the best",
      "investigate",
      "like the best",
    ]);
    expect([compared("5.9 mV"), compared("6.0 mV"), compared("6.1 mV"), compared("6.2 mV")]).toEqual([
      "like the best",
      "undecided",
      "undecided",
      "investigate",
    ]);
  });
  it("of which the best may be 0 Ω are never cleared by it", () => {
    // 0.1 mV within one digit may be no drop at all: then no ratio is too large.
    const found = assess([
      { id: "best", drop: "0.1 mV", current: 40 },
      { id: "a", drop: "0.1 mV", current: 39 },
    ]);
    expect(found.get("a")?.comparison).toBe("undecided");
  });
  it("that are equally cool are held against the first of them as written", () => {
    const found = assess([
      { id: "a", rise: "8 K" },
      { id: "b", rise: "8 K" },
      { id: "c", rise: "12 K" },
    ]);
    for (const id of ["a", "b", "c"])
      expect(found.get(id)?.rise?.rule).toMatch(/^Rise over a, the coolest like joint at like load/);
  });
});
