/** Figures that contradict each other, and tables that are read only where they are printed: both figures are named, at the limit none. */
import {
  ageingFromDiameter,
  ageingFromResistance,
  closeWoundLength,
  coilGeometry,
  insideDiameterFromMean,
  meanDiameterFromOutside,
  operatingPoint,
  printedCurrentAtTemperature,
  printedCurrentForRise,
  sheathedWireTemperatures,
  shortedTurns,
  stretchedLength,
  surfaceLoadApplications,
  surfaceLoadGuidance,
} from "electroheat/element";
import {
  amperes,
  type BranchVolts,
  celsius,
  kelvins,
  type Meters,
  type Ohms,
  ohms,
  volts,
  type Warning,
  watts,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { facts, refusedAs } from "../support/told.ts";

const m = (value: number) => value as Meters;

describe("contradictions name both figures", () => {
  it("of turns: as large as when sound passes, larger is refused", () => {
    const call = (resistance: number) => () =>
      shortedTurns({ soundResistance: ohms(8), resistance: ohms(resistance), voltage: 240 as BranchVolts });
    expect(call(8)()).toEqual({ shortedFraction: 0, power: 7200, powerRatio: 1, surfaceLoadRatio: 1 });
    expect(refusedAs(call(8.5))).toEqual({
      code: "inconsistent",
      argument: "resistance",
      unit: "Ω",
      expected: "at most the sound resistance, 8",
      received: "8.5",
    });
  });

  it("of age: as thick as when new passes, thicker is refused; the same of ohms", () => {
    const unaged = {
      diameterLoss: 0,
      sectionLoss: 0,
      resistanceRatio: 1,
      powerRatio: 1,
      surfaceLoadRatio: 1,
      warnings: [],
    };
    const byDiameter = (diameter: number) => () =>
      ageingFromDiameter({ newDiameter: m(0.002), diameter: m(diameter) });
    const byOhms = (resistance: number) => () =>
      ageingFromResistance({ newResistance: ohms(8), resistance: ohms(resistance) });
    expect(byDiameter(0.002)()).toEqual(unaged);
    expect(byOhms(8)()).toEqual(unaged);
    expect(refusedAs(byDiameter(0.0021))).toEqual({
      code: "inconsistent",
      argument: "diameter",
      unit: "m",
      expected: "at most the diameter when new, 0.002",
      received: "0.0021",
    });
    expect(refusedAs(byOhms(7.5))).toEqual({
      code: "inconsistent",
      argument: "resistance",
      unit: "Ω",
      expected: "at least the resistance when new, 8",
      received: "7.5",
    });
  });

  it("of age: the trade's tenth is warned of above it, with the ratio to four digits", () => {
    const at = (resistance: number) =>
      ageingFromResistance({ newResistance: ohms(1000), resistance: ohms(resistance) }).warnings;
    expect(at(1099.9)).toEqual([]);
    const [warning, ...more] = at(1234.567) as [Warning];
    expect(more).toEqual([]);
    expect(facts(warning)).toEqual({
      code: "caution",
      path: "resistanceRatio",
      limit: 1.1,
      unit: "1",
      source: "common practice",
    });
    expect(warning.message).toContain("1.235 times new");
  });

  it("of a coil's hole, of stretch and of its length", () => {
    expect(
      refusedAs(() => insideDiameterFromMean({ meanDiameter: m(0.002), wireDiameter: m(0.002) })),
    ).toEqual({
      code: "inconsistent",
      argument: "meanDiameter",
      unit: "m",
      expected: "more than 0.002 m, so that the coil has a hole",
      received: "0.002",
    });
    expect(
      refusedAs(() => meanDiameterFromOutside({ outsideDiameter: m(0.004), wireDiameter: m(0.002) })),
    ).toEqual({
      code: "inconsistent",
      argument: "outsideDiameter",
      unit: "m",
      expected: "more than 0.004 m, so that the coil has a hole",
      received: "0.004",
    });
    const coil = { wireLength: m(10), wireDiameter: m(0.001), meanDiameter: m(0.01) };
    // A turn of the helix: π·D around and one wire along.
    const closed = (10 * 0.001) / Math.hypot(Math.PI * 0.01, 0.001);
    expect(closeWoundLength({ ...coil, turn: "helix" })).toBeCloseTo(closed, 14);
    expect(closeWoundLength({ ...coil, turn: "circle" })).toBeCloseTo(10 * (0.001 / (Math.PI * 0.01)), 14);
    expect(stretchedLength({ ...coil, stretchRatio: 1 })).toBeCloseTo(closed, 14);
    const { expected, ...rest } = refusedAs(() => stretchedLength({ ...coil, stretchRatio: 0.99 }));
    expect(rest).toEqual({
      code: "out-of-range",
      argument: "stretchRatio",
      unit: undefined,
      received: "0.99",
    });
    expect(expected).toMatch(/^1 or more/);
    // The rounded close-wound length passes, a part in a million less does not; nor a coil as long as its wire.
    expect(coilGeometry({ ...coil, coilLength: m(closed * (1 - 5e-10)) }).stretchRatio).toBeCloseTo(1, 8);
    expect(coilGeometry({ ...coil, coilLength: m(9.999999) }).turns).toBeGreaterThan(0);
    for (const length of [closed * (1 - 1e-6), 10, 11]) {
      const found = refusedAs(() => coilGeometry({ ...coil, coilLength: m(length) }));
      expect(found).toMatchObject({ code: "inconsistent", argument: "coilLength", unit: "m" });
      expect(found.received).toBe(String(length));
      const [, from = "", to = ""] =
        /^from the close-wound length (\S+) to less than the wire length (\S+)$/.exec(found.expected ?? "") ??
        [];
      expect(Number(from)).toBeCloseTo(closed, 12);
      expect(to).toBe("10");
    }
  });

  it("of a tube no thicker than its wire", () => {
    const inside = {
      outerTemperature: celsius(600),
      power: watts(1000),
      length: m(1),
      wireConductivity: 20 as never,
    };
    const call = (outer: number) => () =>
      sheathedWireTemperatures({
        ...inside,
        wireDiameter: m(0.002),
        outerDiameter: m(outer),
        fillingConductivity: 2 as never,
      });
    expect(refusedAs(call(0.002))).toEqual({
      code: "inconsistent",
      argument: "outerDiameter",
      unit: "m",
      expected: "more than the wire diameter, 0.002",
      received: "0.002",
    });
    expect(call(0.002001)()).toMatchObject({ wireSurfaceTemperature: expect.any(Number) });
  });
});

describe("tables that are read only where they are printed", () => {
  it("currents by temperature and by rise name what there is", () => {
    const byTemperature = (size: number, temperature: number) => () =>
      printedCurrentAtTemperature({ size, temperature: celsius(temperature) });
    expect(byTemperature(20, 400)()).toMatchObject({ current: 5.8, resistancePerLength: null });
    expect(refusedAs(byTemperature(20, 450))).toEqual({
      code: "outside-table",
      argument: "temperature",
      unit: "°C",
      expected:
        "one of 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100 °C: nothing is read between the columns",
      received: "450",
    });
    const sizes = refusedAs(byTemperature(19, 400));
    expect(sizes).toMatchObject({ code: "outside-table", argument: "size", unit: undefined, received: "19" });
    expect(sizes.expected).toMatch(/^one of 20, 21, 22, /);
    const byRise = (size: number, rise: number) => () => printedCurrentForRise({ size, rise: kelvins(rise) });
    expect(byRise(14, 500)()).toMatchObject({ current: 26, resistancePerLength: 0.333 });
    expect(refusedAs(byRise(14, 501))).toMatchObject({
      code: "outside-table",
      argument: "rise",
      unit: "K",
      expected: "one of 500, 1000 K: nothing is read between the columns",
    });
    for (const [found, source] of [
      [byTemperature(20, 400)(), "us-wire-maker"],
      [byRise(14, 500)(), "nicr-wire-web-table"],
    ] as const)
      expect(found.warnings.map(facts)).toEqual([{ code: "approximate", path: "current", source }]);
  });

  it("surface loads by use come in metric from what is printed, and are found by every name that is listed", () => {
    const names = surfaceLoadApplications();
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(surfaceLoadGuidance(name).application).toBe(name);
    // Printed: 4.5 to 6 W/cm²; 40 W/in² at 1400 °F of the sheath and 200 ft/min.
    expect(surfaceLoadGuidance("fire, spiral in free air")).toMatchObject({
      low: 45_000,
      high: 60_000,
      sheathTemperature: null,
      airSpeed: null,
    });
    const duct = surfaceLoadGuidance("process duct heater, tubular sheathed");
    expect(duct).toMatchObject({
      low: null,
      high: expect.closeTo(40 / 0.0254 ** 2, 6),
      sheathTemperature: expect.closeTo(760, 10),
      airSpeed: expect.closeTo(1.016, 12),
    });
    expect(surfaceLoadGuidance(names[0] as string).note).toMatch(/not a limit/);
    for (const [name, code] of [
      ["", "missing"],
      [undefined, "missing"],
      [null, "missing"],
      ["kiln", "unknown-name"],
    ] as const) {
      const found = refusedAs(() => surfaceLoadGuidance(name as string));
      expect(found).toMatchObject({ code, argument: "application" });
      expect(found.expected).toBe(`one of ${names.map((name) => JSON.stringify(name)).join(", ")}`);
    }
  });
});

describe("the working point", () => {
  it("little power is told on a hundred volts or more, and only below a hundred watts", () => {
    const at = (voltage: number, power: number) =>
      operatingPoint({ voltage: volts(voltage), power: watts(power) }).warnings;
    for (const [voltage, power] of [
      [480, 100],
      [99.9, 18],
      [480, 0],
    ] as const)
      expect(at(voltage, power)).toEqual([]);
    for (const [voltage, power] of [
      [100, 99.9],
      [480, 18],
    ] as const)
      expect(at(voltage, power).map(facts)).toEqual([
        { code: "suspicious", path: "power", limit: 100, unit: "W" },
      ]);
    expect(at(479.987, 18.0004)[0]?.message).toMatch(/^18 W on 480 V /);
  });

  it("is told by exactly two figures, and of what was given", () => {
    const refused = (input: object) => refusedAs(() => operatingPoint(input));
    const expected = "exactly two of voltage, current, resistance, power";
    expect(refused({ voltage: volts(240) })).toMatchObject({
      code: "missing",
      argument: "input",
      expected,
      received: "undefined",
    });
    expect(refused({ voltage: volts(240), current: amperes(1), power: watts(240) })).toMatchObject({
      code: "inconsistent",
      argument: "input",
      expected,
      received: '"voltage, current, power"',
    });
    // A dead element, sound or open: only its resistance tells.
    for (const rest of [{ current: amperes(0) }, { power: watts(0) }])
      expect(refused({ voltage: volts(0), ...rest })).toMatchObject({
        code: "not-identifiable",
        argument: "voltage",
        unit: "V",
      });
    expect(operatingPoint({ voltage: volts(0), resistance: ohms(8) })).toMatchObject({
      current: 0,
      power: 0,
      resistance: 8,
    });
    expect(operatingPoint({ voltage: volts(240), power: watts(0) })).toMatchObject({
      current: 0,
      resistance: "open",
    });
    expect(refused({ voltage: volts(0), power: watts(1) })).toMatchObject({ argument: "voltage", unit: "V" });
    expect(refused({ current: amperes(0), power: watts(1) })).toMatchObject({
      argument: "current",
      unit: "A",
    });
    expect(refused({ resistance: 0 as Ohms, power: watts(1) })).toMatchObject({
      argument: "resistance",
      unit: "Ω",
    });
    expect(refused({ resistance: "open", power: watts(1) })).toMatchObject({
      code: "inconsistent",
      argument: "resistance",
    });
  });
});
