/** The checklist: order of safe work (common practice, no published source), and a state that only the record's evidence gives. */
import type { ChecklistItem, HardwareAssessment, JointAssessment, RecordFeed } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import type { ChecklistSource } from "../../../src/bench/site/checklist.ts";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { branch, day, joint, judged, list, read, rise } from "./made.ts";

const item = (start: string, more: Partial<ChecklistSource>): ChecklistItem => {
  const found = list(more).find(({ text }) => text.startsWith(start));
  if (found === undefined) throw new Error(`no item ${start}`);
  return found;
};
const hardware = (...applied: readonly (string | undefined)[]): readonly HardwareAssessment[] =>
  assessHardware(
    read({
      hardware: applied.map((torque, i) => ({
        id: `studs ${i}`,
        thread: "M6",
        strength: { standard: "ISO 898-1", grade: "8.8" },
        ...(torque === undefined ? {} : { applied: torque }),
      })),
    }),
  );
/** A joint as good as the best of its like. */
const good = (id: string, more: Partial<JointAssessment> = {}): JointAssessment =>
  joint(id, { resistance: 20e-6 as never, ratioToBest: 1, comparison: "like the best", ...more });
const insulation = (reads: string, testVoltage = "500 V") =>
  assessInsulation(
    read({ asLeft: { insulation: [{ from: "L1", reads, testVoltage }] } }).asLeft?.insulation,
    480 as never,
  );

