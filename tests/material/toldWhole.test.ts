/**
 * Refusals with a list in them, whole: what is listed is what the files under shared/ hold, each once, with a separator between. Ends of
 * the gauges by their definitions: 4/0 AWG is 0.46 in, No. 40 is 0.005 in · 92^(−4/39) (ASTM B258); SWG 7/0 is 0.5 in, No. 50 0.001 in
 * (BS 3737).
 */
import {
  alloyDataset,
  alloyFactorSpread,
  awgFromArea,
  awgFromDiameter,
  emissivity,
  highestResistance,
  kcmilFromArea,
  listedResistance,
  metricSizeFromArea,
  swgFromDiameter,
  temperatureFactorSpread,
  temperatureFromFactor,
  temperaturesFromFactor,
} from "electroheat/material";
import { celsius, type Meters, type SquareMeters } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { readJson, type Table } from "../support/shared.ts";
import { refusal } from "../support/told.ts";

const rows = (id: string) => (readJson(`shared/tables/${id}.json`) as Table).rows;
const squareMillimeters = (one: number) => (one * 1e-6) as SquareMeters;
const metals = ["plain copper", "coated copper", "aluminum"] as const;

describe("metric conductors", () => {
  it.each([1, 2, 5] as const)("list the sizes of class %d that hold a figure", (number) => {
    for (const [i, metal] of metals.entries()) {
      const listed = rows(`iec-60228-class-${number}`)
        .filter((row) => typeof row[i + 1] === "number")
        .map(([size]) => size);
      const call = (area: number) => () =>
        highestResistance({ area: squareMillimeters(area), class: number, metal });
      expect(refusal(call(10 / 3)), metal).toEqual([
        "outside-table",
        "area",
        listed.length === 0
          ? `a metal that class ${number} lists`
          : `a nominal size of class ${number}, ${metal}: ${listed.join(", ")} mm²`,
        "3.33333",
        "mm²",
      ]);
      for (const size of listed) expect(call(Number(size) * (1 + 9e-7))().value, metal).toBeGreaterThan(0);
      for (const size of listed)
        expect(refusal(call(Number(size) * (1 + 2e-6)))[0], metal).toBe("outside-table");
    }
  });

  it("ask for a class by its number", () => {
    const call = (number: unknown) => () =>
      highestResistance({ area: squareMillimeters(2.5), class: number as 1, metal: "plain copper" });
    expect(refusal(call(3))).toEqual(["unknown-name", "class", "one of 1, 2, 5", "3", undefined]);
    for (const nothing of [undefined, null])
      expect(refusal(call(nothing)).slice(0, 2)).toEqual(["missing", "class"]);
  });
});

it("American conductors list the sizes of their build", () => {
  const table = rows("nec-chapter-9-table-8");
  const named = (size: unknown) =>
    String(size).includes("/") || Number(size) <= 40 ? `${size} AWG` : `${size} kcmil`;
  for (const [build, solid] of [
    ["solid", true],
    ["stranded", false],
  ] as const) {
    const listed = table.filter((row) => (row[2] === 1) === solid).map(([size]) => named(size));
    expect(refusal(() => listedResistance({ size: "30 AWG", build, metal: "aluminum" }))).toEqual([
      "outside-table",
      "size",
      `a ${build} size of nec-chapter-9-table-8: ${listed.join(", ")}`,
      '"30 AWG"',
      undefined,
    ]);
  }
});

