/**
 * Conductors for faults to earth. Sizes by NFPA 70, Table 250.122, and IEC 60364-5-54, Table 54.2: from memory. Proportions by hand from the
 * areas of Chapter 9, Table 8 (circular mils).
 */
import {
  amperes,
  circularMils,
  isElectroheatError,
  squareMillimeters,
  toSquareMillimeters,
} from "electroheat/quantity";
import { groundingConductor, protectiveConductor } from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const sized = (device: number, more: object = {}, material: "copper" | "aluminum" = "copper") =>
  groundingConductor({ edition: "NEC 2023", device: amperes(device), material, ...more });

describe("the equipment grounding conductor", () => {
  it.each([
    [15, "14 AWG", "12 AWG"],
    [20, "12 AWG", "10 AWG"],
    [30, "10 AWG", "8 AWG"],
    [60, "10 AWG", "8 AWG"],
    [70, "8 AWG", "6 AWG"],
    [100, "8 AWG", "6 AWG"],
    [200, "6 AWG", "4 AWG"],
    [201, "4 AWG", "2 AWG"],
    [300, "4 AWG", "2 AWG"],
    [400, "3 AWG", "1 AWG"],
    [500, "2 AWG", "1/0 AWG"],
    [600, "1 AWG", "2/0 AWG"],
    [601, "1/0 AWG", "3/0 AWG"],
    [800, "1/0 AWG", "3/0 AWG"],
    [1000, "2/0 AWG", "4/0 AWG"],
    [1200, "3/0 AWG", "250 kcmil"],
    [1600, "4/0 AWG", "350 kcmil"],
  ])("behind %d A is %s of copper and %s of aluminum", (device, copper, aluminum) => {
    expect(sized(device).value).toBe(copper);
    expect(sized(device, {}, "aluminum").value).toBe(aluminum);
  });

  it("does not turn on the noise of a product: 1.2 × 50 A is 60 A", () => {
    expect(sized(3 * 0.1 * 200).value).toBe("10 AWG");
    expect(sized(60.1).value).toBe("8 AWG");
  });

  it("grows with conductors that are larger than needed: 6 AWG needed, 4 AWG for the drop", () => {
    // 10,380 · 41,740/26,240 = 16,511 circular mils, one more than 8 AWG has: 6 AWG.
    const grown = sized(60, { installed: "4 AWG", needed: "6 AWG" });
    expect(grown).toMatchObject({
      value: "6 AWG",
      tableSize: "10 AWG",
      governing: "enlarged with the circuit",
    });
    expect(grown.area / circularMils(1)).toBeCloseTo((10_380 * 41_740) / 26_240, 6);
    expect(sized(60, { installed: "6 AWG", needed: "6 AWG" })).toMatchObject({
      value: "10 AWG",
      governing: "device rating",
    });
  });

  it("is no larger than the circuit's own conductors", () => {
    // A 20 A device before fixture wire of 14 AWG.
    expect(sized(20, { installed: "14 AWG" })).toMatchObject({
      value: "14 AWG",
      governing: "no larger than the circuit",
    });
    // 12 AWG needed, 8 AWG run: 6,530 · 16,510/6,530 = 16,510, 8 AWG, as large as the circuit.
    expect(sized(20, { installed: "8 AWG", needed: "12 AWG" }).value).toBe("8 AWG");
    expect(sized(100, { installed: "4 AWG", needed: "10 AWG" })).toMatchObject({
      value: "4 AWG",
      governing: "no larger than the circuit",
    });
  });

  it("is of no aluminum smaller than is made, where the circuit is of smaller copper", () => {
    // 310.106(A), from memory: aluminum from 12 AWG, copper from 14 AWG. 15 A on 14 AWG copper.
    expect(sized(15, { installed: "14 AWG" }, "aluminum")).toMatchObject({
      value: "12 AWG",
      governing: "smallest of aluminum",
    });
    expect(sized(15, { installed: "14 AWG" }, "aluminum").area / circularMils(1)).toBeCloseTo(6530, 6);
    expect(sized(20, { installed: "12 AWG" }, "aluminum")).toMatchObject({
      value: "12 AWG",
      governing: "no larger than the circuit",
    });
    expect(sized(15, { installed: "14 AWG" }).value).toBe("14 AWG");
  });

  it("says edition and table, that it is from memory, and who decides", () => {
    const { edition, table, provenance, deferral, cautions } = sized(60);
    expect([edition, table, provenance]).toEqual(["NEC 2023", "Table 250.122", "memory"]);
    expect(deferral).toMatch(/licensed electrician/);
    expect(cautions.join(" ")).toMatch(/each raceway holds one of full size/);
  });

  it("refuses what it cannot size, by name", () => {
    const refused = (run: () => unknown): string => {
      try {
        run();
      } catch (error) {
        if (isElectroheatError(error)) return error.message;
        throw error;
      }
      return "nothing refused";
    };
    expect(refused(() => sized(2000))).toBe("device: 2000 A is not allowed; expected at most 1600 A");
    expect(refused(() => sized(60, { needed: "6 AWG" }))).toMatch(/^installed: missing/);
    expect(refused(() => sized(60, { needed: "4 AWG", installed: "6 AWG" }))).toMatch(
      /^needed: .*at most installed, 6 AWG/,
    );
    expect(refused(() => sized(60, { installed: "4 square" }))).toMatch(/^installed: /);
    expect(refused(() => sized(60, {}, "brass" as never))).toMatch(/^material: .*copper, aluminum/);
  });

  it("never shrinks as the device grows", () => {
    const areaOf = (device: number): number => sized(device).area;
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1600, noNaN: true }),
        fc.double({ min: 1, max: 1600, noNaN: true }),
        (a, b) => {
          expect(areaOf(Math.max(a, b))).toBeGreaterThanOrEqual(areaOf(Math.min(a, b)));
        },
      ),
    );
  });
});

describe("the protective conductor", () => {
  const least = (
    line: number,
    laid: "with the lines" | "apart, protected" | "apart, unprotected" = "with the lines",
  ) => toSquareMillimeters(protectiveConductor({ lineSection: squareMillimeters(line), laid }).value);

  it.each([
    [1.5, 1.5],
    [10, 10],
    [16, 16],
    [25, 16],
    [35, 16],
    [50, 25],
    [70, 35],
    [120, 60],
  ])("of lines of %d mm² has at least %d mm²", (line, section) => {
    expect(least(line)).toBeCloseTo(section, 9);
  });

  it("has what hands and edges ask for where it is laid apart", () => {
    expect(least(1.5, "apart, protected")).toBeCloseTo(2.5, 9);
    expect(least(1.5, "apart, unprotected")).toBeCloseTo(4, 9);
    expect(least(6, "apart, unprotected")).toBeCloseTo(6, 9);
    const { governing, cautions, edition, table } = protectiveConductor({
      lineSection: squareMillimeters(1.5),
      laid: "apart, protected",
    });
    expect([governing, edition, table]).toEqual(["mechanical strength", "IEC 60364-5-54:2011", "Table 54.2"]);
    expect(cautions.join(" ")).toMatch(/10 mA/);
    // 543.1.3: 2.5 or 4 mm² are of copper, aluminum has 16 mm² either way. From memory.
    expect(cautions.join(" ")).toMatch(/of aluminum at least 16 mm²/);
    const along = protectiveConductor({ lineSection: squareMillimeters(1.5), laid: "with the lines" });
    expect(along.cautions.join(" ")).not.toMatch(/Laid apart/);
  });
});
