/**
 * Limits met exactly, and what is said one step beyond: the figures in a refusal or a warning are those of the case. The limits are the
 * ones printed in the tables under shared/tables and stated in the docstrings; the figures are worked in the test.
 */
import {
  ageingFromDiameter,
  ageingFromResistance,
  closeWoundLength,
  coilGeometry,
  coilGuidance,
  coldStart,
  insideDiameterFromMean,
  meanDiameterFromOutside,
  nusseltChurchillBernstein,
  nusseltChurchillChu,
  nusseltHilpert,
  nusseltMorgan,
  nusseltZukauskas,
  operatingPoint,
  printedCurrentAtTemperature,
  printedCurrentForRise,
  sheathedWireTemperatures,
  shortedTurns,
  stretchedLength,
  surfaceLoadApplications,
  surfaceLoadGuidance,
  swagedCoil,
  tubularLoads,
  wireForSurfaceLoad,
  wireTolerance,
} from "electroheat/element";
import {
  amperes,
  type BranchVolts,
  celsius,
  kelvins,
  type Meters,
  microohmMeters,
  millimeters,
  type Ohms,
  ohms,
  volts,
  type Warning,
  watts,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const m = (value: number) => value as Meters;
const refusal = (call: () => unknown) => {
  const { code, argument, issues } = caught(call);
  return {
    code,
    argument,
    unit: issues[0]?.unit,
    expected: issues[0]?.expected,
    received: issues[0]?.received,
  };
};
/** All of a warning but its words. */
const facts = ({ message: _, ...rest }: Warning) => rest;

describe("contradictions name both figures", () => {
  it("of turns: as large as when sound passes, larger is refused", () => {
    const call = (resistance: number) => () =>
      shortedTurns({ soundResistance: ohms(8), resistance: ohms(resistance), voltage: 240 as BranchVolts });
    expect(call(8)()).toEqual({ shortedFraction: 0, power: 7200, powerRatio: 1, surfaceLoadRatio: 1 });
    expect(refusal(call(8.5))).toEqual({
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
    expect(refusal(byDiameter(0.0021))).toEqual({
      code: "inconsistent",
      argument: "diameter",
      unit: "m",
      expected: "at most the diameter when new, 0.002",
      received: "0.0021",
    });
    expect(refusal(byOhms(7.5))).toEqual({
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
    expect(refusal(() => insideDiameterFromMean({ meanDiameter: m(0.002), wireDiameter: m(0.002) }))).toEqual(
      {
        code: "inconsistent",
        argument: "meanDiameter",
        unit: "m",
        expected: "more than 0.002, so that the coil has a hole",
        received: "0.002",
      },
    );
    expect(
      refusal(() => meanDiameterFromOutside({ outsideDiameter: m(0.004), wireDiameter: m(0.002) })),
    ).toEqual({
      code: "inconsistent",
      argument: "outsideDiameter",
      unit: "m",
      expected: "more than 0.004, so that the coil has a hole",
      received: "0.004",
    });
    const coil = { wireLength: m(10), wireDiameter: m(0.001), meanDiameter: m(0.01) };
    // A turn of the helix: π·D around and one wire along.
    const closed = (10 * 0.001) / Math.hypot(Math.PI * 0.01, 0.001);
    expect(closeWoundLength({ ...coil, turn: "helix" })).toBeCloseTo(closed, 14);
    expect(closeWoundLength({ ...coil, turn: "circle" })).toBeCloseTo(10 * (0.001 / (Math.PI * 0.01)), 14);
    expect(stretchedLength({ ...coil, stretchRatio: 1 })).toBeCloseTo(closed, 14);
    const { expected, ...rest } = refusal(() => stretchedLength({ ...coil, stretchRatio: 0.99 }));
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
      const found = refusal(() => coilGeometry({ ...coil, coilLength: m(length) }));
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
    expect(refusal(call(0.002))).toEqual({
      code: "inconsistent",
      argument: "outerDiameter",
      unit: "m",
      expected: "more than the wire diameter, 0.002",
      received: "0.002",
    });
    expect(call(0.002001)()).toMatchObject({ wireSurfaceTemperature: expect.any(Number) });
  });
});

describe("the ends of what a source gives", () => {
  /** Source, lowest and highest of the rows of `swaging-effects.json`, in per cent. */
  const maker = "maker-a-handbook";

  it("swaging: both ends of the range pass, a hair outside is told with the end that was passed", () => {
    const fall = (resistanceFall: number) => swagedCoil({ resistance: ohms(10), resistanceFall }).warnings;
    expect([fall(0.1), fall(0.2), fall(0.3)]).toEqual([[], [], []]);
    for (const [value, limit] of [
      [0.0999, 0.1],
      [0.3001, 0.3],
    ] as const) {
      const [warning, ...more] = fall(value) as [Warning];
      expect(more).toEqual([]);
      expect(facts(warning)).toEqual({
        code: "outside-validity",
        path: "resistanceFall",
        limit,
        unit: "1",
        source: maker,
      });
      expect(warning.message).toContain(`resistanceFall ${value} lies outside 0.1 to 0.3`);
    }
  });

  it("a tube: wire load 2 to 4 times the tube's, surface fall 2 to 7 %", () => {
    // With no fall the ratio is tube surface over wire surface: 8·1 over d·L.
    const tube = { power: watts(1000), tubeDiameter: m(0.008), heatedLength: m(1), wireDiameter: m(0.0005) };
    const at = (ratio: number, surfaceFall: number) =>
      tubularLoads({ ...tube, wireLength: m(0.008 / (0.0005 * ratio * (1 - surfaceFall))), surfaceFall });
    expect(at(3, 0.05)).toMatchObject({ warnings: [], ratio: expect.closeTo(3, 12) });
    expect([at(3, 0.02).warnings, at(3, 0.07).warnings]).toEqual([[], []]);
    expect(at(3, 0.0701).warnings.map(facts)).toEqual([
      { code: "outside-validity", path: "surfaceFall", limit: 0.07, unit: "1", source: maker },
    ]);
    expect(at(1.99, 0.05).warnings.map(facts)).toEqual([
      { code: "outside-validity", path: "ratio", limit: 2, unit: "1", source: maker },
    ]);
    expect(at(4.01, 0.0199).warnings.map(facts)).toEqual([
      { code: "outside-validity", path: "surfaceFall", limit: 0.02, unit: "1", source: maker },
      { code: "outside-validity", path: "ratio", limit: 4, unit: "1", source: maker },
    ]);
    // A wire as thick as its tube is the most that is taken.
    expect(() =>
      tubularLoads({ ...tube, wireDiameter: m(0.008), wireLength: m(1), surfaceFall: 0.05 }),
    ).not.toThrow();
    expect(
      refusal(() => tubularLoads({ ...tube, wireDiameter: m(0.0081), wireLength: m(1), surfaceFall: 0.05 })),
    ).toMatchObject({
      code: "out-of-range",
      argument: "wireDiameter",
      unit: "m",
    });
  });

  it("tolerance by size: each size belongs to the row that begins with it", () => {
    // Printed: from and below in mm, per cent.
    for (const [from, below, percent] of [
      [0.0254, 0.051, 12],
      [0.051, 0.076, 10],
      [0.076, 0.15, 7],
      [0.15, 5.5, 5],
    ] as const) {
      for (const size of [from, (from + below) / 2, below * (1 - 1e-12)])
        expect(wireTolerance(millimeters(size))).toMatchObject({
          upperTolerance: percent / 100,
          lowerTolerance: percent / 100,
        });
    }
    for (const size of [0.0253, 5.5]) {
      const found = refusal(() => wireTolerance(millimeters(size)));
      expect(found).toMatchObject({ code: "outside-table", argument: "diameter", unit: "m" });
      expect(found.expected).toContain("wire-tolerance-maker-u");
    }
  });

  it("coils: a ratio at the limit keeps it; one beyond is told with the limit and the rule", () => {
    // The strictest of all makers: inside 3 and 6 wires make outside 5 and 8; pitch 2 to 4 wires.
    const guidance = coilGuidance(m(0.001));
    expect(guidance.smallestOutsideDiameter).toBeCloseTo(0.005, 15);
    expect(guidance.largestOutsideDiameter).toBeCloseTo(0.008, 15);
    expect([guidance.smallestStretchRatio, guidance.largestStretchRatio]).toEqual([2, 4]);
    const coil = (outside: number, stretch: number) => {
      const mean = outside - 1;
      // Pitch p over a turn √((π·D)² + p²) is coil over wire.
      const wireLength = m(10);
      const coilLength = m((10 * stretch) / Math.hypot(Math.PI * mean, stretch));
      return coilGeometry({ wireLength, wireDiameter: m(0.001), meanDiameter: m(mean / 1000), coilLength })
        .warnings;
    };
    for (const [outside, stretch] of [
      [5, 2],
      [8, 4],
      [6, 3],
    ] as const)
      expect(coil(outside, stretch), `${outside} ${stretch}`).toEqual([]);
    const told = (outside: number, stretch: number) =>
      coil(outside, stretch).map(({ path, limit }) => `${path} ${limit}`);
    expect(told(4.99, 3)).toEqual(["insideToWire 3", "outsideToWire 5", "outsideToWire 5"]);
    expect(told(8.01, 3)).toEqual(["insideToWire 6"]);
    expect(told(12.01, 3)).toEqual(["insideToWire 6", "outsideToWire 12", "outsideToWire 12"]);
    expect(told(6, 1.99)).toEqual(["stretchRatio 2", "stretchRatio 2", "stretchRatio 2"]);
    expect(told(6, 4.01)).toEqual(["stretchRatio 4", "stretchRatio 4"]);
    const [inside] = coil(9.12345, 3) as [Warning];
    expect(facts(inside)).toEqual({
      code: "suspicious",
      path: "insideToWire",
      limit: 6,
      unit: "1",
      source: "maker-coil-guidance",
    });
    expect(inside.message).toMatch(/^insideToWire is 7\.123; .*: 3 to 6$/);
    expect(coil(6, 1.5).at(-1)?.message).toMatch(/: 2 to any$/);
  });

  it("a coefficient counts as appreciable above a quarter, not at it (IEC 60335-1, 5.12 note)", () => {
    const at = (temperatureFactor: number) => coldStart({ power: watts(1000), temperatureFactor });
    expect([at(1.25).appreciablePositiveCoefficient, at(1.2501).appreciablePositiveCoefficient]).toEqual([
      false,
      true,
    ]);
    expect(at(1.5)).toMatchObject({
      power: 1500,
      powerRatio: 1.5,
      threshold: { ratio: 0.25, source: "iec-60335-1", locator: "5.12 note" },
    });
  });

  it("stock: the very size passes, rounding aside; a thinner one never", () => {
    const duty = {
      power: watts(5000),
      voltage: volts(240),
      resistivity: microohmMeters(1.09),
      temperatureFactor: 1.04,
      maximumSurfaceLoad: wattsPerSquareCentimeter(6),
    };
    const choose = (...stockDiameters: Meters[]) => wireForSurfaceLoad({ ...duty, stockDiameters });
    const { minimumDiameter: least } = choose(m(1));
    // d³ = 4·ρ·Ct·P²/(π²·p·V²)
    expect(least).toBeCloseTo(
      Math.cbrt((4 * 1.09e-6 * 1.04 * 5000 ** 2) / (Math.PI ** 2 * 6e4 * 240 ** 2)),
      12,
    );
    expect(choose(m(2 * least), least, m(3 * least)).stockIndex).toBe(1);
    expect(choose(m(least * (1 - 1e-10)), m(2 * least)).stockIndex).toBe(0);
    expect(choose(m(least * (1 - 1e-8)), m(2 * least)).stockIndex).toBe(1);
    // Of two alike the first.
    expect(choose(m(2 * least), m(2 * least)).stockIndex).toBe(0);
    expect(refusal(() => choose(m(0.5 * least), m(0.9 * least), m(0.7 * least)))).toEqual({
      code: "not-identifiable",
      argument: "stockDiameters",
      unit: "m",
      expected: `a diameter of at least ${least}`,
      received: String(0.9 * least),
    });
    for (const none of [[], undefined, 0.001])
      expect(refusal(() => wireForSurfaceLoad({ ...duty, stockDiameters: none as never }))).toMatchObject({
        code: "missing",
        argument: "stockDiameters",
      });
  });
});

describe("Nusselt numbers at the ends of their correlations", () => {
  it("closed forms answer beyond them and say so, not at them", () => {
    const forced = (reynolds: number, prandtl: number) =>
      nusseltChurchillBernstein({ reynolds, prandtl }).warnings;
    expect(forced(0.3, 0.7)).toEqual([]);
    const [at] = forced(0.25, 0.8) as [Warning];
    expect(facts(at)).toEqual({
      code: "outside-validity",
      path: "reynolds",
      source: "churchill-bernstein-1977",
    });
    expect(at.message).toMatch(/Re·Pr above 0\.2 \(churchill-bernstein-1977\); here it is 0\.2$/);
    expect(forced(0.123456, 1)[0]?.message).toMatch(/here it is 0\.1235$/);
    const free = (rayleigh: number) => nusseltChurchillChu({ rayleigh, prandtl: 0.7 });
    expect(free(1e12).warnings).toEqual([]);
    const [beyond] = free(1.01e12).warnings as [Warning];
    expect(facts(beyond)).toEqual({
      code: "outside-validity",
      path: "rayleigh",
      source: "churchill-chu-1975",
    });
    expect(beyond.message).toContain("Ra up to 1e12 (churchill-chu-1975)");
    // Without buoyancy 0.60² is left (Incropera, eq. 9.34).
    expect(free(0).nusselt).toBeCloseTo(0.36, 14);
  });

  it.each([
    [
      "hilpert",
      (x: number) => nusseltHilpert({ reynolds: x, prandtl: 0.7 }),
      0.4,
      400_000,
      "Re",
      "reynolds",
      "hilpert-1933",
    ],
    [
      "zukauskas",
      (x: number) => nusseltZukauskas({ reynolds: x, prandtl: 0.7, surfacePrandtl: 0.7 }),
      1,
      1_000_000,
      "Re",
      "reynolds",
      "zukauskas-1972",
    ],
    ["morgan", (x: number) => nusseltMorgan({ rayleigh: x }), 1e-10, 1e12, "Ra", "rayleigh", "morgan-1975"],
  ] as const)(
    "%s: the first number belongs to the table, the last does not",
    (_, nusselt, first, last, symbol, path, source) => {
      for (const inside of [first, last * (1 - 1e-12)]) expect(nusselt(inside).warnings).toEqual([]);
      for (const outside of [first * (1 - 1e-12), last, 2 * last])
        expect(refusal(() => nusselt(outside))).toEqual({
          code: "outside-table",
          argument: path,
          unit: undefined,
          expected: `${symbol} from ${first} to less than ${last} (${source})`,
          received: String(outside),
        });
    },
  );

  it("each range begins with its own constants", () => {
    // Incropera, tables 7.2 (Hilpert) and 9.1 (Morgan): constant and exponent on both sides of an end.
    const hilpert = (x: number) => nusseltHilpert({ reynolds: x, prandtl: 1 }).nusselt;
    expect(hilpert(40)).toBeCloseTo(0.683 * 40 ** 0.466, 12);
    expect(hilpert(40 - 1e-9)).toBeCloseTo(0.911 * 40 ** 0.385, 6);
    const morgan = (x: number) => nusseltMorgan({ rayleigh: x }).nusselt;
    expect(morgan(100)).toBeCloseTo(0.85 * 100 ** 0.188, 12);
    expect(morgan(100 - 1e-9)).toBeCloseTo(1.02 * 100 ** 0.148, 6);
  });
});

describe("tables that are read only where they are printed", () => {
  it("currents by temperature and by rise name what there is", () => {
    const byTemperature = (size: number, temperature: number) => () =>
      printedCurrentAtTemperature({ size, temperature: celsius(temperature) });
    expect(byTemperature(20, 400)()).toMatchObject({ current: 5.8, resistancePerLength: null });
    expect(refusal(byTemperature(20, 450))).toEqual({
      code: "outside-table",
      argument: "temperature",
      unit: "°C",
      expected:
        "one of 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100: nothing is read between the columns",
      received: "450",
    });
    const sizes = refusal(byTemperature(19, 400));
    expect(sizes).toMatchObject({ code: "outside-table", argument: "size", unit: undefined, received: "19" });
    expect(sizes.expected).toMatch(/^one of 20, 21, 22, /);
    const byRise = (size: number, rise: number) => () => printedCurrentForRise({ size, rise: kelvins(rise) });
    expect(byRise(14, 500)()).toMatchObject({ current: 26, resistancePerLength: 0.333 });
    expect(refusal(byRise(14, 501))).toMatchObject({
      code: "outside-table",
      argument: "rise",
      unit: "K",
      expected: "one of 500, 1000: nothing is read between the columns",
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
      const found = refusal(() => surfaceLoadGuidance(name as string));
      expect(found).toMatchObject({ code, argument: "application" });
      expect(found.expected).toBe(`one of ${names.join("; ")}`);
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
    const refused = (input: object) => refusal(() => operatingPoint(input));
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
