/**
 * Joints remade and read again, a drop that was not read across its contact, and what breaks on the day of the repair. Ratios by Ohm's law
 * beside each check; that a joint up to half above its lowest like is let be is the comparison rule of acceptance-testing practice, from memory.
 */
import { assessModule, type BenchRecord, type ModuleAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const LINES = ["L1", "L2", "L3"] as const;
const atStar = (...reads: readonly string[]) =>
  LINES.map((from, i) => ({ from, to: "S", reads: reads[i] as string }));
const SOUND = atStar("7.58 Ω", "7.58 Ω", "7.58 Ω");
/** Drops at the 36.1 A that 30 kW take of 480 V. */
const drops = (...values: readonly number[]) =>
  values.map((one, i) => ({ id: `J${i + 1}`, drop: `${one.toFixed(1)} mV`, current: "36.1 A" }));

const record = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "invented curing oven",
  nameplate: { power: "30 kW", voltage: "480 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  wiring: {
    banks: [{ id: "A", connection: "star" }],
    joints: LINES.map((at, i) => ({ id: `J${i + 1}`, at })),
  },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } },
    clamp: { ofReading: 0.02, digits: 5 },
    millivoltmeter: { ofReading: 0.005, digits: 3 },
  },
  ...more,
});
const burnt = { ohms: SOUND, joints: drops(3, 74, 3) };
const remade = (joints: NonNullable<BenchRecord["asLeft"]>["joints"] & object): ModuleAssessment =>
  assessModule(record({ asFound: burnt, asLeft: { joints } }));

describe("a joint remade", () => {
  it("is history once its drop is read good, with nothing else read again", () => {
    const { answer, nextSteps, parts } = remade(drops(3, 3.1, 3));
    expect(answer[0]).toContain("As found: Resistance in joint J2");
    expect(answer[0]).toContain("As left: No fault shows in the readings.");
    expect(nextSteps.map(({ action }) => action).join(" ")).not.toContain("J2");
    expect(answer[2]).not.toContain("J2");
    expect(parts).toEqual([]);
  });

  it("alone is compared with the like joints of the day before", () => {
    // 3.1 mV beside 3.0 mV at one current; 30 mV is ten times the best.
    const good = remade([{ id: "J2", drop: "3.1 mV", current: "36.1 A" }]);
    expect(good.asLeft?.joints[0]).toMatchObject({ id: "J2", comparison: "like the best" });
    expect(good.asLeft?.joints[0]?.ratioToBest).toBeCloseTo(3.1 / 3, 9);
    const bad = remade([{ id: "J2", drop: "30.0 mV", current: "36.1 A" }]);
    expect(bad.asLeft?.joints[0]?.ratioToBest).toBeCloseTo(10, 9);
    expect(bad.answer[2]).toMatch(/^Not on joint J2/);
    expect(bad.parts.map(({ part }) => part)).toEqual([
      "nuts and washers for joint J2, and a bar end where it is burnt or pitted",
    ]);
  });

  it("still burnt stays what is to be remade first", () => {
    expect(remade(drops(3, 40, 3)).answer[2]).toMatch(/^Not on joint J2/);
    // What was not read again is no history.
    expect(remade([{ id: "J1", drop: "3.0 mV", current: "36.1 A" }]).answer[2]).toMatch(/J2/);
  });
});

describe("a drop of nothing where current flows", () => {
  it("is read again, and no line is called lost by it", () => {
    const { answer, asFound, nextSteps } = assessModule(
      record({ asFound: { ohms: SOUND, joints: drops(0, 3, 3) } }),
    );
    expect(answer[0]).not.toContain("No supply");
    expect(nextSteps[0]?.action).toMatch(/^Read the drop across joint J1 again: one probe on each side/);
    expect(asFound?.joints.map(({ id, comparison }) => [id, comparison])).toEqual([
      ["J2", "like the best"],
      ["J3", "like the best"],
      ["J1", "nothing to compare with"],
    ]);
  });

  it("at a current too small to show a joint asks for more of it", () => {
    // ±3 digits of 0.1 mV over 0.2 A are 1.5 mΩ; over 36.1 A they are 8 µΩ.
    const few = [{ id: "J1", drop: "0.0 mV", current: "0.2 A" }, ...drops(3, 3, 3).slice(1)];
    const { nextSteps } = assessModule(record({ asFound: { ohms: SOUND, joints: few } }));
    expect(nextSteps[0]).toMatchObject({
      action:
        "Read the drop across joint J1 again with more current through it, or dead with a four-wire meter.",
      about: ["J1"],
    });
  });

  it("hides no bad joint beside it", () => {
    const { asFound, answer } = assessModule(record({ asFound: { ohms: SOUND, joints: drops(0, 20, 3) } }));
    // 20 mV over 3 mV.
    expect(asFound?.joints[0]).toMatchObject({ id: "J2", comparison: "investigate" });
    expect(asFound?.joints[0]?.ratioToBest).toBeCloseTo(20 / 3, 9);
    expect(answer[2]).toMatch(/^Not on joint J2/);
  });
});

describe("parts after the repair", () => {
  it("name what broke on the day itself, and not what was renewed", () => {
    const { parts } = assessModule(
      record({
        asFound: { ohms: atStar("7.58 Ω", "OL", "7.58 Ω") },
        asLeft: { ohms: atStar("7.58 Ω", "7.60 Ω", "OL"), joints: drops(3, 3, 40) },
      }),
    );
    expect(parts.map(({ part, quantity }) => [quantity, part])).toEqual([
      [1, "element for A-L3"],
      [1, "nuts and washers for joint J3, and a bar end where it is burnt or pitted"],
    ]);
  });

  it("go by the later reading of a branch that is faulty still", () => {
    const { parts } = assessModule(
      record({
        asFound: { ohms: atStar("7.58 Ω", "OL", "7.58 Ω") },
        asLeft: { ohms: atStar("7.58 Ω", "9.80 Ω", "7.58 Ω") },
      }),
    );
    expect(parts.map(({ reason }) => reason)).toEqual([
      "A-L2 is outside the tolerance: read its elements one by one, at least one of them or a joint",
    ]);
  });
});
