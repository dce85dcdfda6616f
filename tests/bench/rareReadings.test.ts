/**
 * Readings that are seldom met: what a coarse meter leaves open, branches beyond the plate, joints written down without their meter.
 *
 * Sources: Kirchhoff's laws and Ohm's law for values, worked out beside each check; for words, what the record itself says.
 */
import { assessModule, assessmentText, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const ohmmeter = { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: { shorted: "0.20 Ω" } } as const;
const TAKEN_OFF = { ...ohmmeter, leads: "taken off" } as const;
const EVEN = { v12: "480 V", v23: "480 V", v31: "480 V" } as const;
const atStar = (...reads: readonly (string | number)[]) =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one }));
const between = (...reads: readonly (string | number)[]) =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: `L${((i + 1) % 3) + 1}`, reads: one }));
const SOUND = atStar("7.88 Ω", "7.88 Ω", "7.88 Ω");

/** 30 kW on 480 V in star: 480²/30 000 = 7.68 Ω a branch; as a delta 23.04 Ω. */
const module = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented module",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter },
  tolerance: { low: -0.05, high: 0.1 },
  asFound: { ohms: SOUND },
  ...more,
});
const without = (names: readonly (keyof BenchRecord)[], more: Partial<BenchRecord>): BenchRecord =>
  Object.fromEntries(
    Object.entries(module(more)).filter(([name]) => !names.includes(name as keyof BenchRecord)),
  ) as unknown as BenchRecord;
const DELTA = { banks: [{ id: "A", connection: "delta" }] } as const;
const branchesOf = (record: BenchRecord) => assessModule(record).asFound!.resistances.branches;

describe("a side of a closed delta that a coarse meter hardly sees", () => {
  // Sides x, y, y read x·2y/(x + 2y) between the lines of x and y·(x + y)/(x + 2y) elsewhere.
  const y = 23.04;
  const delta = (x: number, ofReading: number, digits: number): BenchRecord => {
    const [across, other] = [(x * 2 * y) / (x + 2 * y), (y * (x + y)) / (x + 2 * y)];
    return module({
      wiring: DELTA,
      instruments: { ohmmeter: { ofReading, digits, resolution: "0.1 Ω", leads: "taken off" } },
      asFound: { ohms: between(...[across, other, other].map((one) => Number(one.toFixed(2)))) },
    });
  };
  const least = (record: BenchRecord): number => branchesOf(record)[0]!.atLeast as number;
  it("is open where even its least value is many times the target", () => {
    const record = delta(1000, 0.05, 0);
    expect(least(record)).toBeGreaterThan(10 * y);
    expect(branchesOf(record)[0]!.finding).toBe("open");
    expect(assessModule(record).nextSteps[0]!.reason).toMatch(
      /^A-L1L2 reads at least \d+ Ω where 23.0 Ω belong/,
    );
  });
  it("is high where its least value is above the target, and never said to be more", () => {
    const record = delta(230, 0.1, 0);
    expect(least(record)).toBeGreaterThan(y);
    expect(least(record)).toBeLessThan(230);
    expect(branchesOf(record)[0]!.finding).toBe("high");
    const found = assessModule(record);
    expect(found.nextSteps.map(({ action }) => action).join(" ")).toContain("it is high or open");
    expect(found.parts.map(({ reason }) => reason).join(" ")).toContain(
      "A-L1L2 is high, how far is not known",
    );
    expect(assessmentText(found)).toMatch(/A-L1L2 +at least \d+ Ω .*HIGH or open/);
  });
  it("is not known where its least value is below the target, and is to be read again", () => {
    const record = delta(y, 0.005, 200);
    expect(least(record)).toBeLessThan(y);
    expect(branchesOf(record)[0]!.finding).toBe("not known");
    expect(assessModule(record).nextSteps[0]!.reason).toMatch(/this meter does not say more\.$/);
  });
  it("is not known without a plate to hold it against", () => {
    const record = without(["nameplate"], delta(y, 0.005, 200));
    expect(branchesOf(record)[0]).toMatchObject({ finding: "not known", target: null });
    expect(assessModule(record).nextSteps[0]!.reason).toMatch(/^A-L1L2 reads at least [\d.]+ Ω; this meter/);
  });
});

