/**
 * Unusual records: shared star points, odd links, joints alone, impossible readings. Expected outcomes follow from Kirchhoff's
 * laws or from what a record cannot know; where the trade decides, it says: common practice, no published source.
 */
import { assessModule, assessmentText, type BenchRecord } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const ohmmeter = { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: { shorted: "0.20 Ω" } } as const;
const tolerance = { low: -0.05, high: 0.1 };

const twoTied = (order: readonly string[], l1: number): BenchRecord => ({
  title: "two invented stars, tied",
  nameplate: { power: "60 kW", voltage: "480 V" },
  wiring: { banks: order.map((id) => ({ id, connection: "star" as const })), starPoints: "tied" },
  instruments: { ohmmeter },
  tolerance,
  asFound: {
    ohms: [
      { from: "L1", to: "S", reads: l1 },
      { from: "L2", to: "S", reads: 4.04 },
      { from: "L3", to: "S", reads: 4.04 },
    ],
  },
});

const SOUND = ["L1", "L2", "L3"].map((from) => ({ from, to: "S", reads: "7.88 Ω" }));
const star = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented star",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter },
  tolerance,
  asFound: { ohms: SOUND },
  ...more,
});

describe("branches in parallel that the readings see only together", () => {
  it("are never told apart, whatever the reading and whichever bank is named first", () => {
    for (let hundredths = 410; hundredths <= 1200; hundredths += 30) {
      for (const order of [
        ["A", "B"],
        ["B", "A"],
      ] as const) {
        const { branches } = assessModule(twoTied(order, hundredths / 100)).asFound!.resistances;
        expect(branches.every(({ resistance }) => resistance === null)).toBe(true);
      }
    }
  });

  it("are reported as a combination, with the reading that is off", () => {
    // One of two equal parallel branches open reads twice the combination: +100 %.
    const { answer, nextSteps } = assessModule(twoTied(["A", "B"], 7.88));
    expect(nextSteps[0]?.action).toContain("lift the links");
    expect(nextSteps[0]?.reason).toMatch(/^Cannot be told apart: element [AB]-L1 open \(\d+ %\)/);
    expect(nextSteps.map(({ reason }) => reason).join()).toContain("L1 to S +100 %");
    for (const id of ["A", "B"]) expect(answer[0]).toContain(`element ${id}-L1 open`);
  });
});

describe("a lost line in the measured supply", () => {
  // A lost line stands between the two live ones, fed back through equal branches: 480/240/240 V. Common practice, no published source.
  const found = assessModule(star({ supply: { v12: "480 V", v23: "240 V", v31: "240 V" } }));
  it("is named first, and the line carries nothing as found", () => {
    expect(found.nextSteps[0]?.about).toEqual(["L3"]);
    expect(found.draw?.asFound?.lines.find(({ node }) => node === "L3")?.current).toBe(0);
  });
  it("does not turn into amps to accept a repair by, nor into a break of 0 V", () => {
    expect(found.draw?.repaired.lines[2]?.current).toBeCloseTo(36.08, 1);
    expect(found.whatIf[0]!.rows.every(({ gapVoltage }) => (gapVoltage as number) > 400)).toBe(true);
  });
  it.each([
    ["L3", 480, 243, 240],
    ["L3", 480, 238, 240],
    ["L1", 241, 480, 240],
    ["L2", 240, 240, 478],
  ])("is %s at %d, %d and %d V", (line, v12, v23, v31) => {
    expect(assessModule(star({ supply: { v12, v23, v31 } })).nextSteps[0]?.about).toEqual([line]);
  });
  it("is not seen in a supply that is merely unbalanced", () => {
    const { nextSteps } = assessModule(star({ supply: { v12: "480 V", v23: "440 V", v31: "400 V" } }));
    expect(nextSteps.some(({ about }) => about.includes("L1") || about.includes("L3"))).toBe(false);
  });
});

