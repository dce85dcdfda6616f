/**
 * A star and a delta side by side, read between the lines with all links in, and amps alone: readings that settle no branch by itself.
 *
 * 60 kW at 480 V shared equally: the star's branches are 480²/30 kW = 7.68 Ω hot, the delta's 23.04 Ω; over 1.04 cold 7.385 Ω and 22.154 Ω.
 * Resistances by series and parallel, amps and powers by Ohm's law, worked out beside each check; what comes before voltage is common
 * practice, no published source.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const PAIRS = [
  ["L1", "L2"],
  ["L2", "L3"],
  ["L3", "L1"],
] as const;
const LINES = ["L1", "L2", "L3"] as const;
const common = {
  title: "invented star and delta",
  nameplate: { power: "60 kW", voltage: "480 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" },
    clamp: { ofReading: 0.02, digits: 5 },
    voltmeter: { ofReading: 0.005, digits: 2 },
  },
} as const;
const both = (reads: readonly string[]): BenchRecord => ({
  ...common,
  wiring: {
    banks: [
      { id: "A", connection: "star" },
      { id: "B", connection: "delta" },
    ],
  },
  asFound: { ohms: PAIRS.map(([from, to], i) => ({ from, to, reads: reads[i] ?? "" })) },
});
const amps = (connection: "star" | "delta", reads: readonly number[]): BenchRecord => ({
  ...common,
  wiring: { banks: [{ id: "A", connection }] },
  supply: { v12: "480 V", v23: "480 V", v31: "480 V" },
  asFound: { currents: LINES.map((at, i) => ({ at, reads: `${(reads[i] ?? 0).toFixed(1)} A` })) },
});
const answer = (record: BenchRecord): readonly string[] => assessModule(record).answer;

describe("star and delta read with all links in", () => {
  it("are assessed with a star branch open, although nothing says how the branches share it", () => {
    // Left of the star: L2-L3 14.769. L1-L2: 22.154 beside 22.154 + (22.154 beside 14.769 = 8.862): 12.92. L2-L3: 8.862 beside 44.308: 7.38.
    const [wrong, , running] = answer(both(["12.92 Ω", "7.38 Ω", "12.92 Ω"]));
    expect(wrong).toContain("Element A-L1 open");
    // The star keeps half of its 30 kW, the delta all: 45 of 60 kW. Nobody read the insulation.
    expect(running).toContain("Not before the insulation is read; then it may run until parts come at 75 %");
    expect(running).toContain("the open ends stay live");
  });

  it("are refused voltage with two lines bolted together, although no branch can be blamed", () => {
    // L1 on L2: 7.385 with both others in parallel: star 7.385 + 3.692, delta 11.077, side by side 5.54.
    const found = assessModule(both(["0.00 Ω", "5.54 Ω", "5.54 Ω"]));
    expect(found.answer[2]).toBe("Do not energise it: L1 to L2 reads as good as bolted, by whatever path.");
    expect(found.nextSteps[0]?.action).toContain("Do not energise. Find what bridges L1 to L2");
  });

  it("are refused it without a plate too, held against the other readings", () => {
    const { nameplate: _plate, temperatureFactor: _factor, ...bare } = both(["0.00 Ω", "5.54 Ω", "5.54 Ω"]);
    expect(assessModule(bare).answer[2]).toContain("Do not energise it: L1 to L2 reads as good as bolted");
    const { nameplate: _p, temperatureFactor: _f, ...sound } = both(["7.38 Ω", "7.38 Ω", "7.38 Ω"]);
    expect(assessModule(sound).answer[2]).not.toContain("bolted");
  });

  it("are not refused it for a reading that is low and still a load", () => {
    // B-L1L2 at half: star equivalent 22.154 beside 11.077, so 7.385, beside 22.154 (11.077 + 11.077): 5.54.
    expect(answer(both(["5.54 Ω", "6.92 Ω", "6.92 Ω"]))[2]).not.toContain("bolted");
  });
});

describe("amps that settle on one element", () => {
  it("say what is left with it open, and what comes before", () => {
    // Star of 3.84 Ω, one open: 480/7.68 = 62.5 A in two lines, half the heat.
    const star = answer(amps("star", [0, 62.5, 62.5]))[2];
    expect(star).toContain("Not before the insulation is read; then it may run until parts come at 50 %");
    // Delta of 11.52 Ω, L1-L2 open: 41.67 A in two lines, √3 times that in the third, two thirds of the heat.
    const delta = answer(amps("delta", [41.67, 41.67, 72.17]))[2];
    expect(delta).toContain("at 67 % of its power with unequal lines");
    expect(delta).toContain("only once the break is found and its loose ends are clear of the frame");
  });

  it("say what the twin carries, whichever of the two is open", () => {
    // Two of 7.68 Ω side by side in each branch, one open on L1: conductances 1:2:2 of 1/7.68 S. The star point moves to a fifth, the twin
    // has 1.2 times its 277 V: 43.3 A in L1. The others see √21/5 = 0.9165 of theirs: 66.1 A.
    const plain = amps("star", [43.3, 66.1, 66.1]);
    const twins: BenchRecord = {
      ...plain,
      wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 2 }] },
    };
    const [wrong, , running] = answer(twins);
    expect(wrong).toMatch(/^One of elements A-L1-1 and A-L1-2 open \(9\d %\)/);
    expect(running).toContain("not at full power as it is: what is left of A-L1 would carry 1.44 times");
  });

  it("do not leave it to the customer to run on touching turns or on what may be a bad joint", () => {
    // Side L1-L2 at 5.76 Ω: 83.33 A in it, 41.67 A in the others, 60° apart as currents add in the lines: √(83.33² + 41.67² + 83.33·41.67) = 110.2 A.
    expect(answer(amps("delta", [110.2, 110.2, 72.17]))[2]).toBe(
      "Not before A-L1L2 is explained: touching turns or a path beside it overload what is left.",
    );
    // Side at 23.04 Ω: 20.83 A and 41.67 A: √(20.83² + 41.67² + 20.83·41.67) = 55.1 A.
    expect(answer(amps("delta", [55.1, 55.1, 72.17]))[2]).toBe(
      "Not before A-L1L2 and the joints on the way to it are cleared: what looks high may be a joint, and a bad joint burns on.",
    );
  });
});