describe("single branches", () => {
  it("of a path of dirt beside a break are open, with what they read", () => {
    const [open] = branchesOf(module({ asFound: { ohms: atStar("20 kΩ", "7.88 Ω", "7.88 Ω") } }));
    expect(open!.finding).toBe("open");
    expect(open!.resistance).toBeCloseTo(20_000 - 0.2, 5);
  });
  it("of 0 Ω beside sound ones are shorted: that lies between two lines of a delta, and nothing is drawn as found", () => {
    const wiring = DELTA;
    const ohms = ["L1L2", "L2L3", "L3L1"].map((pair, i) => ({
      from: pair.slice(0, 2),
      to: pair.slice(2),
      reads: i === 0 ? "0.20 Ω" : "23.24 Ω",
      alone: `A-${pair}`,
    }));
    const found = assessModule(module({ wiring, asFound: { ohms } }));
    expect(found.asFound!.resistances.branches[0]!.finding).toBe("shorted");
    expect(found.draw!.asFound).toBeNull();
    expect(found.parts[0]).toMatchObject({ part: "element for A-L1L2", quantity: 1 });
    expect(found.parts[0]!.reason).toContain("as good as 0 Ω: its element");
  });
  it("on target to the last digit are undecided where the tolerance is finer than the meter", () => {
    const tolerance = { low: -0.001, high: 0.001 };
    const { nextSteps, asFound } = assessModule(module({ tolerance, asFound: { ohms: SOUND } }));
    expect(asFound!.resistances.branches[0]!.finding).toBe("undecided");
    expect(nextSteps[0]!.reason).toContain("A-L1 is 0.0 % from target");
  });
  it("far above the tolerance are read one by one, and no part is promised to be the fault", () => {
    const found = assessModule(module({ asFound: { ohms: atStar("10.20 Ω", "7.88 Ω", "7.88 Ω") } }));
    expect(found.asFound!.resistances.branches[0]).toMatchObject({ finding: "outside", openElements: null });
    expect(found.nextSteps[0]!.reason).toContain("A-L1 is +30.2 % from target");
    expect(found.parts[0]!.reason).toContain("A-L1 is outside the tolerance");
  });
});

describe("a module without plate and tolerance", () => {
  const bare = (more: Partial<BenchRecord>) => without(["nameplate", "tolerance"], more);
  it("has nothing to hold OL and ohms against, in words and in figures", () => {
    const found = assessModule(bare({ asFound: { ohms: between("OL", "OL", "15.00 Ω") } }));
    expect(found.asFound!.resistances.expectedReadings).toEqual([null, null, null]);
    expect(found.draw).toBeNull();
    expect(assessmentText(found)).toMatch(/L3 to L1 +15\.00 Ω +14\.80 Ω +-\n/);
    expect(found.nextSteps[0]!.reason).toBe("A-L2 reads open.");
  });
  it("holds a branch of a path of dirt against its like: the median of three, 7.68 Ω", () => {
    const [open] = branchesOf(bare({ asFound: { ohms: atStar("20 kΩ", "7.88 Ω", "7.88 Ω") } }));
    expect(open!.finding).toBe("open");
    expect(open!.target).toBeCloseTo(7.68, 9);
  });
  it("is drawn at the voltage read as left where none was read as found", () => {
    // Star of 7.68 Ω at 480 V: P = V²/R = 30 kW.
    const found = assessModule(bare({ asFound: { ohms: SOUND }, asLeft: { supply: EVEN } }));
    expect(found.draw!.asFound!.power / 30_000).toBeCloseTo(1, 3);
    expect(found.draw!.repairedAtPlateVoltage).toBeNull();
  });
  it("takes the live lines' voltage for the whole where one line is lost", () => {
    const supply = { v12: "480 V", v23: "240 V", v31: "240 V" };
    const found = assessModule(bare({ asFound: { ohms: SOUND }, supply }));
    expect(found.draw!.repaired.power / 30_000).toBeCloseTo(1, 3);
    // L1 and L2 through two branches in series: 480/(2·7.68) = 31.25 A, L3 none.
    expect(found.draw!.asFound!.lines.map(({ current }) => Number(current.toFixed(2)))).toEqual([
      31.25, 31.25, 0,
    ]);
    expect(found.assumptions.join(" ")).toContain("the voltage left between the other two lines");
  });
});

