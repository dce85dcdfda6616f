/**
 * The trade's main failure: the elements are good, a link, bar or joint on the way to one of them is burnt. Read on the element's own
 * studs, its links lifted, and again through the links, the difference is the link's: both readings by Ohm's law and series addition.
 * Targets: U²/P of the plate, cold by the factor given.
 */
import { assessModule, type BenchRecord, type RecordOhms } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const stud = (from: string, to: string, alone: string, reads: string): RecordOhms => ({
  from,
  to,
  reads,
  alone,
  ownStuds: true,
});
const STUDS = ["7.60 Ω", "7.58 Ω", "7.61 Ω"].map((reads, i) => stud(`L${i + 1}`, "S", `A-L${i + 1}`, reads));
const links = (...reads: readonly string[]): RecordOhms[] =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one }));

const star = (ohms: readonly RecordOhms[], more: Partial<BenchRecord> = {}): BenchRecord => ({
  title: "invented tile kiln",
  nameplate: { power: "30 kW", voltage: "480 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } } },
  asFound: { ohms },
  ...more,
});
const findings = (record: BenchRecord) =>
  assessModule(record).asFound?.resistances.branches.map(({ finding }) => finding);

describe("a burnt link behind good elements", () => {
  it.each(["OL", "9.10 Ω"])("is a link or joint on L1, not a contradiction and no element (%s)", (reads) => {
    const record = star([...STUDS, ...links(reads, "7.58 Ω", "7.60 Ω")]);
    const { answer, nextSteps, diagnosis, asFound, parts } = assessModule(record);
    expect(answer[0]).not.toMatch(/contradict|No single fault|element A/);
    expect(answer[0]).toMatch(/joint/);
    expect(answer[2]).toMatch(/^Not before the links, bars and joints on the way of L1 to S/);
    expect(nextSteps[0]?.action).toMatch(
      /^Isolate, then open every link, bar and joint on the way of L1 to S/,
    );
    expect(findings(record)).toEqual(["sound", "sound", "sound"]);
    expect(asFound?.resistances.beyondElements.map(({ from, to }) => [from, to])).toEqual([["L1", "S"]]);
    // Every explanation of weight is a joint that this reading passes, none of them on another line.
    const first = diagnosis?.groups[0]?.explanations ?? [];
    expect(first.length).toBeGreaterThan(0);
    for (const { faults } of first) {
      expect(faults.map(({ kind }) => kind)).toEqual([reads === "OL" ? "open joint" : "joint"]);
      expect(["L1", "L1>A", "S<A-L1"]).toContain((faults[0] as { place: string }).place);
    }
    expect(parts.some(({ part }) => part.startsWith("element"))).toBe(false);
  });

  it("is the corner of a delta where two of three readings are open and the third has two elements beside it", () => {
    // 22.1 Ω beside 44.2 Ω: 14.7 Ω, and 0.2 Ω of leads.
    const own = [
      ["L1", "L2", "A-L1L2"],
      ["L2", "L3", "A-L2L3"],
      ["L3", "L1", "A-L3L1"],
    ].map(([from = "", to = "", alone = ""]) => stud(from, to, alone, "22.3 Ω"));
    const through: RecordOhms[] = [
      { from: "L1", to: "L2", reads: "OL" },
      { from: "L2", to: "L3", reads: "14.9 Ω" },
      { from: "L3", to: "L1", reads: "OL" },
    ];
    const { answer, diagnosis } = assessModule(
      star([...own, ...through], { wiring: { banks: [{ id: "A", connection: "delta" }] } }),
    );
    expect(answer[0]).not.toMatch(/contradict/);
    const places = diagnosis?.groups[0]?.explanations.map(
      ({ faults: [fault] }) => (fault as { place: string }).place,
    );
    expect(places?.sort()).toEqual(["L1", "L1>A"]);
  });

  it("is the joint that the record draws there, where it draws one", () => {
    const joints = ["L1", "L2", "L3"].map((at) => ({ id: `stud ${at}`, at }));
    const { answer } = assessModule(
      star([...STUDS, ...links("9.10 Ω", "7.58 Ω", "7.60 Ω")], {
        wiring: { banks: [{ id: "A", connection: "star" }], joints },
      }),
    );
    expect(answer[0]).toContain("joint stud L1");
    expect(answer[0]).not.toContain("stud L2");
  });

  it("shows without a nameplate too", () => {
    const { nameplate: _, ...bare } = star([...STUDS, ...links("OL", "7.58 Ω", "7.60 Ω")]);
    const { answer, nextSteps } = assessModule(bare);
    expect(answer[0]).toMatch(/on their own studs.*L1 to S.*link, bar or joint/);
    expect(answer[2]).toMatch(/^Not before the links/);
    expect(nextSteps[0]?.action).toContain("L1 to S");
  });

  it("is not seen where nothing differs, and a reading below the elements is a path beside them", () => {
    expect(assessModule(star([...STUDS, ...links("7.60 Ω", "7.58 Ω", "7.60 Ω")])).answer[0]).toBe(
      "No fault shows in the readings.",
    );
    const less = assessModule(star([...STUDS, ...links("5.10 Ω", "7.58 Ω", "7.60 Ω")]));
    expect(less.answer[2]).toMatch(/^Not before the path beside the elements, L1 to S/);
  });
});

describe("a burnt link as found", () => {
  const instruments = {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } },
    clamp: { ofReading: 0.02, digits: 5 },
    insulationTester: { ofReading: 0.03, digits: 2 },
  } as const;
  const found = star([...STUDS, ...links("OL", "7.58 Ω", "7.60 Ω")], { instruments });
  const running = (asLeft: NonNullable<BenchRecord["asLeft"]>) =>
    assessModule({ ...found, asLeft }).answer[2];
  it("stands while nobody read that way again, and is mended by that reading or by sound amps", () => {
    expect(running({ insulation: [{ from: "L1", reads: "90 MΩ", testVoltage: "500 V" }] })).toMatch(
      /^Not before the links/,
    );
    expect(running({ ohms: links("7.60 Ω", "7.58 Ω", "7.60 Ω") })).not.toContain("links");
    // 30 kW at 480 V: 36.1 A.
    const currents = ["L1", "L2", "L3"].map((at) => ({ at, reads: "36.1 A" }));
    expect(running({ currents })).not.toContain("links");
  });
});

