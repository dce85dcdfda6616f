/** The inverse question: how hot it may be around a conductor that is already there. Worked cases lie in shared/vectors/wiring. */
import { amperes, type Celsius, celsius } from "electroheat/quantity";
import {
  ambientForCable,
  ambientForConductor,
  type CableChoice,
  type ConductorChoice,
  cableForLoad,
  conductorForLoad,
  loadForConductor,
} from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

describe("the hottest ambient is the inverse of the choice", () => {
  it("of a conductor: at it the size still does, just above it a larger one is asked for", () => {
    const conductor = fc.record({
      hot: fc.boolean(),
      rating: fc.constantFrom(60, 75, 90),
      hotRating: fc.constantFrom(150, 200),
      load: fc.double({ min: 1, max: 150, noNaN: true }),
      ambient: fc.double({ min: -20, max: 50, noNaN: true }),
      conductors: fc.integer({ min: 1, max: 9 }),
      terminal: fc.constantFrom(60, 75, 90),
    });
    fc.assert(
      fc.property(conductor, ({ hot, rating, hotRating, load, ambient, conductors, terminal }) => {
        const run = {
          edition: "NEC 2020",
          equipment: "space heating",
          installation: hot ? "high-temperature raceway" : "raceway",
          material: "copper",
          insulationTemperature: celsius(hot ? hotRating : rating),
          currentCarryingConductors: conductors,
          terminalTemperature: celsius(terminal),
          heaterCurrent: amperes(load),
        } as const;
        const choice = (at: number): ConductorChoice | null => {
          try {
            return conductorForLoad({ ...run, ambient: celsius(at) });
          } catch {
            return null;
          }
        };
        const chosen = choice(ambient);
        if (chosen === null) return;
        const size = chosen.value;
        const found = ambientForConductor({ ...run, size });
        expect(found.value).toBeGreaterThanOrEqual(ambient - 1e-9);
        expect(found.device).toBe(chosen.device);
        // The size still does there (loadForConductor asks the same tests), and above it a larger one is chosen or none.
        expect(loadForConductor({ ...run, size, ambient: found.value }).value).toBeGreaterThanOrEqual(
          load * (1 - 1e-11),
        );
        const above = choice(found.value + 0.01);
        expect(above?.value).not.toBe(size);
        if (above === null) return;
        expect(above.ampacity.tableAmpacity).toBeGreaterThan(chosen.ampacity.tableAmpacity);
        expect(found.governing).not.toBe("end of the factors");
      }),
      { numRuns: 600 },
    );
  });

  it("of a cable: at it the size still does, just above it a larger one is asked for", () => {
    const cable = fc.record({
      insulation: fc.constantFrom("PVC", "XLPE"),
      method: fc.constantFrom("A1", "B2", "C"),
      circuits: fc.integer({ min: 1, max: 6 }),
      deviceKind: fc.constantFrom("circuit-breaker" as const, "gG fuse" as const),
      load: fc.double({ min: 1, max: 60, noNaN: true }),
      ambient: fc.double({ min: 10, max: 55, noNaN: true }),
    });
    fc.assert(
      fc.property(cable, ({ load, ambient, ...one }) => {
        const run = {
          ...one,
          edition: "IEC 60364-5-52:2009",
          loadedConductors: 3,
          material: "copper",
          arrangement: "bunched",
          designCurrent: amperes(load),
        } as const;
        const choice = (at: number): CableChoice | null => {
          try {
            return cableForLoad({ ...run, ambient: at as Celsius });
          } catch {
            return null;
          }
        };
        const chosen = choice(ambient);
        if (chosen === null) return;
        const found = ambientForCable({ ...run, size: chosen.value });
        expect(found.value).toBeGreaterThanOrEqual(ambient - 1e-9);
        expect(Number.parseFloat(choice(found.value)?.value ?? "Infinity")).toBeLessThanOrEqual(
          Number.parseFloat(chosen.value),
        );
        const above = choice(found.value + 0.01);
        if (above !== null)
          expect(Number.parseFloat(above.value)).toBeGreaterThan(Number.parseFloat(chosen.value));
      }),
      { numRuns: 600 },
    );
  });

  it("ends where the factors end: 14 AWG with next to no load", () => {
    // Table 310.15(B)(1)(1), 90 °C column: the last factor is 0.29 up to 85 °C; 25 A · 0.29 is 7.25 A, next size up 15 A.
    const found = ambientForConductor({
      edition: "NEC 2023",
      equipment: "machine",
      heaterCurrent: amperes(1),
      installation: "raceway",
      material: "copper",
      insulationTemperature: celsius(90),
      size: "14 AWG",
      currentCarryingConductors: 3,
      terminalTemperature: celsius(75),
    });
    expect([found.value, found.governing, found.table, found.row]).toEqual([
      85,
      "end of the factors",
      "Table 310.15(B)(1)(1)",
      "81 to 85 °C",
    ]);
  });

  it("names the test that a size fails everywhere: 10 AWG under a 50 A device, 240.4(D)", () => {
    const ask = (): unknown =>
      ambientForConductor({
        edition: "NEC 2023",
        equipment: "process heating",
        heaterCurrent: amperes(40),
        installation: "high-temperature raceway",
        material: "copper",
        insulationTemperature: celsius(200),
        size: "10 AWG",
        currentCarryingConductors: 3,
        terminalTemperature: celsius(200),
      });
    expect(ask).toThrow(/small conductor limit/);
  });
});
