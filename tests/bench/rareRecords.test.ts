/**
 * Records with a part missing or one too many: amps without a plate, drawn breaks, joints remade, choices that OL leaves open.
 *
 * Sources: Kirchhoff's laws and closed forms, worked out beside each check; for words, what the record itself says.
 */
import {
  assessModule,
  assessmentText,
  type BenchRecord,
  degradedHeatUp,
  degradedOptions,
  diagnose,
} from "electroheat/bench";
import { balancedSupply } from "electroheat/circuit";
import { celsius, hours, joulesPerKelvin, ohms as ohm, volts, wattsPerKelvin } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { asked, bank, firstFaults, pairs, reading } from "./diagnosis/sheets.ts";

const ohmmeter = { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: "taken off" } as const;
const clamp = { ofReading: 0.02, digits: 5 } as const;
const LINES = ["L1", "L2", "L3"] as const;
const OHMS = LINES.map((from) => ({ from, to: "S", reads: "7.68 Ω" }));
const EVEN = { v12: "480 V", v23: "480 V", v31: "480 V" } as const;
const amps = (...reads: readonly number[]) =>
  reads.map((one, i) => ({ at: `L${i + 1}`, reads: `${one.toFixed(1)} A` }));

/** 30 kW on 480 V in star: 7.68 Ω a branch, 36.08 A a line. */
const module = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented module",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter, clamp },
  tolerance: { low: -0.05, high: 0.1 },
  asFound: { ohms: OHMS },
  ...more,
});
const unplated = (more: Partial<BenchRecord>): BenchRecord => {
  const { nameplate: _none, ...rest } = module(more);
  return rest;
};

describe("amps", () => {
  it("without a plate stand alone: no sound module to hold them against", () => {
    const { currents } = assessModule(
      unplated({ asFound: { currents: amps(36.1, 36.1, 36.1), supply: EVEN } }),
    ).asFound!;
    const labels = currents.map(({ label }) => label);
    expect(labels).toContain("line current L1");
    expect(labels.some((label) => label.includes("sound module"))).toBe(false);
    // P = √3·480 V·36.1 A.
    const power = currents.find(({ label }) => label === "power from line currents")!.value as number;
    expect(power).toBeCloseTo(Math.sqrt(3) * 480 * 36.1, 6);
  });
  it("have no upper limit where a branch may be 0 Ω: 1/(1 − 1) has no value", () => {
    const record = module({
      tolerance: { low: -1, high: 0.1 },
      asFound: { currents: amps(36.1, 36.1, 36.1), supply: EVEN },
    });
    const [first] = assessModule(record).asFound!.currents;
    expect(first!.limit!.high).toBeNull();
    expect(first!.limit!.low).toBeCloseTo(480 / Math.sqrt(3) / 7.68 / 1.1, 6);
  });
  it("on one line alone have no unbalance to speak of", () => {
    const { unbalance } = assessModule(module({ asFound: { currents: amps(10, 0, 0), supply: EVEN } }))
      .asFound!;
    expect(unbalance.some(({ label }) => label.startsWith("supply"))).toBe(true);
    expect(unbalance.some(({ label }) => label.startsWith("line currents"))).toBe(false);
  });
  it("of two lines without volts leave a lost line and a broken branch side by side", () => {
    // L1 and L2 through two branches in series: 480/15.36 = 31.25 A.
    const { diagnosis, nextSteps } = assessModule(module({ asFound: { currents: amps(31.2, 31.2, 0) } }));
    const kinds = diagnosis!.groups.flatMap(({ explanations }) =>
      explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
    );
    expect(kinds).toContain("lost line");
    expect(kinds).toContain("element open");
    expect(nextSteps[0]!.about).toEqual(["A-L3"]);
  });
});

describe("amps as plain numbers", () => {
  it("ask for the clamp's last digit, which they do not show", () => {
    const currents = LINES.map((at) => ({ at, reads: 36 }));
    expect(() => assessModule(module({ asFound: { ohms: OHMS, currents } }))).toThrow(
      /^instruments\.clamp\.resolution.*because asFound\.currents\.0\.reads is a plain number/,
    );
  });
});