describe("readings alone of which the record does not say where the probes sat", () => {
  it("contradict those through the links, and what would settle it is asked for", () => {
    const alone = STUDS.map(({ ownStuds: _, ...one }) => one);
    const { answer, nextSteps } = assessModule(star([...alone, ...links("OL", "7.58 Ω", "7.60 Ω")]));
    expect(answer[0]).toMatch(/contradict each other, unless .* own studs: then a link, bar or joint is bad/);
    expect(nextSteps.some(({ action }) => action.includes("own studs"))).toBe(true);
  });
});

it("refuses own studs of no branch, or of a whole bank", () => {
  for (const alone of [undefined, "A"]) {
    const one = {
      from: "L1",
      to: "S",
      reads: "7.60 Ω",
      ownStuds: true,
      ...(alone === undefined ? {} : { alone }),
    };
    try {
      assessModule(star([one]));
      expect.unreachable();
    } catch (error) {
      if (!isElectroheatError(error)) throw error;
      expect(error.issues.map(({ path }) => path)).toEqual(["asFound.ohms.0.alone"]);
      expect(error.message).toContain("A-L1");
    }
  }
});

describe("an element that is bad on its own studs", () => {
  // 9.0 Ω where 480²/30 000/1.04 = 7.38 Ω belong, and as much through the links (0.2 Ω of leads in both): no joint is in the difference.
  it("sends nobody to its joints where it reads high", () => {
    const high = stud("L3", "S", "A-L3", "9.20 Ω");
    const record = star([...STUDS.slice(0, 2), high, ...links("7.60 Ω", "7.58 Ω", "9.21 Ω")]);
    const { answer, nextSteps } = assessModule(record);
    expect(answer[0]).toMatch(/^Element A-L3 off its value/);
    expect(nextSteps[0]?.action).toMatch(
      /read the elements of branch A-L3 one by one and renew what reads high/,
    );
    expect(answer[2]).toMatch(/^Not before A-L3 is renewed/);
    for (const line of [answer[1], answer[2]]) expect(line).not.toMatch(/four-wire|a bad joint/);
  });

  it("is what is renewed where it reads open, and its stud joint where only the way through the links does", () => {
    const open = star([
      ...STUDS.slice(0, 2),
      stud("L3", "S", "A-L3", "OL"),
      ...links("7.60 Ω", "7.58 Ω", "OL"),
    ]);
    expect(assessModule(open).nextSteps[0]?.action).toBe(
      "Isolate, then open up branch A-L3 and renew what is broken in it: open on its own studs, with no link or joint in the reading.",
    );
    const linked = star(links("7.60 Ω", "7.58 Ω", "OL"));
    expect(assessModule(linked).nextSteps[0]?.action).toContain(
      "whether a coil, its stud joint or its jumper bar",
    );
  });

  it("may have a bad joint again once it is read as left through the links alone", () => {
    const record = star([...STUDS, ...links("7.60 Ω", "7.58 Ω", "7.61 Ω")], {
      asLeft: { ohms: links("7.60 Ω", "7.58 Ω", "9.21 Ω") },
    });
    expect(assessModule(record).answer[2]).toMatch(/^Not before the joints of A-L3 are cleared/);
  });
});
