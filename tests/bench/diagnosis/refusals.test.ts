/** Bad input: what is refused, by which code and on which argument; what is only warned of; what few readings leave open. */
import {
  type DiagnosisInput,
  diagnose,
  diagnosisText,
  type FieldReading,
  nextMeasurements,
} from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { ALL_INSTRUMENTS, amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const star = { banks: [bank("A", "star", 12)] };

function refusal(run: () => unknown): readonly [string, string] {
  try {
    run();
  } catch (error) {
    if (isElectroheatError(error)) return [error.code, error.argument];
    throw error;
  }
  return ["accepted", ""];
}

const ofReading = (one: object, module: object = star): readonly [string, string] =>
  refusal(() => diagnose(asked(module, [reading(one)])));

describe("readings that are refused", () => {
  const ohm = { kind: "resistance", from: "L1", to: "L2", reads: 24 };
  it.each([
    [{ ...ohm, to: "L4" }, "unknown-name", "readings.0.to"],
    [{ ...ohm, from: "S-B" }, "unknown-name", "readings.0.from"],
    [{ ...ohm, to: "L1" }, "inconsistent", "readings.0.to"],
    [{ ...ohm, reads: -24 }, "out-of-range", "readings.0.reads"],
    [{ ...ohm, reads: Number.NaN }, "not-a-number", "readings.0.reads"],
    [{ ...ohm, reads: Number.POSITIVE_INFINITY }, "not-a-number", "readings.0.reads"],
    [{ ...ohm, reads: "24" }, "not-a-number", "readings.0.reads"],
    [{ ...ohm, reads: "" }, "missing", "readings.0.reads"],
    [{ ...ohm, reads: undefined }, "missing", "readings.0.reads"],
    [{ ...ohm, only: [] }, "missing", "readings.0.only"],
    [{ ...ohm, only: ["B"] }, "unknown-name", "readings.0.only.0"],
    [{ ...ohm, ohms: 24 }, "unknown-field", "readings.0.ohms"],
    [{ kind: "weight", reads: 5 }, "unknown-name", "readings.0.kind"],
    [{ kind: "current", at: "L1", reads: -3 }, "out-of-range", "readings.0.reads"],
    [{ kind: "current", at: "L1", reads: "open" }, "not-a-number", "readings.0.reads"],
    [{ kind: "current", at: "L9", reads: 3 }, "unknown-name", "readings.0.at"],
    [{ kind: "current", at: "S", reads: 3 }, "inconsistent", "readings.0.into"],
    [{ kind: "current", at: "L1", into: "A-L2", reads: 3 }, "inconsistent", "readings.0.into"],
    [{ kind: "voltage", from: "L1", to: "X", reads: 3 }, "unknown-name", "readings.0.to"],
    [{ kind: "voltage", from: "L1", to: "L2", reads: -480 }, "out-of-range", "readings.0.reads"],
    [{ kind: "drop", across: "J1", reads: 0.01 }, "unknown-name", "readings.0.across"],
    [{ kind: "insulation", from: "frame", reads: 1e6 }, "unknown-name", "readings.0.from"],
  ] as const)("%j is %s on %s", (one, code, path) => {
    expect(ofReading(one)).toEqual([code, path]);
  });

  it("names all wrong readings at once", () => {
    const readings = [...pairs([24, 24]), reading({ ...ohm, to: "L4" }), reading({ ...ohm, reads: -1 })];
    try {
      diagnose(asked(star, readings));
      expect.unreachable();
    } catch (error) {
      const paths = isElectroheatError(error) ? error.issues.map(({ path }) => path) : [];
      expect(paths).toEqual(["readings.2.to", "readings.3.reads"]);
    }
  });
});

describe("questions that are refused", () => {
  const put =
    (field: object): (() => unknown) =>
    () =>
      diagnose({ ...asked(star, pairs([24])), ...field } as DiagnosisInput);
  it.each([
    [{ readings: undefined }, "missing", "readings"],
    [{ module: undefined }, "missing", "module.plan"],
    [{ module: { banks: [] } }, "missing", "module.banks"],
    [{ alternatives: [{ banks: [] }] }, "missing", "alternatives.0.banks"],
    [{ instruments: undefined }, "missing", "instruments"],
    [{ instruments: {} }, "missing", "instruments.ohmmeter"],
    [{ instruments: { thermometer: {} } }, "unknown-field", "instruments.thermometer"],
    [
      { instruments: { ohmmeter: { ...ALL_INSTRUMENTS.ohmmeter, ofReading: 0.9 } } },
      "out-of-range",
      "instruments.ohmmeter.ofReading",
    ],
    [
      { instruments: { ohmmeter: { ...ALL_INSTRUMENTS.ohmmeter, resolution: 0 } } },
      "out-of-range",
      "instruments.ohmmeter.resolution",
    ],
    [
      { instruments: { ohmmeter: { ...ALL_INSTRUMENTS.ohmmeter, leads: "off" } } },
      "unknown-name",
      "instruments.ohmmeter.leads",
    ],
    [{ supply: undefined, readings: amps([30]) }, "missing", "supply"],
    [{ supply: { lineVoltage: 0 } }, "out-of-range", "supply.lineVoltage"],
    [{ depth: "triples" }, "unknown-name", "depth"],
    [{ spread: { individual: -1 } }, "out-of-range", "spread.individual"],
    [{ spread: { common: { low: 0.2, high: 0.1 } } }, "out-of-range", "spread.common.high"],
    [{ spread: { age: 3 } }, "unknown-field", "spread.age"],
    [{ priors: { elementOpen: 1 } }, "out-of-range", "priors.elementOpen"],
    [{ priors: { rust: 0.1 } }, "unknown-field", "priors.rust"],
    [{ colour: "red" }, "unknown-field", "colour"],
  ] as const)("%j is %s on %s", (field, code, path) => {
    expect(refusal(put(field))).toEqual([code, path]);
  });

  it("checks candidates as it checks readings", () => {
    const candidates = [{ kind: "resistance", from: "L1", to: "Q" } as const];
    expect(refusal(() => nextMeasurements({ ...asked(star, pairs([24])), candidates }))).toEqual([
      "unknown-name",
      "candidates.0.to",
    ]);
  });
});

describe("slips of a thousand", () => {
  const warned = (readings: readonly FieldReading[], module: object = star): readonly string[] =>
    diagnose(asked(module, readings))
      .warnings.filter(({ code }) => code === "suspicious")
      .map(({ path, message }) => `${path} ${/: ([a-z]+ typed as [a-z]+)/.exec(message)?.[1]}`);

  it("knows milliohms typed as ohms, and the ranking still takes them as given", () => {
    const readings = pairs([24.3, 24_300, 24.2]);
    expect(warned(readings)).toEqual(["readings.1.reads milliohms typed as ohms"]);
    expect(diagnose(asked(star, readings)).outcome).toBe("nothing fits");
  });

  it("knows kiloohms typed as ohms, one or all of them", () => {
    expect(warned(pairs([0.0243, 24.3, 24.2]))).toEqual(["readings.0.reads kiloohms typed as ohms"]);
    expect(warned(pairs([0.0243, 0.0242, 0.0243]))).toHaveLength(3);
  });

  it("knows milliamperes and kilovolts", () => {
    const hot = { banks: [bank("A", "star", 7.4)] };
    const readings = [...amps([36_000, 36, 36.2]), ...volts3([0.48, 480, 481])];
    expect(warned(readings, hot)).toEqual([
      "readings.0.reads milliamperes typed as amperes",
      "readings.3.reads kilovolts typed as volts",
    ]);
  });

  it("knows millivolts typed as volts across a joint", () => {
    const jointed = { ...star, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] };
    const readings = [...amps([22, 22, 22]), reading({ kind: "drop", across: "J", reads: 5.5 })];
    expect(warned(readings, jointed)).toEqual(["readings.3.reads millivolts typed as volts"]);
  });

  it("leaves ordinary sheets and true faults alone", () => {
    expect(warned(pairs([24.3, 24.3, 24.2]))).toEqual([]);
    expect(warned(pairs(["open", 24.3, "open"]))).toEqual([]);
    expect(
      warned([...amps([0, 19.1, 19.2]), reading({ kind: "voltage", from: "L1", to: "S", reads: 0.2 })]),
    ).toEqual([]);
  });
});

