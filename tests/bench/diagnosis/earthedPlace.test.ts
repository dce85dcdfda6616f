/**
 * Low ohms to the frame tell where a coil is earthed. What a meter shows between a terminal and an earthed coil is worked out here
 * apart from the library, by the node conductances of the module with the coil cut in two (general-purpose matrix inverse).
 */

import { diagnose, type FieldReading } from "electroheat/bench";
import type { ModulePlan } from "electroheat/circuit";
import { ohms } from "electroheat/quantity";
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";

type Resistor = readonly [string, string, number];

/** Resistance from a terminal to the frame: the frame is one more node, held at 0 V, an ampere goes in at the terminal. */
function toFrame(resistors: readonly Resistor[], from: string): number {
  const nodes = [...new Set(resistors.flatMap(([a, b]) => [a, b] as const))].filter(
    (node) => node !== "frame",
  );
  const g = Matrix.zeros(nodes.length, nodes.length);
  for (const [a, b, r] of resistors) {
    const [i, k] = [nodes.indexOf(a), nodes.indexOf(b)];
    if (i >= 0) g.set(i, i, g.get(i, i) + 1 / r);
    if (k >= 0) g.set(k, k, g.get(k, k) + 1 / r);
    if (i >= 0 && k >= 0) {
      g.set(i, k, g.get(i, k) - 1 / r);
      g.set(k, i, g.get(k, i) - 1 / r);
    }
  }
  return inverse(g).get(nodes.indexOf(from), nodes.indexOf(from));
}

/** Resistors of a module with its first coil earthed at x through so many ohms. */
function earthed(connection: "star" | "delta", coil: number, x: number, fault: number): Resistor[] {
  const ends = connection === "star" ? ["S", "S", "S"] : ["L2", "L3", "L1"];
  const whole = [1, 2].map((i): Resistor => [`L${i + 1}`, ends[i] as string, coil]);
  return [
    ["L1", "tap", x * coil],
    ["tap", ends[0] as string, (1 - x) * coil],
    ["tap", "frame", fault],
    ...whole,
  ];
}

const plan = (connection: "star" | "delta", coil: number): ModulePlan => ({
  banks: [{ id: "A", connection, elementResistance: ohms(coil) }],
});
const instruments = {
  ohmmeter: { ofReading: 0.005, digits: 2, resolution: 0.01, leads: { shorted: ohms(0.2) } },
  insulationTester: { ofReading: 0.03, digits: 3, resolution: 0.1 },
};
const read = (resistors: readonly Resistor[], terminals: readonly string[]): FieldReading[] =>
  terminals.map((from) => ({ kind: "insulation", from, reads: ohms(toFrame(resistors, from)) }));

const ask = (connection: "star" | "delta", coil: number, readings: readonly FieldReading[]) =>
  diagnose({ module: plan(connection, coil), instruments, readings });

describe("an earthed coil read to the frame from several terminals", () => {
  // Not at the exact nominal resistance: the middle of the tolerance of +10/−5 % is 2.5 % above.
  it.each([
    ["star", 10, 0.3, 0.05, ["L1", "L2", "L3"]],
    ["star", 10, 0.3, 0.05, ["L1", "S"]],
    ["star", 240, 0.14, 2, ["L1", "L2", "L3"]],
    ["star", 30, 0.8, 4, ["L1", "L2", "L3", "S"]],
    ["delta", 30, 0.2, 0.05, ["L1", "L2", "L3"]],
    ["delta", 60, 0.45, 3, ["L1", "L2", "L3"]],
  ] as const)(
    "%s of %d Ω at %d through %d Ω from %j: which, where and how",
    (connection, coil, x, fault, from) => {
      const { groups, outcome } = ask(
        connection,
        coil,
        read(earthed(connection, coil * 1.025, x, fault), from),
      );
      const [first] = groups[0]?.explanations ?? [];
      expect(outcome).not.toBe("nothing fits");
      expect(first?.faults).toEqual([
        { kind: "earth fault", element: connection === "star" ? "A-L1" : "A-L1L2" },
      ]);
      expect(first?.probability).toBeGreaterThan(0.95);
      const [place, resistance] = first?.estimates ?? [];
      expect(place?.of).toBe("position");
      expect(place?.low).toBeLessThan(x);
      expect(place?.high).toBeGreaterThan(x);
      expect((place?.high as number) - (place?.low as number)).toBeLessThan(0.35);
      expect(resistance?.low).toBeLessThan(fault);
      expect(resistance?.high).toBeGreaterThan(fault);
      // A fault of more ohms than the least reading would be more than all that lies in its way.
      expect(resistance?.high).toBeLessThan(1.3 * toFrame(earthed(connection, coil, x, fault), from[0]) + 1);
      for (const { deviation } of first?.predicted ?? [])
        expect(Math.abs(deviation as number)).toBeLessThan(2);
    },
  );

  it("at the star point could be any of the three, or rather the star point itself", () => {
    const { groups } = ask("star", 10, read(earthed("star", 10.25, 0.999, 0.05), ["L1", "L2", "L3"]));
    expect(groups[0]?.explanations[0]?.faults).toEqual([{ kind: "earthed terminal", terminal: "S" }]);
    const coils = ["A-L1", "A-L2", "A-L3"].map((element) => {
      const one = groups
        .flatMap(({ explanations }) => explanations)
        .find(({ faults }) => faults.length === 1 && (faults[0] as { element?: string }).element === element);
      return one?.probability ?? 0;
    });
    // A coil is earthed somewhere along it, seldom at its very end.
    for (const one of coils) {
      expect(one).toBeGreaterThan(0.02);
      expect(one).toBeLessThan(0.12);
      expect(one / (coils[0] as number)).toBeCloseTo(1, 1);
    }
  });

  it("of hundreds of ohms, which damp and carbon do not keep steady, is not placed by a difference of a coil's ohms", () => {
    const { groups } = ask("star", 10, read(earthed("star", 10.25, 0.3, 2000), ["L1", "L2", "L3"]));
    const [first] = groups[0]?.explanations ?? [];
    const [place] = first?.estimates ?? [];
    expect((place?.high as number) - (place?.low as number)).toBeGreaterThan(0.8);
    expect(first?.probability).toBeLessThan(0.6);
  });

  it("read as no one coil can show is said to fit nothing", () => {
    const readings = [3, 40, 9].map((reads, i): FieldReading => {
      return { kind: "insulation", from: `L${i + 1}`, reads: ohms(reads) };
    });
    expect(ask("star", 10, readings).outcome).toBe("nothing fits");
  });

  it("is not told of by a reading with everything lifted but the other coils", () => {
    const own = read(earthed("star", 10.25, 0.3, 0.05), ["L1"]);
    const other: FieldReading = { kind: "insulation", from: "L2", only: ["A-L2"], reads: ohms(5e7) };
    const { groups } = ask("star", 10, [...own, other]);
    expect(groups[0]?.explanations[0]?.faults).toEqual([{ kind: "earth fault", element: "A-L1" }]);
    expect(groups[0]?.explanations[0]?.predicted[1]?.predicted).toBeNull();
  });
});