describe("amps to accept a repair by", () => {
  it("are offered where every branch is judged sound", () => {
    const { draw, nextSteps } = assessModule(star({}));
    expect(draw?.confirmed).toBe(true);
    expect(nextSteps.at(-1)?.reason).toContain("it should draw L1 36.1 A");
  });
  it("are not offered without a tolerance, and the missing one is asked for", () => {
    const { tolerance: _none, ...record } = star({});
    const { draw, nextSteps, asFound } = assessModule(record);
    expect(asFound?.resistances.branches.map(({ finding }) => finding)).toEqual([
      "unjudged",
      "unjudged",
      "unjudged",
    ]);
    expect(draw?.confirmed).toBe(false);
    expect(nextSteps[0]?.action).toContain("tolerance");
    expect(nextSteps.at(-1)?.reason).toContain("not every branch is proved sound");
  });
  it("are not offered on readings that contradict each other", () => {
    const ohms = [...SOUND, { from: "L1", to: "L2", reads: "19.00 Ω" }];
    expect(assessModule(star({ asFound: { ohms } })).draw?.confirmed).toBe(false);
  });
  it("are not offered where nothing was read", () => {
    expect(assessModule(star({ asFound: { ohms: [] } })).draw?.confirmed).toBe(false);
  });
});

describe("readings between lines with the links in", () => {
  const between = (connection: "star" | "delta"): BenchRecord =>
    star({
      wiring: { banks: [{ id: "A", connection }] },
      asFound: {
        ohms: [
          { from: "L1", to: "L2", reads: "15.56 Ω" },
          { from: "L2", to: "L3", reads: "15.56 Ω" },
          { from: "L3", to: "L1", reads: "15.56 Ω" },
        ],
      },
    });
  it("fit a star and a delta of the same plate alike, and the assessment says so", () => {
    for (const connection of ["star", "delta"] as const) {
      const { assumptions, asFound } = assessModule(between(connection));
      expect(asFound?.resistances.branches.every(({ finding }) => finding === "sound")).toBe(true);
      expect(assumptions.join(" ")).toContain("cannot tell star from delta");
    }
  });
  it("is not said where a star point was read", () => {
    expect(assessModule(star({})).assumptions.join(" ")).not.toContain("cannot tell star from delta");
  });
});

describe("joints", () => {
  const joints = (...drops: readonly string[]): BenchRecord =>
    star({
      asFound: {
        ohms: SOUND,
        joints: drops.map((drop, i) => ({ id: `J${i + 1}`, drop, current: "36.0 A" })),
      },
    });
  it("one joint alone has nothing to compare with, and its heat is printed", () => {
    const found = assessModule(joints("900 mV"));
    expect(found.asFound?.joints[0]?.comparison).toBe("nothing to compare with");
    expect(assessmentText(found)).toContain("32.4 W");
  });
  it("three that are bad alike pass the comparison, and the rule says that they can", () => {
    const found = assessModule(joints("900 mV", "900 mV", "900 mV"));
    expect(found.asFound?.joints.every(({ comparison }) => comparison === "like the best")).toBe(true);
    expect(found.asFound?.joints[0]?.rule).toContain("bad alike");
  });
  it("is undecided where the last digit straddles the limit of 1.5", () => {
    // 3 mV against 2 mV to the millivolt: 2/3 to 4/1, so nobody can say.
    expect(assessModule(joints("3 mV", "2 mV")).asFound?.joints[0]?.comparison).toBe("undecided");
    expect(assessModule(joints("3.20 mV", "2.00 mV")).asFound?.joints[0]?.comparison).toBe("investigate");
    expect(assessModule(joints("2.80 mV", "2.00 mV")).asFound?.joints[0]?.comparison).toBe("like the best");
  });
});

