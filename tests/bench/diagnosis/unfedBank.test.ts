/**
 * A stage that is off while the others run. Line currents by hand: a delta bank of 40 Ω on 400 V draws √3·400/40 = 17.3 A a line, three of
 * them 52.0 A, two 34.6 A, one 17.3 A; hot, a twenty-fifth less. Dead readings pass the contactor by: three deltas of 40 Ω side by side read
 * 40·(2/3)/3 = 8.89 Ω between lines whether a stage is on or not.
 */
import { assessModule, diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const THREE = { banks: ["A", "B", "C"].map((id) => bank(id, "delta", 40)) };
const HOT = 1.04;
const volts = { supply: { lineVoltage: 400 } };
const lines = (each: number) => amps([1, 0.997, 1.003].map((k) => Math.round((k * each * 10) / HOT) / 10));
const off = (id: string) => ({ kind: "unfed bank", bank: id });

describe("one of three stages off", () => {
  it("is told, which of them is not, and no link is accused", () => {
    const found = diagnose(asked(THREE, [...lines(34.64), ...volts3([400, 401, 399])], volts));
    expect(found.outcome).toBe("explained");
    expect(topOf(found).map(({ faults }) => faults)).toEqual(
      expect.arrayContaining([[off("A")], [off("B")], [off("C")]]),
    );
    expect(topOf(found)).toHaveLength(3);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
  });

  it("is found by the amps into one bank", () => {
    const into = reading({ kind: "current", at: "L1", into: "B", reads: 0 });
    const found = diagnose(asked(THREE, [...lines(34.64), ...volts3([400, 401, 399]), into], volts));
    expect(firstFaults(found)).toEqual([off("B")]);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
  });

  it("does not show dead: the ohms of all three are what they are", () => {
    const readings = [...lines(34.64), ...volts3([400, 401, 399]), ...pairs([8.9, 8.9, 8.9])];
    const found = diagnose(asked(THREE, readings, volts));
    expect(firstFaults(found)[0]?.kind).toBe("unfed bank");
  });

  it("or two of them", () => {
    const found = diagnose(asked(THREE, [...lines(17.32), ...volts3([400, 401, 399])], volts));
    expect(topOf(found).map(({ faults }) => faults)).toEqual(
      expect.arrayContaining([
        [off("A"), off("B")],
        [off("A"), off("C")],
        [off("B"), off("C")],
      ]),
    );
  });

  it("is not weighed with a prior of 0, nor of one bank, nor of ohms alone", () => {
    const kinds = (module: object, readings: Parameters<typeof asked>[1], more: object = {}) =>
      diagnose(asked(module, readings, { ...volts, ...more })).groups.flatMap(({ explanations }) =>
        explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
      );
    const readings = [...lines(34.64), ...volts3([400, 401, 399])];
    expect(kinds(THREE, readings)).toContain("unfed bank");
    expect(kinds(THREE, readings, { priors: { unfedBank: 0 } })).not.toContain("unfed bank");
    expect(kinds({ banks: [bank("A", "delta", 40)] }, readings)).not.toContain("unfed bank");
    expect(kinds(THREE, pairs([13.3, 13.3, 13.3]))).not.toContain("unfed bank");
  });

  it("is asked after at the stage, not at the links, where the bank is known", () => {
    const { answer, nextSteps, parts } = assessModule({
      title: "invented",
      nameplate: { power: "36 kW", voltage: "400 V" },
      wiring: { banks: ["A", "B", "C"].map((id) => ({ id, connection: "delta" })) },
      supply: { v12: "400 V", v23: "401 V", v31: "399 V" },
      temperatureFactor: HOT,
      instruments: { clamp: { ofReading: 0.02, digits: 5 }, voltmeter: { ofReading: 0.01, digits: 3 } },
      asFound: {
        currents: [
          { at: "L1", reads: "34.6 A" },
          { at: "L2", reads: "34.5 A" },
          { at: "L3", reads: "34.7 A" },
          { at: "L1", into: "B", reads: "0.0 A" },
        ],
      },
    } as never);
    expect(answer[0]).toMatch(/^Bank B without supply \(over 99\.9 %\)/);
    const stage = nextSteps.find(({ action }) => /^Find out whether bank B was called for/.test(action));
    expect(stage?.reason).toMatch(/^Bank B without supply/);
    expect(nextSteps.map(({ action }) => action).join(" ")).not.toMatch(/link/);
    expect(parts).toEqual([]);
  });
});
