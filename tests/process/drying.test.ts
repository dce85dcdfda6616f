/**
 * Heat of drying, held against steam tables at 10 kPa (from memory; cross-checked in the vectors) and against the two steps of the same
 * way: water to 100 °C, then vapor. Saturated steam at 100 °C: 2256.5 kJ/kg of vaporization (steam tables, from memory).
 */
import { dryingPower, throughputPower } from "electroheat/process";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  celsius,
  joulesPerKilogramKelvin,
  kilogramsPerHour,
  kilogramsPerSecond,
} from "../../src/quantity/index.ts";

const heat = (water: number, vapor: number): number =>
  dryingPower({ waterFlow: kilogramsPerSecond(1), water: celsius(water), vapor: celsius(vapor) })
    .heatPerMass / 1000;

describe("heat of drying", () => {
  it("dries 50 kg an hour with 36 kW, by hand within half a per cent", () => {
    // 50/3600 · (2256.5 + 4.19 · 80) = 36.0 kW.
    const { power, warnings } = dryingPower({
      waterFlow: kilogramsPerHour(50),
      water: celsius(20),
      vapor: celsius(100),
    });
    expect(Math.abs(power / ((50e3 / 3600) * (2256.5 + 4.19 * 80)) - 1)).toBeLessThan(0.005);
    expect(warnings).toEqual([]);
  });
  it("keeps within 0.7 % of the steam tables up to 300 °C, and says that it falls short above", () => {
    // Vapor at 10 kPa over water of 0 °C: 100 °C 2687.5, 200 °C 2879.6, 300 °C 3077 kJ/kg; 600 °C 3705 kJ/kg.
    for (const [vapor, table] of [
      [100, 2687.5],
      [200, 2879.6],
      [300, 3077],
    ] as const)
      expect(Math.abs(heat(0, vapor) / table - 1)).toBeLessThan(0.007);
    const short = 1 - heat(0, 600) / 3705;
    expect(short).toBeGreaterThan(0.02);
    expect(short).toBeLessThan(0.026);
    const warned = (vapor: number) =>
      dryingPower({
        waterFlow: kilogramsPerSecond(1),
        water: celsius(20),
        vapor: celsius(vapor),
      }).warnings.map(({ code, path }) => `${code} ${path}`);
    expect(warned(300)).toEqual([]);
    expect(warned(300.1)).toEqual(["outside-validity vapor"]);
  });
  it("is in proportion to the water, and less by what warmer water brings along", () => {
    const temperature = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        temperature,
        temperature,
        fc.double({ min: 1e-6, max: 10, noNaN: true }),
        (water, vapor, flow) => {
          const one = dryingPower({
            waterFlow: kilogramsPerSecond(flow),
            water: celsius(water),
            vapor: celsius(vapor),
          });
          expect(one.power).toBeCloseTo(flow * one.heatPerMass, 3);
          const cold = dryingPower({
            waterFlow: kilogramsPerSecond(flow),
            water: celsius(0),
            vapor: celsius(vapor),
          });
          // What is saved is the heat of the water itself.
          const warmth =
            water === 0
              ? 0
              : throughputPower({
                  massFlow: kilogramsPerSecond(flow),
                  specificHeat: joulesPerKilogramKelvin(4186),
                  from: celsius(0),
                  to: celsius(water),
                });
          expect(cold.power - one.power).toBeCloseTo(warmth, 2);
        },
      ),
    );
  });
});
