/**
 * What a sheet says in words where a reader was misled before: healthy modules, an open joint's parts, a joint nobody can judge, and
 * voltages that are the plate's over √3 or above what a supply keeps to. Facts of the trade without a published source, but for the
 * supply's ±10 % (IEC 60038, from memory).
 */
import { assessModule, assessmentText, type BenchRecord } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { describe, expect, it } from "vitest";

const INSTRUMENTS = {
  ohmmeter: { ofReading: 0.001, digits: 1, resolution: "0.001 Ω", leads: "taken off" },
  clamp: { ofReading: 0.02, digits: 3, resolution: "0.1 A" },
  voltmeter: { ofReading: 0.005, digits: 2, resolution: "0.1 V" },
  millivoltmeter: { ofReading: 0.005, digits: 3, resolution: "0.1 mV" },
} as const;

/** 30 kW at 400 V in one star: 5.333 Ω hot, 43.3 A a line. */
const sheet = (more: object): BenchRecord =>
  ({
    title: "invented drying oven",
    nameplate: { power: "30 kW", voltage: "400 V" },
    wiring: { banks: [{ id: "A", connection: "star" }] },
    tolerance: { low: -0.05, high: 0.1 },
    temperatureFactor: 1.04,
    instruments: INSTRUMENTS,
    ...more,
  }) as BenchRecord;

const ohms = (reads: readonly string[]) =>
  ["L1", "L2", "L3"].map((from, i) => ({ from, to: "S", reads: reads[i] }));
const pairs = (reads: readonly string[]) =>
  [
    ["L1", "L2"],
    ["L2", "L3"],
    ["L3", "L1"],
  ].map(([from, to], i) => ({ from, to, reads: reads[i] }));
const amps = (reads: number) =>
  ["L1", "L2", "L3"].map((at, i) => ({ at, reads: `${(reads + 0.1 * i).toFixed(1)} A` }));
const volts = (v: number) => ({ v12: `${v} V`, v23: `${v + 1} V`, v31: `${v - 1} V` });

describe("a table of the repaired module", () => {
  it("speaks of nothing renewed where every branch is sound", () => {
    const found = assessModule(sheet({ asFound: { ohms: ohms(["5.13 Ω", "5.12 Ω", "5.14 Ω"]) } }));
    expect(found.draw?.confirmed).toBe(true);
    expect(found.draw?.atTarget).toEqual([]);
    for (const text of [assessmentText(found), benchReport({ assessment: found, format: "markdown" })]) {
      expect(text).not.toMatch(/renewed/);
      expect(text.toLowerCase()).toContain("all branches sound, as they stand");
    }
  });

  it("names what is renewed where one is open", () => {
    const found = assessModule(sheet({ asFound: { ohms: ohms(["5.13 Ω", "OL", "5.14 Ω"]) } }));
    expect(found.draw?.confirmed).toBe(true);
    expect(found.draw?.atTarget).toEqual(["A-L2"]);
    for (const text of [assessmentText(found), benchReport({ assessment: found, format: "markdown" })]) {
      expect(text.toLowerCase()).toContain("faulty branches renewed");
      expect(text.toLowerCase()).not.toContain("all branches sound");
    }
  });
});

describe("the parts of an open joint", () => {
  const two = {
    banks: [
      { id: "A", connection: "star" },
      { id: "B", connection: "star" },
    ],
    starPoints: "tied",
  };

  it("are the joint's, not elements of every branch behind it", () => {
    const found = assessModule(sheet({ wiring: two, asFound: { ohms: pairs(["OL", "10.26 Ω", "OL"]) } }));
    expect(found.answer[0]).toContain("joint where line L1 enters");
    expect(found.parts.map(({ part }) => part)).toEqual([
      expect.stringContaining("nuts and washers for the joint where line L1 enters the module"),
    ]);
  });

  it("are an element again where the branch alone is open", () => {
    const alone = ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3"].map((branch) => ({
      from: branch.slice(2),
      to: `S-${branch[0]}`,
      alone: branch,
      reads: branch === "A-L2" ? "OL" : "10.26 Ω",
    }));
    const found = assessModule(
      sheet({ wiring: { ...two, starPoints: "separate" }, asFound: { ohms: alone } }),
    );
    expect(found.parts.map(({ part }) => part)).toEqual(["element for A-L2"]);
  });
});

describe("a joint read alone", () => {
  const joint = { id: "J1", drop: "250 mV", current: "60 A" };
  const wiring = { banks: [{ id: "A", connection: "star" }], joints: [{ id: "J1", at: "L1" }] };
  const bare = { title: "x", wiring, instruments: INSTRUMENTS } as unknown as BenchRecord;

  it("could not be judged: the answer says so, and what would judge it", () => {
    // 25 mV · 60 A = 1.5 W: no contact is condemned by that alone, and none is cleared.
    const joints = [{ ...joint, drop: "25 mV" }];
    const { answer, nextSteps } = assessModule({ ...bare, asFound: { joints } } as BenchRecord);
    expect(answer[0]).toContain("joint J1 could not be judged");
    expect(answer[1]).toContain("Read the drop of joints like J1");
    expect(answer[2]).toMatch(/^Not known: joint J1/);
    expect(answer.join(" ")).not.toContain("Nothing read here speaks against");
    expect(nextSteps[0]?.reason).toContain("1.50 W");
  });

  it("is judged beside a like one, by its rise, or by the diagnosis of a module with a plate", () => {
    const like = { id: "J2", drop: "5 mV", current: "60 A" };
    const beside = { ...bare, asFound: { joints: [joint, like] } } as BenchRecord;
    const rise = { ...bare, asFound: { joints: [{ ...joint, rise: "60 K", loadRatio: 1 }] } } as BenchRecord;
    const plated = sheet({
      wiring,
      supply: volts(400),
      asFound: { joints: [{ ...joint, current: "43.3 A", drop: "130 mV" }], currents: amps(43.2) },
    });
    for (const record of [beside, rise, plated]) {
      const { answer } = assessModule(record);
      expect(answer.join(" ")).not.toContain("could not be judged");
      expect(answer.join(" ")).not.toContain("Nothing read here speaks against");
    }
    expect(assessModule(plated).answer[0]).toContain("J1");
  });
});

