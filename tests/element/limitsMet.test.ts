/**
 * Limits met exactly, and what is said one step beyond: the figures in a warning are those of the case. The limits are the ones printed in
 * the tables under shared/tables and stated in the docstrings; the figures are worked in the test.
 */
import {
  coilGeometry,
  coilGuidance,
  coldStart,
  nusseltChurchillBernstein,
  nusseltChurchillChu,
  nusseltHilpert,
  nusseltMorgan,
  nusseltZukauskas,
  swagedCoil,
  tubularLoads,
  wireForSurfaceLoad,
  wireTolerance,
} from "electroheat/element";
import {
  type Meters,
  microohmMeters,
  millimeters,
  ohms,
  volts,
  type Warning,
  watts,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { facts, refusedAs } from "../support/told.ts";

const m = (value: number) => value as Meters;

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
      refusedAs(() =>
        tubularLoads({ ...tube, wireDiameter: m(0.0081), wireLength: m(1), surfaceFall: 0.05 }),
      ),
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
      const found = refusedAs(() => wireTolerance(millimeters(size)));
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
    expect(refusedAs(() => choose(m(0.5 * least), m(0.9 * least), m(0.7 * least)))).toEqual({
      code: "not-identifiable",
      argument: "stockDiameters",
      unit: "m",
      expected: `a diameter of at least ${least}`,
      received: String(0.9 * least),
    });
    for (const none of [[], undefined, 0.001])
      expect(refusedAs(() => wireForSurfaceLoad({ ...duty, stockDiameters: none as never }))).toMatchObject({
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
        expect(refusedAs(() => nusselt(outside))).toEqual({
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
