import {
  awgArea,
  awgDiameter,
  conductorArea,
  parseQuantity,
  toCircularMils,
  toInches,
  toMils,
  toThousandCircularMils,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { thrown } from "./support.ts";

// T. R. Kuphaldt, Lessons in Electric Circuits, vol. V, "Copper wire gage table": size, diameter in inches,
// area in circular mils (the figures of NBS Handbook 100).
const TABLE = [
  ["0000", 0.46, 211600],
  ["000", 0.4096, 167800],
  ["00", 0.3648, 133100],
  ["0", 0.3249, 105500],
  ["1", 0.2893, 83690],
  ["2", 0.2576, 66370],
  ["4", 0.2043, 41740],
  ["6", 0.162, 26250],
  ["8", 0.1285, 16510],
  ["10", 0.1019, 10380],
  ["12", 0.08081, 6530],
  ["14", 0.06408, 4107],
  ["16", 0.05082, 2583],
  ["18", 0.0403, 1624],
  ["20", 0.03196, 1022],
  ["22", 0.02535, 642.5],
  ["24", 0.0201, 404.0],
] as const;

describe("American wire gauge", () => {
  it.each(TABLE)("%s is %d in and %d cmil", (size, inches, cmil) => {
    // Half a unit of the fourth digit printed, plus the handbook's own rounding of d before squaring.
    expect(Math.abs(toInches(awgDiameter(size)) / inches - 1)).toBeLessThan(6e-4);
    expect(Math.abs(toCircularMils(awgArea(size)) / cmil - 1)).toBeLessThan(6e-4);
  });

  // ASTM B258 defines 4/0 as 0.4600 in and 36 as 0.0050 in, 39 equal ratios between.
  it("meets both defined ends and keeps the ratio of 39 steps", () => {
    expect(toMils(awgDiameter("4/0"))).toBeCloseTo(460, 9);
    expect(toMils(awgDiameter("36"))).toBeCloseTo(5, 12);
    const sizes = ["4/0", "3/0", "2/0", "1/0", ...Array.from({ length: 40 }, (_, n) => String(n + 1))];
    sizes.slice(1).forEach((size, i) => {
      expect(awgDiameter(sizes[i] ?? "") / awgDiameter(size)).toBeCloseTo((460 / 5) ** (1 / 39), 12);
    });
  });

  it("reads every way of writing a size", () => {
    for (const text of ["2/0", "00", " 2/0 AWG", "2/0awg", "#2/0", "No. 2/0", "AWG 2/0"]) {
      expect(awgDiameter(text), text).toBe(awgDiameter("00"));
    }
    expect(awgArea("#10")).toBe(awgArea("10 AWG"));
  });

  it.each([
    ["41", "out-of-range"],
    ["99", "out-of-range"],
    ["5/0", "malformed-text"],
    ["00000", "malformed-text"],
    ["10.5", "malformed-text"],
    ["-1", "malformed-text"],
    ["", "missing"],
    ["AWG", "missing"],
    ["ten", "malformed-text"],
    ["x".repeat(1e6), "malformed-text"],
    [undefined, "missing"],
    [10, "wrong-type"],
  ])("refuses %.20s as %s", (size, code) => {
    for (const read of [awgDiameter, awgArea]) expect(thrown(() => read(size as string)).code).toBe(code);
  });
});

describe("conductor sizes that name their system", () => {
  it("reads kcmil by definition", () => {
    expect(toThousandCircularMils(conductorArea("250 kcmil"))).toBeCloseTo(250, 12);
    expect(conductorArea("250 MCM")).toBe(conductorArea("250kcmil"));
    expect(conductorArea("0000")).toBe(awgArea("4/0"));
    expect(conductorArea("2/0")).toBe(awgArea("2/0"));
    expect(conductorArea("10 AWG")).toBe(awgArea("10"));
  });

  it.each(["10", "250", "0", " 12 "])("refuses a bare %s as ambiguous and names the systems", (text) => {
    const error = thrown(() => conductorArea(text));
    expect(error.code).toBe("ambiguous");
    expect(error.message).toContain("AWG or kcmil");
    expect(error.message).toContain(text.trim());
  });

  it("refuses 0 kcmil", () => {
    expect(thrown(() => conductorArea("0 kcmil")).code).toBe("out-of-range");
  });
});

describe("gauges in parseQuantity", () => {
  it("are an area or the diameter of solid wire, and nothing else", () => {
    const area = parseQuantity("2/0 AWG", { unit: "m²" });
    expect(area).toEqual({ value: awgArea("2/0"), symbol: "AWG", resolution: null, significantDigits: null });
    expect(parseQuantity("2/0 AWG", { unit: "m" }).value).toBe(awgDiameter("2/0"));
    expect(thrown(() => parseQuantity("2/0 AWG", { unit: "Ω" })).code).toBe("wrong-type");
    expect(thrown(() => parseQuantity("10", { unit: "m²" })).code).toBe("ambiguous");
    expect(thrown(() => parseQuantity("41 AWG", { unit: "m²", path: "wire" })).argument).toBe("wire");
  });
});
