/** Laws any answer of the room obeys, whatever the input. No published figures: the rules of the room itself. */
import {
  amperes,
  celsius,
  fahrenheit,
  feet,
  kilowatts,
  megaohms,
  meters,
  milliamperes,
  type Ohms,
  ohmsPerMeter,
  ohmsPerThousandFeet,
  volts,
} from "electroheat/quantity";
import {
  ambientFactor,
  type ConductorRun,
  cableCapacity,
  cableForLoad,
  conductorAmpacity,
  conductorForLoad,
  designCurrent,
  insulationInParallel,
  largestDevice,
  loadForCable,
  loadForConductor,
  standardDevice,
  subdivision,
  voltageDrop,
} from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { column, tableNamed } from "./tables.ts";

const runs = { numRuns: 1000 };
const NEC = ["NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"] as const;
const edition = fc.constantFrom(...NEC);
const ratings = column("nec-standard-ratings", "rating").map(([rating]) => rating);
/** What a short chain of float operations may do to a number. */
const noise = fc.integer({ min: -40, max: 40 }).map((ulps) => 1 + ulps * Number.EPSILON);

const run: fc.Arbitrary<ConductorRun> = fc
  .record({
    edition,
    installation: fc.constantFrom("raceway", "high-temperature raceway"),
    hot: fc.constantFrom(150, 200),
    cool: fc.constantFrom(60, 75, 90),
    ambient: fc.double({ min: -20, max: 54, noNaN: true }),
    conductors: fc.integer({ min: 1, max: 12 }),
    terminal: fc.constantFrom(60, 75, 90),
  })
  .map((one) => ({
    edition: one.edition,
    installation: one.installation,
    material: "copper",
    insulationTemperature: celsius(one.installation === "raceway" ? one.cool : one.hot),
    ambient: celsius(one.ambient),
    currentCarryingConductors: one.conductors,
    terminalTemperature: celsius(one.terminal),
  }));

const sizesOf = (one: ConductorRun): string[] =>
  tableNamed(one.installation === "raceway" ? "nec-310-16" : "nec-310-18")
    .rows.map(([size]) => String(size))
    .filter((size) => !["18", "16"].includes(size))
    .map((size) => (size.includes("/") || Number(size) <= 40 ? `${size} AWG` : `${size} kcmil`));