describe("a record without a plate", () => {
  it("draws nothing known where one branch has no value, whatever the volts", () => {
    const ohms = [{ from: "L1", to: "S", reads: "7.68 Ω", alone: "A-L1" }];
    const found = assessModule(unplated({ asFound: { ohms, supply: EVEN } }));
    expect(found.draw).toBeNull();
    expect(found.asFound!.resistances.branches[0]).toMatchObject({
      finding: "unjudged",
      target: null,
      deviation: null,
    });
    expect(found.asFound!.resistances.branches[0]!.resistance).toBeCloseTo(7.68, 9);
  });
});

describe("an empty name plate of papers", () => {
  it("is none", () => {
    expect(assessModule(module({ identity: {} })).identity).toBeNull();
  });
  it("beside a list without items shows neither; what looks odd is shown", () => {
    const low = { v12: "277 V", v23: "277 V", v31: "277 V" };
    const found = assessModule(module({ supply: low }));
    const text = assessmentText({ ...found, checklist: [] });
    expect(text).not.toContain("CHECKLIST");
    expect(text.replace(/\s+/g, " ")).toContain("it looks like a voltage to neutral");
  });
  it("is refused like other slips: leads that are a number", () => {
    const instruments = { ohmmeter: { ...ohmmeter, leads: 5 as never } };
    expect(() => assessModule(module({ instruments }))).toThrow(/^instruments\.ohmmeter\.leads: /);
  });
});

describe("OL that leaves a choice", () => {
  const choice = (ids: readonly string[]) =>
    assessModule(
      module({
        wiring: {
          banks: ids.map((id) => ({ id, connection: "star" as const })),
          ...(ids.length > 1 ? { starPoints: "separate" as const } : {}),
        },
        asFound: { ohms: ids.map((alone) => ({ from: "L1", to: "L2", reads: "OL", alone })) },
      }),
    ).nextSteps.map(({ reason }) => reason);
  it("of one branch in two is told whole", () => {
    expect(choice(["A"])).toContain("The OL readings fit 2 choices of open branches alike: A-L1 or A-L2.");
  });
  it("of 2·2·2 is told in part", () => {
    expect(choice(["A", "B", "C"]).join(" ")).toMatch(/fit 8 choices of open branches alike: .* or others\./);
  });
});

describe("joints", () => {
  const joint = (id: string, drop: string) => ({ id, drop, current: "30.0 A" });
  it("that were remade need no more parts", () => {
    const asFound = { ohms: OHMS, joints: [joint("a", "20.0 mV"), joint("b", "5.0 mV")] };
    const parts = (more: Partial<BenchRecord>): string =>
      assessModule(module({ asFound, ...more }))
        .parts.map(({ part, reason }) => `${part} ${reason}`)
        .join(" ");
    expect(parts({})).toContain("joint a");
    expect(parts({ asLeft: { joints: [joint("a", "5.1 mV"), joint("b", "5.0 mV")] } })).not.toContain(
      "joint a",
    );
    // Twice the best like joint is not good: the part is still to be brought.
    expect(parts({ asLeft: { joints: [joint("a", "10.0 mV"), joint("b", "5.0 mV")] } })).toContain("joint a");
  });
  it("that no longer run hot need no more parts either", () => {
    const rises = (a: string, b: string) => [
      { id: "a", rise: a, loadRatio: 1 },
      { id: "b", rise: b, loadRatio: 1 },
    ];
    const parts = (more: Partial<BenchRecord>): readonly string[] =>
      assessModule(module({ asFound: { ohms: OHMS, joints: rises("70 K", "3 K") }, ...more })).parts.map(
        ({ part }) => part,
      );
    expect(parts({}).join()).toContain("joint a");
    expect(parts({ asLeft: { joints: rises("3.0 K", "3.0 K") } }).join()).not.toContain("joint a");
  });
  it("with a drop stand before those with a rise alone", () => {
    const joints = [
      { id: "a", rise: "2 K", loadRatio: 1 },
      joint("b", "5.0 mV"),
      { id: "c", rise: "1 K", loadRatio: 1 },
      joint("d", "5.1 mV"),
    ];
    expect(
      assessModule(module({ asFound: { ohms: OHMS, joints } })).asFound!.joints.map(({ id }) => id),
    ).toEqual(["d", "b", "a", "c"]);
  });
});