describe("voltages", () => {
  it("that are the plate's over √3 are read again first", () => {
    const found = assessModule(sheet({ supply: volts(231), asFound: { currents: amps(43.2) } }));
    expect(found.nextSteps[0]?.action).toContain("Read the voltages again from line to line");
    expect(found.nextSteps[0]?.reason).toContain(
      "the amps are those of a sound module on the plate's voltage",
    );
    expect(found.answer[1]).toContain("Read the voltages again");
    expect(found.answer[2]).toContain("Not known before the voltages are read again");
  });

  it("that were read to neutral leave no other riddle and no promise behind", () => {
    const { answer, nextSteps } = assessModule(
      sheet({ supply: volts(231), asFound: { currents: amps(43.2) } }),
    );
    expect(nextSteps.some(({ action }) => action.includes("why the amps differ"))).toBe(false);
    expect(answer[3]).toContain("not known before the voltages are");
  });

  it("in doubt or too high come before any word on running with a branch open", () => {
    const open = { ohms: ohms(["5.13 Ω", "OL", "5.14 Ω"]) };
    const doubtful = assessModule(sheet({ supply: volts(231), asFound: open })).answer[2];
    expect(doubtful).toBe("Not known before the voltages are read again from line to line.");
    const high = assessModule(sheet({ supply: volts(500), asFound: open })).answer[2];
    expect(high).toMatch(/^Not before the supply's voltage is settled/);
    expect(high).not.toContain("survivor");
  });

  it("far apart leave nothing cleared, least of all a hot joint", () => {
    // 130 mV at 43.2 A is 3 mΩ and 5.6 W; a voltage this low on one side alone is no fault of the module.
    const supply = { v12: "250 V", v23: "400 V", v31: "400 V" };
    const wiring = { banks: [{ id: "A", connection: "star" }], joints: [{ id: "J1", at: "L1" }] };
    const asFound = {
      ohms: ohms(["5.13 Ω", "5.12 Ω", "5.14 Ω"]),
      joints: [{ id: "J1", current: "43.3 A", drop: "130 mV" }],
    };
    const { diagnosis, answer, nextSteps } = assessModule(sheet({ wiring, supply, asFound }));
    const kinds = diagnosis?.groups[0]?.explanations[0]?.faults.map(({ kind }) => kind).sort();
    // No current says whether that voltage is one or a slip of the pen.
    expect(kinds).toEqual(["joint", "misread"]);
    expect(answer.join(" ")).not.toContain("Nothing read here speaks against");
    expect(answer[2]).toMatch(/^Not before it is known why the line voltages differ/);
    expect(nextSteps.some(({ about }) => about.includes("J1"))).toBe(true);
  });

  it("that really are a third of the power are not said to be proved a slip by the amps", () => {
    const found = assessModule(sheet({ supply: volts(231), asFound: { currents: amps(25) } }));
    expect(found.nextSteps[0]?.reason).toContain(
      "If it is so between lines, the module gives a third of its power",
    );
  });

  it.each([
    [439, false],
    [441, true],
    [500, true],
    [693, true],
  ])("of %i V on a 400 V plate: above the usual %s", (v, above) => {
    // The highest of the three lies 1 V higher.
    const { answer, nextSteps } = assessModule(sheet({ supply: volts(v - 1) }));
    expect(answer[0]?.includes("440 V at most is usual")).toBe(above);
    expect(nextSteps[0]?.action.includes("settle the supply's voltage")).toBe(above);
    expect(answer[2]?.startsWith("Not before the supply's voltage is settled")).toBe(above);
    expect(nextSteps[0]?.reason.includes("Is the plate's voltage that of one branch?")).toBe(v === 693);
  });

  it("of a lost line are a lost line, not too much", () => {
    const lost = { v12: "460 V", v23: "232 V", v31: "229 V" };
    const { nextSteps } = assessModule(sheet({ supply: lost, asFound: { currents: amps(0) } }));
    expect(nextSteps.some(({ action }) => action.includes("settle the supply's voltage"))).toBe(false);
    expect(nextSteps[0]?.action).toContain("find why L3 has no voltage");
  });
});

describe("a branch that reads nothing, without a nameplate", () => {
  it("is not cleared: a bolted short reads the same", () => {
    const asFound = { ohms: pairs(["0.000 Ω", "8.00 Ω", "8.00 Ω"]) };
    const wiring = { banks: [{ id: "A", connection: "delta" }] };
    const { answer } = assessModule({ title: "x", wiring, instruments: INSTRUMENTS, asFound } as BenchRecord);
    expect(answer[2]).toMatch(/^Do not energise it: L1 to L2 reads as good as bolted/);
  });
});
