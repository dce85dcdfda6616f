/**
 * A terminal earthed, and no coil: broken porcelain, a bar that touches. What is expected is worked by hand: ohms from each terminal to
 * the frame are the coils between it and the fault, and the fault.
 */
import { diagnose, diagnosisText, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const R = 7.2 * 1.025;
const STAR = { banks: [bank("A", "star", 7.2)] };
const FINE = {
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" },
    insulationTester: { ofReading: 0.03, digits: 3, resolution: 0.01 },
  },
};
const toFrame = (reads: Readonly<Record<string, number>>) =>
  Object.entries(reads).map(([from, one]) => reading({ kind: "insulation", from, reads: one }));

describe("ohms to the frame that are the same coil from every line, and next to nothing at the star point", () => {
  const sheet = [
    ...pairs([2 * R, 2 * R, 2 * R]),
    ...toFrame({ L1: R + 0.5, L2: R + 0.5, L3: R + 0.5, S: 0.5 }),
  ];
  const diagnosed = () => diagnose(asked(STAR, sheet, FINE));

  it("are the star point's: no coil has to be earthed at its very end", () => {
    const found = diagnosed();
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "earthed terminal", terminal: "S" }]);
    const [first] = topOf(found);
    expect(first?.estimates.map(({ of }) => of)).toEqual(["fault resistance"]);
    const [{ value = 0, low = 0, high = 0 } = {}] = first?.estimates ?? [];
    expect(value).toBeGreaterThan(0.05);
    expect(value).toBeLessThan(0.9);
    expect(low).toBeLessThan(0.5);
    expect(high).toBeGreaterThan(0.5 - 0.3);
  });

  it("predict each reading", () => {
    const predicted = topOf(diagnosed())[0]?.predicted.map((one) => one.predicted) ?? [];
    expect(predicted.slice(0, 3).every((one) => Math.abs((one as number) - 2 * R) < 0.01)).toBe(true);
    for (const one of predicted.slice(3, 6)) expect(Math.abs((one as number) - (R + 0.5))).toBeLessThan(0.5);
    expect(predicted[6]).toBeLessThan(1);
  });

  it("are told in words", () => {
    expect(diagnosisText({ asked: asked(STAR, sheet, FINE), diagnosis: diagnosed() })).toContain(
      "star point S earthed",
    );
  });
});

describe("a line's terminal earthed", () => {
  it("reads itself at that terminal, and two coils more at the others", () => {
    const sheet = toFrame({ L1: 2, L2: 2 * R + 2, L3: 2 * R + 2, S: R + 2 });
    const found = diagnose(asked(STAR, sheet, FINE));
    expect(firstFaults(found)).toEqual([{ kind: "earthed terminal", terminal: "L1" }]);
  });

  it("in delta lies two thirds of a coil from the two others", () => {
    const delta = { banks: [bank("A", "delta", 7.2)] };
    const sheet = toFrame({ L1: 4 + (2 * R) / 3, L2: 4 + (2 * R) / 3, L3: 4 });
    const found = diagnose(asked(delta, sheet, FINE));
    expect(firstFaults(found)).toEqual([{ kind: "earthed terminal", terminal: "L3" }]);
  });

  it("cannot be told from the coils on it by one reading, and is asked for alone", () => {
    const sheet = toFrame({ L1: 800 });
    const tester = { ofReading: 0.05, digits: 5, resolution: 10 };
    const question = asked(STAR, sheet, { instruments: { ...FINE.instruments, insulationTester: tester } });
    const names = topOf(diagnose(question)).map(({ faults }) => JSON.stringify(faults));
    expect(names).toContain(JSON.stringify([{ kind: "earthed terminal", terminal: "L1" }]));
    expect(names).toContain(JSON.stringify([{ kind: "earth fault", element: "A-L1" }]));
    const measurement = nextMeasurements(question)[0]?.measurement;
    expect(measurement).toMatchObject({ kind: "insulation", only: [expect.stringMatching(/^A-L[123]$/)] });
  });

  it("stays low when the coils are lifted from it", () => {
    const lifted = reading({ kind: "insulation", from: "L1", only: ["A-L2"], reads: 5e3 });
    const found = diagnose(
      asked(STAR, [lifted, ...toFrame({ L2: 5e3 })], {
        instruments: {
          ...FINE.instruments,
          insulationTester: { ofReading: 0.05, digits: 2, resolution: 100 },
        },
      }),
    );
    expect(firstFaults(found)).toEqual([{ kind: "earthed terminal", terminal: "L1" }]);
  });
});

it("a terminal that is not to be weighed is not", () => {
  const sheet = toFrame({ L1: 2, L2: 2 * R + 2, L3: 2 * R + 2, S: R + 2 });
  const found = diagnose(asked(STAR, sheet, { ...FINE, priors: { earthedTerminal: 0 } }));
  const kinds = found.groups.flatMap(({ explanations }) =>
    explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
  );
  expect(kinds).toContain("earth fault");
  expect(kinds).not.toContain("earthed terminal");
});

describe("under voltage, the neutral of the supply earthed", () => {
  // 480 V/√3 over 30 Ω is 9.24 A beside the coil's 36.1 A in the line's wire, in phase with it; the bank's own wires carry 36.1 A.
  const coil = 480 / Math.sqrt(3) / (R * 1.04);
  const leak = 480 / Math.sqrt(3) / 30;
  const into = (line: string, reads: number) => reading({ kind: "current", at: line, into: "A", reads });
  const sheet = (first: number) => [
    ...amps([first, coil, coil].map((one) => Math.round(one * 10) / 10)),
    ...["L1", "L2", "L3"].map((line) => into(line, Math.round(coil * 10) / 10)),
    ...volts3([480, 480, 480]),
  ];

  it("a line carries more than its bank takes: what leaves at the terminal", () => {
    const [first] = topOf(diagnose(asked(STAR, sheet(coil + leak))));
    expect(first?.faults).toEqual([{ kind: "earthed terminal", terminal: "L1" }]);
    const [ohms] = first?.estimates ?? [];
    expect(ohms?.low).toBeLessThan(30);
    expect(ohms?.high).toBeGreaterThan(30);
    // The leak is in the line's wire alone; in no other, nor in the bank's.
    const predicted = (first?.predicted ?? []).map((one) => one.predicted as number);
    expect(Math.abs((predicted[0] as number) - coil - leak)).toBeLessThan(1.5);
    for (const one of predicted.slice(1, 6)) expect(one).toBeCloseTo(coil, 6);
    for (const one of predicted.slice(6)) expect(one).toBeCloseTo(480, 6);
  });

  it("and no more than it takes is a sound terminal", () => {
    expect(firstFaults(diagnose(asked(STAR, sheet(coil))))).toEqual([]);
  });
});