describe("one open string of nine", () => {
  it("is looked for among the nine, one by one", () => {
    // Nine strings of 69.12 Ω are 7.68 Ω, eight 8.64 Ω: 12.5 % more, within the tolerance given.
    const ohms = LINES.map((from) => ({ from, to: "S", reads: from === "L1" ? "8.64 Ω" : "7.68 Ω" }));
    const record = module({
      wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 9 }] },
      tolerance: { low: -0.05, high: 0.2 },
      asFound: { ohms },
    });
    const [step] = assessModule(record).nextSteps;
    expect(step!.action).toBe("Isolate, lift the links of branch A-L1 and read its elements one by one.");
    expect(step!.about).toHaveLength(9);
  });

  it("in one of two tied banks, of 54 elements, is told by branches, and no next reading is sought", () => {
    // Eighteen strings of 138.24 Ω side by side are 7.68 Ω, seventeen 8.13 Ω.
    const ohms = LINES.map((from) => ({ from, to: "S", reads: from === "L1" ? "8.13 Ω" : "7.68 Ω" }));
    const record = module({
      wiring: {
        banks: ["A", "B"].map((id) => ({ id, connection: "star" as const, elementsInParallel: 9 })),
        starPoints: "tied",
      },
      tolerance: { low: -0.05, high: 0.2 },
      asFound: { ohms },
    });
    const { answer, nextSteps } = assessModule(record);
    expect(answer[0]).toMatch(
      /^Cannot be told apart: one of 9 elements of [AB]-L1 open \(50 %\) or one of 9 elements of [AB]-L1 open \(50 %\)\.$/,
    );
    expect(nextSteps[0]!.action).toContain("no single further reading tells them apart");
    expect(nextSteps[0]!.about).toHaveLength(18);
  });
});

describe("a module drawn with a break", () => {
  // Star of 12 Ω with L1 open as drawn: only L2 to L3 reads, 24 Ω.
  const readings = [
    ...pairs(["open", 24.1, "open"]),
    reading({ kind: "insulation", from: "L1", reads: 5e8 }),
  ];
  it.each([
    ["in an element", { banks: [bank("A", "star", 12)], elements: { "A-L1": "open" } }],
    ["in a joint", { banks: [bank("A", "star", 12)], joints: [{ id: "J", at: "L1", resistance: "open" }] }],
  ])("%s reads open and is sound as drawn", (_where, module) => {
    expect(firstFaults(diagnose(asked(module, readings)))).toEqual([]);
  });
  it("has nothing else to say where no fault is thought of", () => {
    const kinds = [
      "elementOpen",
      "shortedTurns",
      "offValue",
      "joint",
      "openJoint",
      "misLinked",
      "lostLine",
      "earthFault",
      "earthedTerminal",
      "supplyUnbalance",
    ];
    const priors = Object.fromEntries(kinds.map((kind) => [kind, 0]));
    const { groups } = diagnose(
      asked({ banks: [bank("A", "star", 12)] }, pairs([24.1, 24.1, 24.1]), { priors }),
    );
    expect(groups).toHaveLength(1);
    expect(groups[0]!.explanations.map(({ faults }) => faults)).toEqual([[]]);
  });
});

describe("a shift that begins warm", () => {
  // Closed form of the lumped oven: t = −(C/G)·ln((P/G − 180)/(P/G − 80)) from 100 °C to 200 °C in a room of 20 °C.
  const star = { banks: [{ id: "A", connection: "star" as const, elementResistance: ohm(19.2) }] };
  const common = {
    module: star,
    supply: balancedSupply({ lineVoltage: volts(480) }),
    faults: [{ kind: "open" as const, id: "A-L1" }],
    oven: { ambient: celsius(20), lossConductance: wattsPerKelvin(40), structure: joulesPerKelvin(200_000) },
    target: celsius(200),
    start: celsius(100),
  };
  const time = -(200_000 / 40) * Math.log((12_000 / 40 - 180) / (12_000 / 40 - 80));
  it("heats up from there, alone and among the ways to run on", () => {
    expect(degradedHeatUp(common).healthy.time).toBeCloseTo(time, 3);
    expect(degradedOptions({ ...common, shift: hours(8) }).options[0]!.heatUp.time).toBeCloseTo(time, 3);
  });
});