describe("North America", () => {
  it("load to conductor and back: the chosen size carries the load, the next smaller does not", () => {
    fc.assert(
      fc.property(run, fc.double({ min: 1, max: 90, noNaN: true }), (one, load) => {
        const given = { ...one, equipment: "process heating" };
        const found = conductorForLoad({ ...given, heaterCurrent: amperes(load) });
        expect(loadForConductor({ ...given, size: found.value }).value).toBeGreaterThanOrEqual(
          load * (1 - 1e-11),
        );
        const sizes = sizesOf(one);
        const smaller = sizes[sizes.indexOf(found.value) - 1];
        if (smaller !== undefined)
          expect(loadForConductor({ ...given, size: smaller }).value).toBeLessThan(load * (1 + 1e-11));
        const asked = found.constraints.map(({ size }) => sizes.indexOf(size));
        expect(Math.max(...asked)).toBe(sizes.indexOf(found.value));
        expect(found.device).toBeGreaterThanOrEqual(found.designCurrent * (1 - 1e-11));
        expectFinite(found, found.value);
      }),
      runs,
    );
  });

  it("more heat, more company or a poorer terminal never raise an ampacity", () => {
    fc.assert(
      fc.property(run, fc.nat(100), fc.double({ min: 0, max: 30, noNaN: true }), (one, pick, warmer) => {
        const sizes = sizesOf(one);
        const size = sizes[pick % sizes.length] as string;
        const at = (change: Partial<ConductorRun>): number => {
          try {
            return conductorAmpacity({ ...one, ...change, size }).value;
          } catch {
            return 0;
          }
        };
        const base = at({});
        expect(at({ ambient: celsius(one.ambient + warmer) })).toBeLessThanOrEqual(base);
        expect(at({ currentCarryingConductors: one.currentCarryingConductors + 3 })).toBeLessThanOrEqual(
          base,
        );
        expect(at({ terminalTemperature: celsius(60) })).toBeLessThanOrEqual(base);
      }),
      runs,
    );
  });

  it("the ampacity is the smaller of corrected and terminal value, and says which", () => {
    fc.assert(
      fc.property(run, fc.nat(100), (one, pick) => {
        const sizes = sizesOf(one);
        const found = conductorAmpacity({ ...one, size: sizes[pick % sizes.length] as string });
        const terminal = found.terminationAmpacity ?? Number.POSITIVE_INFINITY;
        expect(found.value).toBe(Math.min(found.correctedAmpacity, terminal));
        expect(found.governing === "termination").toBe(terminal < found.correctedAmpacity);
        expect(found.correctedAmpacity).toBeCloseTo(
          found.tableAmpacity * found.ambientFactor * found.countFactor,
          9,
        );
        expect(
          found.cells.every((cell) => cell.edition === one.edition && cell.system === "North America"),
        ).toBe(true);
        expect(found.deferral).toContain("licensed electrician");
      }),
      runs,
    );
  });

  it("the table's factor is never above the equation's", () => {
    fc.assert(
      fc.property(
        edition,
        fc.constantFrom([30, 60], [30, 75], [30, 90], [40, 90], [40, 150], [40, 200], [40, 250]),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (name, [base, rating], part) => {
          const ambient = celsius(-20 + part * (rating as number));
          const given = {
            edition: name,
            baseAmbient: celsius(base as number),
            insulationTemperature: celsius(rating as number),
            ambient,
          };
          const byEquation = ambientFactor({ ...given, by: "equation" }).value;
          let byTable = 0;
          try {
            byTable = ambientFactor(given).value;
          } catch {
            return;
          }
          expect(byTable).toBeLessThanOrEqual(byEquation + 0.0051);
        },
      ),
      runs,
    );
  });

  it("no decision turns on float noise: every standard rating from its own current", () => {
    fc.assert(
      fc.property(edition, fc.constantFrom(...ratings), noise, noise, (name, rating, first, second) => {
        const heaterCurrent = amperes((rating / 1.25) * first);
        const design = designCurrent({ edition: name, equipment: "process heating", heaterCurrent });
        const device = (current: number): number =>
          standardDevice({ edition: name, current: amperes(current), direction: "up" }).value;
        expect(device(design.value * second)).toBe(rating);
        expect(
          standardDevice({ edition: name, current: amperes(rating * first), direction: "down" }).value,
        ).toBe(rating);
        const permitted = largestDevice({
          edition: name,
          size: "250 kcmil",
          material: "copper",
          ampacity: amperes(rating * first),
        });
        expect([permitted.value, permitted.governing]).toEqual([rating, "standard rating"]);
      }),
      runs,
    );
  });

  it("no split turns on float noise: n circuits of exactly 48 A are n circuits", () => {
    fc.assert(
      fc.property(
        edition,
        fc.integer({ min: 1, max: 40 }),
        noise,
        fc.double({ min: 380, max: 690, noNaN: true }),
        (name, n, off, voltage) => {
          // Through the power and back, as a user has it.
          const power = 48 * n * Math.sqrt(3) * voltage;
          const current = amperes((power / (Math.sqrt(3) * voltage)) * off);
          const split = subdivision({ edition: name, equipment: "space heating", current });
          expect([split.value, split.device]).toEqual([n, 60]);
          const above = subdivision({
            edition: name,
            equipment: "space heating",
            current: amperes(48 * n * (1 + 1e-10)),
          });
          expect(above.value).toBe(n + 1);
        },
      ),
      runs,
    );
  });

  it("a split is the fewest circuits that fit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.6, max: 4000, noNaN: true }), (current) => {
        const split = subdivision({
          edition: "NEC 2023",
          equipment: "process heating",
          current: amperes(current),
        });
        expect(split.circuitCurrent).toBeLessThanOrEqual(48 * (1 + 1e-11));
        expect((split.value - 1) * 48).toBeLessThan(current * (1 + 1e-11));
        expect(split.device).toBeLessThanOrEqual(60);
        expect(split.required).toBe(split.value > 1);
      }),
      runs,
    );
  });

  it("the order of the heaters and the unit they come in change nothing", () => {
    const list = fc.array(fc.double({ min: 0.1, max: 60, noNaN: true }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(edition, list, fc.integer(), (name, currents, seed) => {
        const shuffled = [...currents].sort((a, b) => Math.sin(seed + a) - Math.sin(seed + b));
        const of = (values: readonly number[]): number =>
          designCurrent({
            edition: name,
            equipment: "feeder",
            heaterCurrent: values.map((value) => amperes(value)),
          }).value;
        expect(of(shuffled)).toBe(of(currents));
        expect(of([...currents].reverse())).toBe(of(currents));
      }),
      runs,
    );
    fc.assert(
      fc.property(
        run,
        fc.integer({ min: 2000, max: 90_000 }),
        fc.integer({ min: -4, max: 129 }),
        (one, thousandths, warmth) => {
          const given = { ...one, equipment: "process heating" } as const;
          const plain = conductorForLoad({
            ...given,
            heaterCurrent: amperes(thousandths / 1000),
            ambient: celsius((warmth - 32) / 1.8),
          });
          const other = conductorForLoad({
            ...given,
            heaterCurrent: milliamperes(thousandths),
            ambient: fahrenheit(warmth),
          });
          expect([other.value, other.device, other.governing]).toEqual([
            plain.value,
            plain.device,
            plain.governing,
          ]);
          const viaPower = conductorForLoad({
            ...given,
            heaterCurrent: amperes(kilowatts((thousandths / 1000) * 0.48) / volts(480)),
            ambient: celsius((warmth - 32) / 1.8),
          });
          expect([viaPower.value, viaPower.device]).toEqual([plain.value, plain.device]);
        },
      ),
      runs,
    );
  });
});

