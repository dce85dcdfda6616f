/** What errors say, word for word: the unit where a number stands, what else is legal, and the name that the caller knows. */
import { correctedReading, deltaFromLineReadings, diagnose } from "electroheat/bench";
import { balancedSupply, deltaFromStar, energise } from "electroheat/circuit";
import { operatingPoint, parallelGroup, seriesString } from "electroheat/element";
import { fastenerStrength } from "electroheat/joint";
import { checkBetween, checkOneOf, issue, millimeters, ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "./support/caught.ts";

const said = (run: () => unknown): string => caught(run).message;

describe("a unit", () => {
  const of = (expected: string, received: unknown = 7): string =>
    issue({ code: "out-of-range", path: "reading", expected, received, unit: "Ω" }).message;
  it("follows a number that ends the sentence", () => {
    for (const range of [
      "more than 0",
      "0 or more",
      "0 to 5",
      "at most the sound resistance, 4.5",
      "a finite number",
      "0 or a size from 1e-30 to 1e30",
    ]) {
      expect(of(range)).toBe(`reading: 7 Ω is not allowed; expected ${range} Ω`);
    }
  });
  it("does not follow words", () => {
    for (const words of [
      "at most the reading (0.3 Ω)",
      'a multiple of 5 from 0 to 80 °C (or by: "law")',
      "an open one",
    ]) {
      expect(of(words, "x")).toBe(`reading: "x" is not allowed; expected ${words}`);
    }
    expect(
      said(() =>
        correctedReading({
          reading: ohms(0.3),
          leads: ohms(9),
          resolution: ohms(0.1),
          accuracy: { ofReading: 0.01, digits: 1 },
        }),
      ),
    ).toBe("leads: 9 Ω is not allowed; expected at most the reading (0.3 Ω)");
  });
  it("belongs to a limit without the noise of a product of doubles", () => {
    // 0.1 + 0.2 is 0.30000000000000004 in binary (IEEE 754).
    expect(said(() => checkBetween("hole", 1, 0, 0.1 + 0.2, "m"))).toBe(
      "hole: 1 m is not allowed; expected 0 to 0.3 m",
    );
    expect(said(() => checkBetween("hole", 1, 0, (0.1 + 0.2) * 1e-9, "m"))).toContain(
      "expected 0 to 3e-10 m",
    );
    expect(said(() => checkBetween("hole", 1, 0, 0.123456789, "m"))).toContain("0 to 0.123456789 m");
  });
});

describe("where a resistance may be open", () => {
  const circuit = (resistance: never) =>
    energise({
      network: { branches: [{ id: "a", from: "L1", to: "L2", resistance }] },
      supply: balancedSupply({ lineVoltage: volts(400) }),
    });
  const question = (reads: never) =>
    diagnose({
      module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(8) }] },
      readings: [{ kind: "resistance", from: "L1", to: "L2", reads }],
      instruments: {},
    } as never);
  const delta = (y12: never) =>
    deltaFromLineReadings({ y12, y23: ohms(5), y31: ohms(5), standardUncertainty: ohms(0.01) });
  it.each([
    ["network.branches.0.resistance", circuit, "0 or more"],
    ["readings.0.reads", question, "0 or more"],
    ["y12", delta, "0 or more"],
    ["r1", (r1: never) => deltaFromStar({ r1, r2: ohms(1), r3: ohms(1) }), "0 or more"],
    [
      "resistances.0",
      (one: never) => seriesString({ voltage: volts(1) as never, resistances: [one] }),
      "0 or more",
    ],
    [
      "resistance",
      (resistance: never) => operatingPoint({ voltage: volts(1) as never, resistance }),
      "0 or more",
    ],
  ] as const)(
    "%s says so for what is infinite, what a meter shows and what is below 0",
    (path, run, allowed) => {
      for (const [value, seen] of [
        [Number.POSITIVE_INFINITY, "Infinity Ω"],
        ["OL", '"OL"'],
        [-4, "-4 Ω"],
      ]) {
        expect(said(() => run(value as never))).toBe(
          `${path}: ${seen} is not allowed; expected ${allowed} Ω or "open"`,
        );
      }
    },
  );
  it("a group in parallel asks for more than 0", () => {
    expect(said(() => parallelGroup({ voltage: volts(1) as never, resistances: [ohms(1), ohms(0)] }))).toBe(
      'resistances.1: 0 Ω is not allowed; expected more than 0 Ω or "open"',
    );
  });
});

describe("a list of names", () => {
  it("is quoted where a name has a comma", () => {
    expect(said(() => checkOneOf("wire", "x", ["maker, 30", "plain"]))).toContain(
      'expected one of "maker, 30", "plain"',
    );
    expect(said(() => checkOneOf("wire", "x", ["star", "delta"]))).toContain("expected one of star, delta");
    const grade = { standard: "brass C36000", grade: "soft", diameter: millimeters(6) } as const;
    expect(said(() => fastenerStrength(grade))).toContain('"H02 rod 1 in, typical", "all tempers, lowest"');
  });
});