describe("leads", () => {
  it("taken off before recording are said to be, and nothing is taken off again", () => {
    const found = assessModule(
      module({
        instruments: { ohmmeter: TAKEN_OFF },
        asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω") },
      }),
    );
    expect(found.asFound!.resistances.branches[0]!.resistance).toBeCloseTo(7.68, 9);
    expect(assessmentText(found)).toContain("Leads: taken off before recording.");
  });
  it("that nothing determines are asked for", () => {
    const unknown = { ohmmeter: { ...ohmmeter, leads: "unknown" as const } };
    const found = assessModule(
      module({ instruments: unknown, asFound: { ohms: between("15.56 Ω", "15.56 Ω", "15.56 Ω") } }),
    );
    expect(found.asFound!.resistances.leads).toBeNull();
    expect(found.nextSteps[0]!.action).toMatch(/^Short the leads together/);
    expect(assessmentText(found)).toContain("Leads: not determined by these readings.");
  });
  it("of more than an ohm look odd", () => {
    // Star of 7.68 Ω and leads of 2.20 Ω: 9.88 Ω to the star point, 17.56 Ω between lines.
    const unknown = { ohmmeter: { ...ohmmeter, leads: "unknown" as const } };
    const ohms = [...atStar("9.88 Ω", "9.88 Ω", "9.88 Ω"), ...between("17.56 Ω", "17.56 Ω", "17.56 Ω")];
    const found = assessModule(module({ instruments: unknown, asFound: { ohms } }));
    expect(found.asFound!.resistances.leads).toBeCloseTo(2.2, 9);
    expect(found.warnings.map(({ message }) => message).join()).toContain(
      "leads and probe contact of 2.20 Ω are much",
    );
  });
  it("shorted as a plain number ask for the meter's last digit", () => {
    const { resolution: _none, ...plain } = { ...ohmmeter, leads: { shorted: 0.2 } };
    expect(() => assessModule(module({ instruments: { ohmmeter: plain } }))).toThrow(
      /instruments\.ohmmeter\.resolution.*because instruments\.ohmmeter\.leads\.shorted is a plain number/,
    );
  });
  it("are weighed by the meter's last digit, or by none, where every reading is OL", () => {
    const { resolution: _none, ...unstated } = { ...ohmmeter, leads: "unknown" as const };
    for (const meter of [{ ...unstated, resolution: "0.1 Ω" }, unstated]) {
      const found = assessModule(
        module({ instruments: { ohmmeter: meter }, asFound: { ohms: atStar("OL", "OL", "OL") } }),
      );
      expect(found.asFound!.resistances.branches.every(({ finding }) => finding === "open")).toBe(true);
      expect(found.nextSteps[0]!.action).toMatch(/^Check the meter on a known resistor/);
    }
  });
});

describe("readings that contradict each other", () => {
  it("by an OL that no open branch explains are shown beside a sound module", () => {
    const ohms = [...atStar("OL", "7.88 Ω", "7.88 Ω"), ...between("15.56 Ω", "15.56 Ω", "15.56 Ω")];
    const found = assessModule(module({ asFound: { ohms } }));
    expect(found.asFound!.resistances.outcome).toBe("contradictory");
    expect(found.nextSteps[0]!.action).toMatch(/^Isolate, .*: L1 to S: misread\?$/);
    expect(found.nextSteps[1]!.about).toEqual(["L1 to S"]);
    expect(assessmentText(found)).toMatch(/L1 to L2 +15\.56 Ω +15\.36 Ω/);
  });
  it("by their values say how improbable that is, and widen what they find", () => {
    const ohms = [...SOUND, { from: "L1", to: "L2", reads: "19.00 Ω" }];
    const text = assessmentText(assessModule(module({ asFound: { ohms } })));
    expect(text).toContain("p below 0.001");
    expect(text.replace(/\s+/g, " ")).toContain("enlarged to cover the contradiction");
  });
});

describe("supplies far from the plate", () => {
  it.each([
    ["277 V", "it looks like a voltage to neutral", 480 * 0.8],
    ["600 V", "600 V between lines where the plate says 480 V", 480 * 1.2],
  ])("of %s look odd", (volts, words, limit) => {
    const { warnings } = assessModule(module({ supply: { v12: volts, v23: volts, v31: volts } }));
    const [first] = warnings.filter(({ path }) => path === "supply.v12");
    expect(first!.message).toContain(words);
    expect(first!.limit).toBeCloseTo(limit, 9);
  });
});
