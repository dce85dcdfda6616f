/** What readings that contradict, repeat or bypass one another make of a branch's value and of its uncertainty. Figures by hand beside each check. */
import type { BenchRecord, RecordOhms, ResistanceFit } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { branchModule } from "../../../src/bench/day/branchModule.ts";
import { measuredReadings } from "../../../src/bench/day/readings.ts";
import { assessResistances, enlargement } from "../../../src/bench/day/resistance.ts";
import { bankTargets, coldTargets } from "../../../src/bench/day/targets.ts";
import { atStar, star } from "../pool.ts";
import { read as parsed } from "../site/made.ts";

/** The readings as found, as the fit takes them, and what it makes of them. */
const both = (given: BenchRecord) => {
  const record = parsed(given);
  const drawn = branchModule(record, coldTargets(bankTargets(record)), 8 as never);
  const readings = measuredReadings(record, "asFound", drawn);
  return { readings, assessment: assessResistances(record, readings, drawn, true).assessment };
};
const read = (record: BenchRecord) => both(record).assessment;
const STUDS = ["7.60 Ω", "7.58 Ω", "7.61 Ω"].map(
  (reads, i): RecordOhms => ({
    ...{ from: `L${i + 1}`, to: "S", reads },
    ...{ alone: `A-L${i + 1}`, ownStuds: true },
  }),
);

describe("uncertainty", () => {
  it("grows by the Birge ratio where the readings contradict each other, and only there", () => {
    const of = (consistency: string, chiSquare: number, degreesOfFreedom: number) =>
      enlargement({ consistency, chiSquare, degreesOfFreedom } as ResistanceFit);
    // R. T. Birge, Phys. Rev. 40 (1932) 207, from memory: √(χ²/ν). √(18/2) = 3, √(50/8) = 2.5; below 1 nothing is made smaller.
    expect([of("inconsistent", 18, 2), of("inconsistent", 50, 8), of("inconsistent", 1, 4)]).toEqual([
      3, 2.5, 1,
    ]);
    expect([of("consistent", 18, 2), of("untestable", 0, 0)]).toEqual([1, 1]);
  });
  it("stands with a value and with nothing else", () => {
    const { branches } = read(star({ asFound: { ohms: atStar("7.68 Ω", "OL") } }));
    const [known, open, unread] = branches;
    // (0.5 % of 7.68 Ω and 2 digits)/√3; the 0.5 % once more as a gain error; k = 2.
    const u = (0.005 * 7.68 + 0.02) / Math.sqrt(3);
    expect(known?.standardUncertainty).toBeCloseTo(u, 9);
    expect(known?.expandedUncertainty).toBeCloseTo(2 * Math.hypot(u, (0.005 * 7.68) / Math.sqrt(3)), 9);
    const nothing = { standardUncertainty: null, expandedUncertainty: null, deviation: null };
    expect(open).toMatchObject({ ...nothing, resistance: "open", judgement: null, openElements: null });
    expect(unread).toMatchObject({ ...nothing, resistance: null, judgement: null, openElements: null });
  });
});

describe("readings as the fit takes them", () => {
  const of = (...ohms: readonly RecordOhms[]) => both(star({ asFound: { ohms } })).readings;
  it("have the meter's uncertainty, once for a way read several times; OL has none", () => {
    const all = ["A-L1", "A-L2", "A-L3"];
    const [first, second, other, open] = of(...atStar("7.68 Ω"), ...atStar("7.68 Ω", "7.70 Ω", "OL"));
    const way = (i: number) => ({ from: `L${i}`, to: "S", only: all, ownStuds: false });
    // (0.5 % of 7.68 Ω and 2 digits)/√3, each of two worth half as much.
    const u = (reads: number) => (0.005 * reads + 0.02) / Math.sqrt(3);
    const close = (value: number): never => expect.closeTo(value, 12) as never;
    const twice = { ...way(1), reads: 7.68, standardUncertainty: close(u(7.68) * Math.SQRT2) };
    expect([first, second]).toEqual([twice, twice]);
    expect(other).toEqual({ ...way(2), reads: 7.7, standardUncertainty: close(u(7.7)) });
    expect(open).toEqual({ ...way(3), reads: "open" });
  });
});

describe("readings through links", () => {
  const beyond = (ohms: readonly RecordOhms[]) => {
    const { beyondElements, branches } = read(star({ asFound: { ohms } }));
    return {
      ways: beyondElements.map(({ from, to, reads }) => [from, to, reads]),
      u: branches.map(({ standardUncertainty }) => standardUncertainty as number),
    };
  };
  it("that disagree with the studs are left to the links, each by itself", () => {
    expect(beyond([...STUDS, ...atStar("9.10 Ω", "8.90 Ω", "7.60 Ω")]).ways).toEqual([
      ["L1", "S", 9.1],
      ["L2", "S", 8.9],
    ]);
  });
  it("are no repeat of one another where one of them is OL", () => {
    // The link of L1 opened between two readings of one way: what the first said of the branch stands as it was.
    const once = beyond([...STUDS, ...atStar("7.60 Ω", "7.58 Ω", "7.60 Ω")]);
    const twice = beyond([
      ...STUDS,
      ...atStar("7.60 Ω", "7.58 Ω", "7.60 Ω"),
      { from: "L1", to: "S", reads: "OL" },
    ]);
    expect(twice.ways).toEqual([["L1", "S", "open"]]);
    twice.u.forEach((one, i) => {
      expect(one).toBeCloseTo(once.u[i] as number, 9);
    });
  });
});

describe("elements that may be open", () => {
  it("are counted for a branch that is outside, not for one within", () => {
    const of = (reads: string) => {
      const wiring = { banks: [{ id: "A", connection: "star" as const, elementsInParallel: 20 }] };
      const [one] = read(star({ wiring, asFound: { ohms: atStar(reads, "7.68 Ω", "7.68 Ω") } })).branches;
      return [one?.finding, one?.openElements];
    };
    // One of 20 open makes 20/19: 8.08 Ω, which lies within the tolerance of +10 % and shows nothing. 9.20 Ω is more than 10 % above
    // that: 7.68·20/17 = 9.04 Ω is nearer to it than 7.68·20/18 = 8.53 Ω, which the tolerance lets fit too.
    expect(of("8.08 Ω")).toEqual(["sound", null]);
    expect(of("9.20 Ω")).toEqual(["outside", 3]);
  });
});
