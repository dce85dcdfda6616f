/** What errors say, word for word: the unit where a number stands, what else is legal, and the name that the caller knows. */
import { correctedReading, deltaFromLineReadings, diagnose, nameplateTargets } from "electroheat/bench";
import { evaluate } from "electroheat/catalogue";
import {
  balancedSupply,
  buildModule,
  deltaFromStar,
  energise,
  faultEffect,
  lineCurrent,
} from "electroheat/circuit";
import {
  operatingPoint,
  parallelGroup,
  powerFromVoltageAndResistance,
  seriesString,
} from "electroheat/element";
import { fastenerStrength } from "electroheat/joint";
import { highestResistance, namedConductorResistance } from "electroheat/material";
import { evaluateColumns } from "electroheat/operators";
import { heatUpTime, ovenHeatUp } from "electroheat/process";
import {
  awgDiameter,
  celsius,
  checkBetween,
  checkOneOf,
  issue,
  meters,
  millimeters,
  ohms,
  parseQuantity,
  squareMillimeters,
  volts,
} from "electroheat/quantity";
import { conductorResistancePerLength } from "electroheat/wiring";
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
  it("a closed form says so too", () => {
    const run = (resistance: never) =>
      powerFromVoltageAndResistance({ voltage: volts(1) as never, resistance });
    expect(said(() => run(Number.POSITIVE_INFINITY as never))).toBe(
      'resistance: Infinity Ω is not allowed; expected 0 or more Ω or "open"',
    );
    expect(run("open" as never)).toBe(0);
  });
  it("a group in parallel asks for more than 0", () => {
    expect(said(() => parallelGroup({ voltage: volts(1) as never, resistances: [ohms(1), ohms(0)] }))).toBe(
      'resistances.1: 0 Ω is not allowed; expected more than 0 Ω or "open"',
    );
  });
});

describe("a list of names", () => {
  it("is quoted where a name has a comma", () => {
    expect(said(() => checkOneOf("wire", "x", ["maker, 30", "plain"]))).toContain(
      'expected one of "maker, 30", plain',
    );
    expect(said(() => checkOneOf("wire", "x", ["star", "delta"]))).toContain("expected one of star, delta");
    const grade = { standard: "brass C36000", grade: "soft", diameter: millimeters(6) } as const;
    expect(said(() => fastenerStrength(grade))).toContain('"H02 rod 1 in, typical", "all tempers, lowest"');
  });
});

describe("the name of an argument", () => {
  it("is the caller's, also of what another calculation refuses", () => {
    const network = { branches: [{ id: "a", from: "L1", to: "L2", resistance: ohms(5) }] };
    const study = { network, supply: balancedSupply({ lineVoltage: volts(400) }) };
    expect(caught(() => faultEffect({ ...study, faults: [{ kind: "open", id: "b" }] })).argument).toBe(
      "faults.0.id",
    );
    const nec = {
      edition: "NEC 2023",
      build: "stranded",
      metal: "uncoated copper",
      temperature: celsius(75),
    } as const;
    const perLength = said(() => conductorResistancePerLength({ ...nec, size: "16 mm²" }));
    expect(perLength).toMatch(/^size: "16 mm²" is not allowed/);
    const wire = { conductor: "copper-iacs", size: "12 AWG", length: meters(5), temperature: celsius(75) };
    for (const [field, wrong] of [
      ["conductor", "butter"],
      ["conductor", undefined],
      ["size", "12"],
      ["size", undefined],
    ] as const) {
      const error = caught(() => namedConductorResistance({ ...wire, [field]: wrong as never }));
      expect([error.argument, error.message.startsWith(`${field}: `)]).toEqual([field, true]);
    }
  });
  it("of a class left out is missing, of an unknown one unknown", () => {
    const of = (one: unknown) =>
      caught(() =>
        highestResistance({ area: squareMillimeters(50), class: one as never, metal: "plain copper" }),
      );
    expect([of(undefined), of(null), of(3), of("2")].map(({ code }) => code)).toEqual([
      "missing",
      "missing",
      "unknown-name",
      "unknown-name",
    ]);
  });
});