describe("gauges", () => {
  const far = [1e-9, 0.5] as const;
  const thin = (1e3 * 0.005 * 0.0254 * 92 ** (-4 / 39)).toPrecision(4);
  const ends = [
    [awgFromDiameter, `40 AWG (${Number(thin)} mm) to 4/0 AWG (11.68 mm)`],
    [swgFromDiameter, "50 SWG (0.0254 mm) to 7/0 SWG (12.7 mm)"],
  ] as const;
  it.each(ends)("%o say from where to where they go", (choose, words) => {
    for (const diameter of far)
      for (const rounding of ["nearest", "at-least", "at-most"] as const) {
        // A thicker one may be asked for below the thinnest, a thinner one above the thickest.
        if ((rounding === "at-least") === diameter < 0.01 && rounding !== "nearest") continue;
        expect(
          refusal(() => choose({ diameter: diameter as Meters, rounding })),
          rounding,
        ).toEqual([
          "outside-table",
          "diameter",
          `a round wire from ${words}`,
          String(Number((1e3 * diameter).toPrecision(6))),
          "mm",
        ]);
      }
  });

  it("tell an area as the round wire it would be", () => {
    const area = squareMillimeters(3);
    const wire = String(Number((2 * Math.sqrt(3 / Math.PI)).toPrecision(6)));
    for (const [choose, system] of [
      [awgFromArea, "AWG"],
      [metricSizeFromArea, "mm²"],
    ] as const)
      expect(refusal(() => choose({ area, rounding: "exact" }))).toEqual([
        "outside-table",
        "area",
        `a size of ${system} to one part in a million`,
        wire,
        "mm (as round wire)",
      ]);
    expect(refusal(() => kcmilFromArea({ area, rounding: "nearest" }))[2]).toMatch(
      /^a round wire from 250 kcmil \(\S+ mm\) to 2000 kcmil \(\S+ mm\)$/,
    );
    for (const far of [1e-31, 1e31])
      expect(
        refusal(() => awgFromArea({ area: far as SquareMeters, rounding: "nearest" })).slice(0, 2),
      ).toEqual(["out-of-range", "area"]);
  });
});

describe("temperature factors", () => {
  it("list the datasets whose tables do not reach", () => {
    const ids = ["nicr-80-20-gb", "nicr-80-20-maker-a"];
    const datasets = ids.map(alloyDataset);
    expect(refusal(() => temperatureFactorSpread({ datasets, temperature: celsius(2000) }))).toEqual([
      "outside-table",
      "temperature",
      `a temperature that a Ct table reaches (${ids.join(", ")})`,
      "2000",
      "°C",
    ]);
    expect(refusal(() => alloyFactorSpread({ alloy: "NiCr 80/20", temperature: celsius(2000) }))[2]).toMatch(
      /\(nicr-80-20-\S+(?:, nicr-80-20-\S+)+\)$/,
    );
  });

  it("tell a table that rises and falls by the temperatures at which it has the figure", () => {
    const dataset = alloyDataset("nicr-80-20-gb");
    const { temperatures, values } = dataset.temperatureFactor as NonNullable<
      typeof dataset.temperatureFactor
    >;
    const several = values.find(
      (factor) => temperaturesFromFactor({ dataset, factor }).solutions.length > 1,
    ) as number;
    // Straight lines between rows, and rows that have the figure, worked out again.
    const at: number[] = [];
    for (const [i, low] of temperatures.entries()) {
      const [y, next] = [values[i] as number, values[i + 1]];
      if (y === several) at.push(low);
      else if (next !== undefined && next !== several && (y - several) * (next - several) < 0)
        at.push(low + (((temperatures[i + 1] as number) - low) * (several - y)) / (next - y));
    }
    const [code, path, expected] = refusal(() => temperatureFromFactor({ dataset, factor: several }));
    expect([code, path]).toEqual(["not-identifiable", "dataset"]);
    const said = /has this Ct at (.+)$/.exec(expected ?? "")?.[1]?.split(", ") ?? [];
    const told = said.flatMap((one) => one.replaceAll(" °C", "").split(" to ").map(Number));
    expect(told.length).toBeGreaterThan(1);
    for (const one of told)
      expect(
        at.some((temperature) => Math.abs(temperature - one) < 1e-6),
        `${one}: ${at}`,
      ).toBe(true);
    expect(refusal(() => temperatureFromFactor({ dataset, factor: 3 }))[2]).toContain("at no temperature");
  });
});

it("surfaces are listed each once", () => {
  const names = ["emissivity-heating-alloys", "emissivity-metals", "emissivity-surfaces"].flatMap((id) =>
    rows(id).map(([surface]) => String(surface)),
  );
  const [code, path, expected, received] = refusal(() => emissivity("unobtainium"));
  expect([code, path, received]).toEqual(["unknown-name", "words", '"unobtainium"']);
  expect(expected).toBe(`words of one of ${[...new Set(names)].join("; ")}`);
  for (const nothing of ["", " , ", undefined, null])
    expect(refusal(() => emissivity(nothing as never))[0], String(nothing)).toBe("missing");
  for (const wrong of [7, {}, []]) expect(refusal(() => emissivity(wrong as never))[0]).toBe("wrong-type");
});
