/** Air: laws, the known errors of its formulas, boundaries. Printed cells are in shared/vectors/material. */
import {
  airConductivityFormula,
  airDensity,
  airProperties,
  airSpecificHeatFormula,
  airTextbooks,
  airViscosityFormula,
  pressureAtAltitude,
} from "electroheat/material";
import {
  type Celsius,
  celsius,
  feet,
  kilopascals,
  meters,
  type Pascals,
  pascals,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { codeOf } from "./errors.ts";
import { tableOf } from "./tables.ts";

const RUNS = { numRuns: 1000 };
const SEA = pascals(101325);
const warm = fc.double({ min: -23.15, max: 1226.85, noNaN: true });
const rows = tableOf("air-incropera-a4").rows as number[][];

describe("airProperties", () => {
  it("keeps ν = μ/ρ and a = k/(ρ·cp), and lies between the rows", () => {
    fc.assert(
      fc.property(warm, fc.double({ min: 2e4, max: 2e5, noNaN: true }), (t, p) => {
        const air = airProperties({ temperature: celsius(t), pressure: pascals(p) });
        expect(air.kinematicViscosity * air.density).toBeCloseTo(air.viscosity, 12);
        expect(air.thermalDiffusivity * air.density * air.specificHeat).toBeCloseTo(
          air.thermalConductivity,
          12,
        );
        const above = rows.findIndex(([kelvin]) => (kelvin as number) >= t + 273.15 - 1e-9);
        const [low, high] = [rows[Math.max(0, above - 1)], rows[above]] as [number[], number[]];
        expect(air.thermalConductivity).toBeGreaterThanOrEqual((low[3] as number) - 1e-12);
        expect(air.thermalConductivity).toBeLessThanOrEqual((high[3] as number) + 1e-12);
        expect(air.viscosity).toBeGreaterThanOrEqual((low[2] as number) - 1e-15);
        expect(air.viscosity).toBeLessThanOrEqual((high[2] as number) + 1e-15);
      }),
      RUNS,
    );
  });

  it("pressure moves the density and what hangs on it, nothing else", () => {
    fc.assert(
      fc.property(warm, (t) => {
        const temperature = celsius(t);
        const [full, half] = [kilopascals(100), kilopascals(50)].map((pressure) =>
          airProperties({ temperature, pressure }),
        ) as [ReturnType<typeof airProperties>, ReturnType<typeof airProperties>];
        expect(half.density / full.density).toBeCloseTo(0.5, 12);
        expect(half.kinematicViscosity / full.kinematicViscosity).toBeCloseTo(2, 12);
        expect([half.specificHeat, half.viscosity, half.thermalConductivity, half.prandtl]).toEqual([
          full.specificHeat,
          full.viscosity,
          full.thermalConductivity,
          full.prandtl,
        ]);
      }),
      RUNS,
    );
  });

  it("stands at the ends of the table, warns where it is doubtful, and goes beyond only by name", () => {
    const at = (t: number) => airProperties({ temperature: celsius(t), pressure: SEA });
    expect(at(-23.15).prandtl).toBe(0.72);
    expect(at(1226.85).prandtl).toBe(0.685);
    for (const t of [-23.151, 1226.851]) {
      expect(codeOf(() => at(t))).toBe("outside-table");
      const asked = airProperties({ temperature: celsius(t), pressure: SEA, beyondTable: "extrapolate" });
      expect(asked.warnings.map(({ code }) => code)).toEqual(["extrapolated"]);
    }
    expect(at(926.85).warnings).toEqual([]);
    expect(at(926.86).warnings.map(({ code }) => code)).toEqual(["approximate"]);
  });

  it("refuses what is no pressure and no temperature", () => {
    const temperature = celsius(20);
    expect(codeOf(() => airDensity({ temperature, pressure: pascals(0) }))).toBe("out-of-range");
    expect(codeOf(() => airDensity({ temperature } as never))).toBe("missing");
    expect(codeOf(() => airDensity({ temperature: -273.15 as Celsius, pressure: SEA }))).toBe("out-of-range");
    expect(codeOf(() => airDensity({ temperature, pressure: Number.POSITIVE_INFINITY as Pascals }))).toBe(
      "not-a-number",
    );
    expect(codeOf(() => airProperties({ temperature: Number.NaN as Celsius, pressure: SEA }))).toBe(
      "not-a-number",
    );
  });
});

describe("formulas for air", () => {
  // The errors are data of the library; here they are taken over the rows of Incropera Table A.4 again.
  it.each([
    ["viscosity", airViscosityFormula, 2],
    ["thermal conductivity", airConductivityFormula, 3],
    ["specific heat", airSpecificHeatFormula, 1],
  ] as const)("%s: the stated error is the largest over the table, rounded up", (_, formula, column) => {
    let worst = 0;
    rows.forEach((row, i) => {
      const kelvin = row[0] as number;
      const { value, relativeError } = formula(
        celsius(kelvin - 273.15 + (i === 0 ? 1e-9 : i === rows.length - 1 ? -1e-9 : 0)),
      );
      const error = Math.abs(value / (row[column] as number) - 1);
      worst = Math.max(worst, error);
      expect(error, `${kelvin} K`).toBeLessThanOrEqual(relativeError);
      if ([600, 1000, 1500].includes(kelvin)) expect(relativeError - worst).toBeLessThan(4e-4);
    });
  });

  it("refuse temperatures outside the rows the error was taken over", () => {
    for (const formula of [airViscosityFormula, airConductivityFormula, airSpecificHeatFormula]) {
      expect(codeOf(() => formula(celsius(-23.16)))).toBe("out-of-range");
      expect(codeOf(() => formula(celsius(1226.86)))).toBe("out-of-range");
      const errors = [-23.15, 326.85, 326.86, 726.85, 726.86].map((t) => formula(celsius(t)).relativeError);
      expect(errors[0]).toBe(errors[1]);
      expect(errors[2]).toBe(errors[3]);
      expect(errors[4]).toBeGreaterThan(errors[3] as number);
    }
  });

  it("two textbooks: at most 0.3 %% apart in specific heat and 2.95 %% in conductivity", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), (t) => {
        const { specificHeat, thermalConductivity } = airTextbooks(celsius(t));
        expect(Math.abs(specificHeat.difference)).toBeLessThan(0.003);
        expect(Math.abs(thermalConductivity.difference)).toBeLessThan(0.0295);
      }),
      RUNS,
    );
    expect(codeOf(() => airTextbooks(celsius(1000.1)))).toBe("outside-table");
  });
});

describe("pressureAtAltitude", () => {
  it("is the standard pressure at sea level and falls with height", () => {
    expect(pressureAtAltitude(meters(0))).toBe(101325);
    const heights = fc.double({ min: -500, max: 10990, noNaN: true });
    fc.assert(
      fc.property(heights, (height) => {
        expect(pressureAtAltitude(meters(height + 10))).toBeLessThan(pressureAtAltitude(meters(height)));
      }),
      RUNS,
    );
  });

  it("is refused outside the troposphere", () => {
    for (const height of [-500, 11000]) expect(pressureAtAltitude(meters(height))).toBeGreaterThan(22000);
    for (const height of [-500.01, 11000.01])
      expect(codeOf(() => pressureAtAltitude(meters(height)))).toBe("out-of-range");
  });

  // Heat memo 1.3: HVAC tables print the pressure ratio (6000 ft: 0.801), not the density ratio of the standard
  // atmosphere (0.836), which is colder up there.
  it("gives the published relative density at constant temperature", () => {
    const temperature = celsius(21.1111);
    const low = airDensity({ temperature, pressure: SEA });
    const high = airDensity({ temperature, pressure: pressureAtAltitude(feet(6000)) });
    expect(high / low).toBeCloseTo(0.801, 3);
  });
});