describe("what several open branches have in common", () => {
  const banks = ["A", "B", "C"].map((id) => ({ id, connection: "star" as const }));
  const alone = (open: (id: string, line: string) => boolean): BenchRecord =>
    star({
      nameplate: { power: "90 kW", voltage: "480 V" },
      wiring: { banks, starPoints: "separate" },
      asFound: {
        ohms: banks.flatMap(({ id }) =>
          ["L1", "L2", "L3"].map((line) => ({
            from: line,
            to: `S-${id}`,
            alone: id,
            reads: open(id, line) ? "OL" : "7.88 Ω",
          })),
        ),
      },
    });
  it("the line comes before the elements on it", () => {
    const { nextSteps } = assessModule(alone((_, line) => line === "L1"));
    expect(nextSteps[0]?.action).toContain("jumper bar of L1");
    expect(nextSteps[1]?.about).toEqual(["A-L1", "B-L1", "C-L1"]);
  });
  it("the meter comes first when everything reads open", () => {
    expect(assessModule(alone(() => true)).nextSteps[0]?.action).toContain("Check the meter");
  });
  it("two breaks in different places have nothing in common", () => {
    const open = (id: string, line: string): boolean => `${id}${line}` === "AL1" || `${id}${line}` === "BL2";
    expect(assessModule(alone(open)).nextSteps[0]?.about).toEqual(["A-L1", "B-L2"]);
  });
});

describe("a reading that cannot be", () => {
  it("below what the leads read shorted, by more than the meter's error, is refused", () => {
    const record = star({ instruments: { ohmmeter: { ...ohmmeter, leads: { shorted: "9.00 Ω" } } } });
    const caught = (): unknown => {
      try {
        return assessModule(record);
      } catch (error) {
        return isElectroheatError(error) ? error.issues.map(({ code, path }) => `${code} ${path}`) : error;
      }
    };
    expect(caught()).toEqual([
      "inconsistent asFound.ohms.0.reads",
      "inconsistent asFound.ohms.1.reads",
      "inconsistent asFound.ohms.2.reads",
    ]);
  });
  it("the same reading written down a hundred times makes it no surer", () => {
    const once = assessModule(star({})).asFound?.resistances.branches[0]?.expandedUncertainty as number;
    const [first, ...others] = SOUND;
    const many = star({
      asFound: { ohms: [...Array.from({ length: 100 }, () => first as never), ...others] },
    });
    const hundred = assessModule(many).asFound?.resistances.branches[0]?.expandedUncertainty as number;
    expect(hundred / once).toBeCloseTo(1, 9);
  });
});

describe("cautions", () => {
  const text = assessModule(star({})).cautions.join(" ");
  it("do not put the voltage across a break too low", () => {
    // Two of three branches of a star open: each break stands between two lines through the third branch. Kirchhoff's laws.
    expect(text).toContain("with two open, or in a delta, at the full line voltage");
    expect(text).toContain("1.5 times the branch voltage");
  });
  it("say that drops and currents are live work, and who decides", () => {
    expect(text).toContain("energised equipment");
    expect(text).toContain("licensed electrician");
  });
  it("a step never sends anyone to energise a branch that reads far off", () => {
    const ohms = [
      { from: "L1", to: "S", reads: "30.20 Ω" },
      { from: "L2", to: "S", reads: "7.88 Ω" },
      { from: "L3", to: "S", reads: "7.88 Ω" },
    ];
    const [first] = assessModule(star({ asFound: { ohms } })).nextSteps;
    expect(first?.action).toMatch(/^Isolate/);
  });
});

describe("a tolerance wide enough to hide an open element", () => {
  it("is warned of: one of three open raises a branch by half", () => {
    const wiring = { banks: [{ id: "A", connection: "star" as const, elementsInParallel: 3 }] };
    const paths = (high: number): readonly string[] =>
      assessModule(star({ wiring, tolerance: { low: -0.05, high } })).warnings.map(({ path }) => path);
    expect(paths(0.6)).toEqual(["tolerance.high"]);
    expect(paths(0.4)).toEqual([]);
  });
});