describe("a field that a plan does not have", () => {
  const bank = { id: "A", connection: "delta", elementResistance: ohms(24) };
  const oven = { ambient: 20, lossConductance: 40, structure: 2e5 };
  const lumped = { heatCapacity: 2e5, lossConductance: 40, ambient: 20, power: 12e3, target: 200 };
  const plate = { power: 36e3, lineVoltage: 480, connection: "delta", banks: 1 };
  it.each([
    ["banks.0.elementInParallel", () => buildModule({ banks: [{ ...bank, elementInParallel: 3 }] } as never)],
    ["starpoints", () => buildModule({ banks: [bank], starpoints: "tied" } as never)],
    [
      "joints.0.ohms",
      () =>
        buildModule({ banks: [bank], joints: [{ id: "j", at: "L1", resistance: 0.01, ohms: 1 }] } as never),
    ],
    ["elementsInparallel", () => nameplateTargets({ ...plate, elementsInparallel: 3 } as never)],
    ["startt", () => heatUpTime({ ...lumped, startt: 150 } as never)],
    ["startt", () => ovenHeatUp({ oven, power: 12e3, target: 200, startt: 150 } as never)],
    ["oven.load", () => ovenHeatUp({ oven: { ...oven, load: [] }, power: 12e3, target: 200 } as never)],
  ] as const)("%s is refused by name, with those there are", (path, run) => {
    const error = caught(run);
    expect([error.code, error.argument]).toEqual(["unknown-field", path]);
    expect(error.message).toMatch(/expected one of \w+, \w+/);
  });
  it("is not one that is left out or undefined", () => {
    expect(buildModule({ banks: [{ ...bank, elementsInSeries: undefined }] } as never).elements).toHaveLength(
      3,
    );
    expect(heatUpTime({ ...lumped, start: undefined } as never).reached).toBe(true);
    expect(nameplateTargets({ ...plate, temperatureFactor: undefined } as never).elementPower).toBe(12e3);
  });
});

describe("text that is nearly a quantity", () => {
  it("is answered with what it may have meant", () => {
    const read = (text: string, unit: "Ω" | "K" | "m²" | "V") => said(() => parseQuantity(text, { unit }));
    for (const open of ["O L", "O.L.D", ">550 MΩ"]) expect(read(open, "Ω")).toContain(', or "OL"');
    expect(read("35 F", "K")).toContain("not of F or °C");
    expect(read("35 F", "K")).toContain("Δ°F");
    expect(read("1/0", "m²")).toContain('or "1/0 AWG"');
    expect(read("3 kW", "V")).toMatch(/not of W$/);
  });
  it("of another gauge names who reads it", () => {
    expect(said(() => awgDiameter("16 SWG"))).toContain("swgSize");
  });
  it("a difference can be typed on any keyboard", () => {
    // 1 K is 1.8 °F of difference.
    for (const text of ["18 delta F", "18 delta °F", "18 Δ°F"]) {
      expect(parseQuantity(text, { unit: "K" }).value).toBeCloseTo(10, 12);
    }
    expect(parseQuantity("10 delta C", { unit: "K" }).value).toBe(10);
    expect(said(() => parseQuantity("18 delta F", { unit: "°C" }))).toContain("not of K");
  });
});

describe("a name that another door knows", () => {
  it("is answered with the id", () => {
    const told = (id: string) => {
      const answer = evaluate(id, {});
      return answer.ok ? "" : answer.error.message;
    };
    expect(told("lineCurrent")).toMatch(/did you mean circuit\.lineCurrent\?$/);
    expect(told("Circuit.LineCurrent")).toContain("circuit.lineCurrent");
    expect(told("no such thing")).not.toContain("did you mean");
  });
  it("a column of another name than the field is told beside what is missing, text as it stood", () => {
    const { statuses } = evaluateColumns({
      calculation: lineCurrent,
      columns: { power: [36e3, 36e3], voltage: [480, 400] } as never,
    });
    expect(statuses).toHaveLength(1);
    expect(statuses[0]?.message).toMatch(/^lineVoltage: missing; .*columns: power, voltage$/);
    const blank = evaluateColumns({
      calculation: lineCurrent,
      columns: { power: [36e3, "36 kW"], lineVoltage: [null, 480] },
    });
    expect(blank.statuses.map(({ message }) => message)).toEqual([
      "lineVoltage: missing; expected more than 0 V",
      'power: "36 kW" is not allowed; expected more than 0 W',
    ]);
  });
});