describe("the order of work", () => {
  it("isolates first, energises only then, and looks at the nuts last", () => {
    const items = list({ hardware: hardware(undefined) });
    expect(items[0]?.text).toContain("prove dead");
    const phases = items.map(({ phase }) => phase);
    const order = ["before energising", "first heat", "after cooling down"];
    expect([...new Set(phases)]).toEqual(order);
    expect(phases).toEqual([...phases].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    const topics = [
      "Isolate",
      "Tighten every nut",
      "Read every branch",
      "Insulation",
      "Links",
      "Protective earth",
      "Amps",
      "Thermal scan",
      "Isolate again",
    ];
    const at = topics.map((topic) => items.findIndex(({ text }) => text.startsWith(topic)));
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(at).not.toContain(-1);
  });

  it("claims nothing that no record shows", () => {
    expect(list().every(({ state, evidence }) => state === "to do" && evidence === null)).toBe(true);
    expect(list().some(({ phase }) => phase === "after cooling down")).toBe(false);
  });

  it("never takes isolation, links or covers as done", () => {
    const all = list({
      asLeft: day([branch("A-L1", "sound")], {
        insulation: insulation("900 MΩ"),
        currents: [judged("L1", "within")],
      }),
      hardware: hardware("6.5 N·m"),
    });
    for (const start of ["Isolate", "Links", "Protective earth"]) {
      expect(all.find(({ text }) => text.startsWith(start))?.state).toBe("to do");
    }
  });
});

describe("torque", () => {
  it.each<[string, readonly (string | undefined)[], ChecklistItem["state"]]>([
    ["all within", ["6.5 N·m", "6.4 N·m"], "done"],
    ["one not written down", ["6.5 N·m", undefined], "to do"],
    ["one too little", ["6.5 N·m", "3.0 N·m"], "not passed"],
    ["none written down", [undefined], "to do"],
  ])("%s", (_, applied, state) => {
    expect(item("Tighten every nut", { hardware: hardware(...applied) }).state).toBe(state);
  });

  it("fails where the stud is overstressed, whatever the maker's torque says", () => {
    const strong = assessHardware(
      read({
        hardware: [
          {
            id: "studs",
            thread: "M6",
            strength: { standard: "ISO 898-1", grade: "4.6" },
            makerTorque: "15 N·m",
            applied: "15 N·m",
          },
        ],
      }),
    );
    const { state, evidence } = item("Tighten every nut", { hardware: strong });
    expect(state).toBe("not passed");
    expect(evidence).toContain("share of proof load");
  });

  it("is no proof of a joint that stood out as found", () => {
    const bad = [good("S3", { comparison: "investigate" }), good("S1"), good("S2", { rise: rise(3, 3) })];
    const of = (asLeft: ChecklistSource["asLeft"]) =>
      item("Remake", { asFound: day([], { joints: bad }), asLeft, hardware: hardware("6.5 N·m") });
    expect(of(null).text).toContain("S3, S2");
    expect(of(null).state).toBe("to do");
    expect(of(day([], { joints: [good("S3")] }))).toMatchObject({
      state: "to do",
      evidence: "Not yet shown good as left: S2.",
    });
    expect(of(day([], { joints: [good("S3"), good("S2")] })).state).toBe("done");
    expect(of(day([], { joints: [good("S3"), good("S2", { comparison: "investigate" })] })).state).toBe(
      "not passed",
    );
    expect(list().some(({ text }) => text.startsWith("Remake"))).toBe(false);
  });
});

describe("branches", () => {
  const state = (asLeft: ChecklistSource["asLeft"], asFound: ChecklistSource["asFound"] = null) => {
    const { state: is, evidence } = item("Read every branch", { asLeft, asFound });
    return [is, evidence];
  };
  const sound = branch("A-L1", "sound");
  it("are done only when all are judged sound as left", () => {
    expect(state(day([sound, sound]))[0]).toBe("done");
    expect(state(day([sound, branch("A-L2", "unjudged")]))).toEqual(["to do", "As left: A-L2 unjudged."]);
    expect(state(day([sound, branch("A-L2", "open")]))).toEqual(["not passed", "As left: A-L2 open."]);
    const found = day([sound]);
    expect(state({ ...found, resistances: { ...found.resistances, consistency: "inconsistent" } })[0]).toBe(
      "not passed",
    );
  });

  it("as found are no evidence of the repair", () => {
    expect(state(null, day([sound]))).toEqual(["to do", null]);
    expect(state(null, day([branch("A-L2", "open")]))).toEqual(["to do", "As found faulty: A-L2."]);
  });
});

describe("joints, insulation, feed and amps", () => {
  const left = (joints: readonly JointAssessment[]) => ({ asLeft: day([], { joints }) });
  it("compares drops and grades rises apart", () => {
    const like = left([good("S1"), good("S2", { rise: rise(0, 0) })]);
    expect(item("Compare like joints", like).state).toBe("done");
    expect(item("Thermal scan", like).state).toBe("done");
    expect(
      item("Compare like joints", left([good("S1", { comparison: "nothing to compare with" })])).state,
    ).toBe("to do");
    expect(item("Compare like joints", left([good("S1", { comparison: "investigate" })])).state).toBe(
      "not passed",
    );
    expect(item("Thermal scan", left([good("S1", { rise: rise("undecided", 0) })])).state).toBe("to do");
    expect(item("Thermal scan", left([good("S1", { rise: rise("undecided", 2) })])).state).toBe("to do");
    // ANSI/NETA ATS-2003, Table 100.18: from level 3 on it is no longer repaired as time permits.
    expect(item("Thermal scan", left([good("S1", { rise: rise("undecided", 3) })])).state).toBe("not passed");
    expect(item("Thermal scan", left([good("S1")])).state).toBe("to do");
  });

  it("leaves disagreeing limits of insulation to the maker", () => {
    const of = (reads: string, volts?: string) =>
      item("Insulation", { asLeft: day([], { insulation: insulation(reads, volts) }) });
    expect(of("900 MΩ").state).toBe("done");
    // ANSI/NETA MTS-2019, Table 100.1, is for 1000 V; the codes' least, IEC 60364-6 and IEC 60204-1, for 500 V.
    expect(of("900 MΩ").evidence).toContain("read below the test voltage of insulation at L1, NETA 100.1");
    expect(of("900 MΩ", "1000 V").evidence).toBe("Within every limit that is named.");
    expect(of("900 MΩ", "250 V").state).toBe("to do");
    expect(of("0.2 MΩ").state).toBe("not passed");
    expect(of("3.0 MΩ").state).toBe("to do");
    expect(of("3.0 MΩ").evidence).toContain("the maker's own figure decides");
    expect(of("OL").state).toBe("to do");
  });

  it("counts only what is installed, and asks for the split", () => {
    const feed = (more: Partial<RecordFeed>, amps: number) => {
      const record = read({
        feed: {
          edition: "NEC 2023",
          installation: "raceway",
          insulation: "75 °C",
          terminals: "75 °C",
          ...more,
        },
      });
      return item("Conductors", { feed: assessFeed(record, amps as never) });
    };
    expect(feed({}, 40).state).toBe("to do");
    expect(feed({ conductor: "6 AWG", device: "50 A" }, 40).state).toBe("done");
    expect(feed({ conductor: "10 AWG", device: "50 A" }, 40).state).toBe("not passed");
    const split = feed({ conductor: "1 AWG", device: "125 A" }, 90);
    expect(split.state).toBe("to do");
    expect(split.evidence).toContain("Split the elements into 2");
  });

  it("shows the amps to expect and judges those that were read", () => {
    const line = { ...judged("line current L1", null), value: 36.04, limit: { low: 34.96, high: null } };
    const commissioning = { lines: [line], scan: [], deferral: "invented" };
    expect(item("Amps", { commissioning }).text).toContain("L1 36.0 A (35.0 to …)");
    const currents = [judged("L1", "within"), judged("L2", "outside")];
    expect(item("Amps", { asLeft: day([], { currents }) })).toMatchObject({
      state: "not passed",
      evidence: "Outside: L2.",
    });
    expect(item("Amps", { asLeft: day([], { currents: currents.slice(0, 1) }) }).state).toBe("done");
    expect(item("Amps", { asLeft: day([], { currents: [judged("L1", "undecided")] }) }).state).toBe("to do");
  });
});
