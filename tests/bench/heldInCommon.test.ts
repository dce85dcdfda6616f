/**
 * Explanations that cannot be told apart share something all the same: it is one of these joints, it is landed on one of these lines. The
 * advice holds to what they share. Figures by Ohm's and Kirchhoff's laws, worked out beside each check; that a burnt joint is remade before
 * any voltage is common practice, no published source.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const module = (
  connection: "star" | "delta",
  rows: readonly (readonly [from: string, to: string, reads: string])[],
): BenchRecord => ({
  title: "invented bank",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection }] },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" } },
  asFound: { ohms: rows.map(([from, to, reads]) => ({ from, to, reads })) },
});

/** 30 kW at 480 V in star: 7.68 Ω hot, 7.38 Ω cold. */
const star = (third: string): BenchRecord =>
  module("star", [
    ["L1", "S", "7.38 Ω"],
    ["L2", "S", "7.39 Ω"],
    ["L3", "S", third],
  ]);

/** The same in delta: 22.15 Ω cold. A corner that hangs loose leaves 22.15 Ω beside 44.3 Ω between the other two: 14.77 Ω. */
const corner = (toL3: string): BenchRecord =>
  module("delta", [
    ["L1", "L2", "14.77 Ω"],
    ["L2", "L3", toL3],
    ["L3", "L1", toL3],
  ]);

describe("a joint burnt to carbon, nobody knows which of three", () => {
  // With L3 fed through carbon the star point lies half way between L1 and L2: 480·√3/2 = 415.7 V over it, 415.7²/1000 = 173 W in one spot.
  it.each(["107 Ω", "1.00 kΩ", "10.0 kΩ", "50.0 kΩ"])("is remade before any voltage at %s", (reads) => {
    const { answer, parts } = assessModule(star(reads));
    expect(answer[0]).toContain("resistance in the joint where line L3 enters the module");
    expect(answer[2]).toMatch(/^Not before the joint where line L3 enters .* is opened and remade/);
    expect(answer[2]).not.toContain("may run");
    if (reads !== "107 Ω") expect(parts.filter(({ part }) => part.startsWith("element"))).toEqual([]);
  });

  it("leaves an open element its way of running on", () => {
    expect(assessModule(star("OL")).answer[2]).toContain("may run until parts come at 50 %");
  });
});

describe("the corner of a delta whose lug is burnt", () => {
  it.each(["OL", "2.01 kΩ"])("accuses no side: two of them lie in series beside the third (%s)", (reads) => {
    const { answer, nextSteps, parts } = assessModule(corner(reads));
    expect(answer[0]).not.toMatch(/outside its tolerance|A-L\dL\d open/);
    expect(nextSteps[0]?.action).toMatch(
      /^Isolate, then open the joint where line L3 enters the module and the joint of bank A on L3/,
    );
    for (const { action } of nextSteps)
      expect(action).not.toMatch(/touching turns|open up branch|full conduction, measure/);
    expect(answer[2]).toMatch(/^Not before the joint where line L3 enters .* is opened and remade/);
    expect(parts.filter(({ part }) => part.startsWith("element"))).toEqual([]);
  });

  it("is told from two sides that are broken: the third then reads its own 22.15 Ω", () => {
    const { answer, parts } = assessModule(
      module("delta", [
        ["L1", "L2", "22.15 Ω"],
        ["L2", "L3", "OL"],
        ["L3", "L1", "OL"],
      ]),
    );
    expect(answer[0]).toMatch(/^Element A-L2L3 open and element A-L3L1 open/);
    expect(parts.filter(({ part }) => part.startsWith("element"))).toHaveLength(2);
  });
});

describe("a branch landed on one of two other lines", () => {
  // A-L3 beside A-L1, 3.69 Ω, in series with A-L2, 7.38 Ω: 11.07 Ω. Across 480 V that is 320 V on A-L2 instead of 277 V: 1.33 times its power.
  it("forbids voltage whichever line it is, and sends nobody into the coil", () => {
    const { answer, nextSteps } = assessModule(
      module("star", [
        ["L1", "L2", "11.07 Ω"],
        ["L2", "L3", "OL"],
        ["L3", "L1", "OL"],
      ]),
    );
    expect(answer[0]).toMatch(/^Cannot be told apart: branch A-L3 landed on L[12] instead of L3/);
    expect(answer[2]).toMatch(/^Do not energise it: branch A-L3 is on L[12] .*; or branch A-L3 is on L[12] /);
    expect(nextSteps[0]?.action).toMatch(/measure ohms from L[12] to S/);
    for (const { action } of nextSteps) expect(action).not.toContain("open up branch");
  });
});