describe("IEC", () => {
  const cable = fc
    .record({
      insulation: fc.constantFrom("PVC", "XLPE"),
      method: fc.constantFrom("A1", "B2", "C"),
      loadedConductors: fc.constantFrom(2, 3),
      ambient: fc.double({ min: 10, max: 55, noNaN: true }),
      circuits: fc.integer({ min: 1, max: 12 }),
      deviceKind: fc.constantFrom("circuit-breaker" as const, "gG fuse" as const),
    })
    .map((one) => ({
      ...one,
      edition: "IEC 60364-5-52:2009" as const,
      material: "copper",
      arrangement: "bunched",
      ambient: celsius(one.ambient),
    }));

  it("IB ≤ In ≤ Iz holds, and the next smaller cable does not do", () => {
    fc.assert(
      fc.property(cable, fc.double({ min: 1, max: 40, noNaN: true }), (one, load) => {
        let found: ReturnType<typeof cableForLoad>;
        try {
          found = cableForLoad({ ...one, designCurrent: amperes(load) });
        } catch (error) {
          expect((error as { code: string }).code).toBe("outside-table");
          return;
        }
        expect(load).toBeLessThanOrEqual(found.device * (1 + 1e-11));
        expect(found.requiredCapacity).toBeLessThanOrEqual(found.capacity.value * (1 + 1e-11));
        expect(found.requiredTableCapacity).toBeLessThanOrEqual(found.capacity.tableCapacity * (1 + 1e-11));
        const back = loadForCable({ ...one, size: found.value });
        expect(back.value).toBeGreaterThanOrEqual(found.device);
        const sizes = column("iec-b52-4", "A1 3").map(([size]) => size);
        const smaller = sizes[sizes.indexOf(Number.parseFloat(found.value)) - 1];
        if (smaller !== undefined) {
          const less = cableCapacity({ ...one, size: `${smaller} mm²` }).value;
          expect(less).toBeLessThan(found.requiredCapacity * (1 + 1e-11));
        }
        expect(found.cells.every((cell) => cell.system === "IEC")).toBe(true);
        expectFinite(found, found.value);
      }),
      runs,
    );
  });

  it("a fuse never needs less cable than a circuit-breaker of the same rating", () => {
    fc.assert(
      fc.property(cable, fc.constantFrom(6, 10, 16, 20, 25, 32, 40), (one, device) => {
        const size = (deviceKind: "circuit-breaker" | "gG fuse"): number => {
          try {
            return Number.parseFloat(
              cableForLoad({ ...one, deviceKind, designCurrent: amperes(device), device: amperes(device) })
                .value,
            );
          } catch {
            return Number.POSITIVE_INFINITY;
          }
        };
        expect(size("gG fuse")).toBeGreaterThanOrEqual(size("circuit-breaker"));
      }),
      runs,
    );
  });
});

describe("drop and insulation", () => {
  it("the drop grows in proportion to current and length, and √3/2 of two-wire in three-phase", () => {
    const small = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(small, small, small, (current, length, scale) => {
        const at = (circuit: "two-wire" | "three-phase", i: number, l: number): number =>
          voltageDrop({
            circuit,
            current: amperes(i),
            length: meters(l),
            resistancePerLength: ohmsPerMeter(0.002),
            supplyVoltage: volts(480),
          }).drop;
        const two = at("two-wire", current, length);
        expect(at("two-wire", current * scale, length)).toBeCloseTo(two * scale, 9);
        expect(at("two-wire", current, length * scale)).toBeCloseTo(two * scale, 9);
        expect(at("three-phase", current, length)).toBeCloseTo((two * Math.sqrt(3)) / 2, 9);
      }),
      runs,
    );
  });

  it("the drop is the same in feet and ohms per 1000 ft", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (length, r) => {
          const given = { circuit: "three-phase", current: amperes(20), supplyVoltage: volts(480) } as const;
          const american = voltageDrop({
            ...given,
            length: feet(length),
            resistancePerLength: ohmsPerThousandFeet(r),
          });
          expect(american.drop).toBeCloseTo((Math.sqrt(3) * 20 * length * r) / 1000, 9);
        },
      ),
      runs,
    );
  });

  it("a group reads below its poorest element and above it over their number, in any order", () => {
    const readings = fc.array(fc.double({ min: 0.1, max: 500, noNaN: true }), {
      minLength: 1,
      maxLength: 30,
    });
    fc.assert(
      fc.property(readings, (values) => {
        const ohms = values.map((value) => megaohms(value));
        const group = insulationInParallel(ohms);
        const least = Math.min(...ohms) as Ohms;
        expect(group).toBeLessThanOrEqual(least * (1 + 1e-11));
        expect(group).toBeGreaterThanOrEqual((least / values.length) * (1 - 1e-11));
        expect(insulationInParallel([...ohms].reverse())).toBe(group);
      }),
      runs,
    );
  });
});