describe("few readings", () => {
  it("still ranks, and says what is not known", () => {
    const found = diagnose(
      asked({ banks: [bank("A", "star", 12, { elementsInParallel: 2 })] }, pairs([18.6])),
    );
    expect(topOf(found).length).toBeGreaterThan(1);
    expect(firstFaults(found)[0]?.kind).toBe("element open");
    expect(found.notDetermined.some((one) => one.startsWith("Nothing about the supply"))).toBe(true);
    expect(found.notDetermined.some((one) => one.startsWith("Insulation was not measured"))).toBe(true);
    expect(found.notDetermined.some((one) => one.startsWith("These readings cannot tell apart"))).toBe(true);
  });

  it("never calls an element from low insulation: damp does the same", () => {
    const readings = [...pairs([24.3, 24.3, 24.2]), reading({ kind: "insulation", from: "L1", reads: 3e5 })];
    const found = diagnose(asked(star, readings));
    expect(found.warnings.map(({ code }) => code)).toEqual(["caution"]);
    expect(found.warnings[0]?.message).toContain("does not say which element");
    for (const { faults, probability } of found.groups.flatMap((group) => group.explanations)) {
      if (faults[0]?.kind === "earth fault") expect(probability).toBeLessThan(0.34);
    }
  });
});

describe("the text", () => {
  it("is at most 96 columns wide and says answer, evidence, next step and cautions", () => {
    const question = asked(
      { banks: [bank("A", "star", 12, { elementsInParallel: 2 })] },
      pairs([18.6, 12.5, 18.7]),
    );
    const text = diagnosisText({
      asked: question,
      diagnosis: diagnose(question),
      next: nextMeasurements(question),
    });
    for (const line of text.split("\n")) expect([...line].length).toBeLessThanOrEqual(96);
    for (const title of ["EXPLANATIONS", "NEXT MEASUREMENT", "CAUTIONS", "WHAT THESE READINGS DO NOT SHOW"]) {
      expect(text).toContain(title);
    }
    expect(text).toContain("element A-L1-1 open");
    expect(text).not.toMatch(/100 %|undefined|NaN/);
  });

  it("refuses a diagnosis that explains nothing", () => {
    const question = asked(star, pairs([24.1, 24.3, 24.4]));
    const diagnosis = diagnose(question);
    const [first, ...others] = diagnosis.groups as readonly [(typeof diagnosis.groups)[0]];
    const refused = (groups: typeof diagnosis.groups) =>
      refusal(() => diagnosisText({ asked: question, diagnosis: { ...diagnosis, groups } }));
    expect(refused([])).toEqual(["missing", "diagnosis.groups"]);
    expect(refused([first, { ...first, explanations: [] }, ...others])).toEqual([
      "missing",
      "diagnosis.groups.1.explanations",
    ]);
    expect(refused([first, ...others])).toEqual(["accepted", ""]);
  });

  it("says loudly when nothing fits", () => {
    const question = asked(star, pairs(["open", 24.3, 24.4]));
    expect(diagnosisText({ asked: question, diagnosis: diagnose(question) })).toContain(
      "NOTHING ON THE LIST FITS",
    );
  });
});
