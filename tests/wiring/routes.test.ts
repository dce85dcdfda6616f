/**
 * The second route to a factor, where a table is the first: the equation of the ambient factor (the note under the factors of
 * IEC 60364-5-52 and BS 7671, from memory: √((rating − ambient)/(rating − base))) and the laws behind the insulation factors of
 * ANSI/NETA MTS, table 100.14.1 (a factor of 2 for 10 K in oil, of 10 for 50 K in solid insulation: common practice). And sizes as
 * people write them.
 */
import { amperes, celsius, ohms } from "electroheat/quantity";
import { cableAmbientFactor, insulationAt20, lugFit } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { expectRefusal } from "../support/spoil.ts";

describe("an ambient factor by the equation", () => {
  const at = (insulation: string, ambient: number) =>
    ({
      edition: "IEC 60364-5-52:2009",
      insulation,
      ambient: celsius(ambient),
      baseAmbient: celsius(30),
    }) as const;

  it.each([
    ["PVC", 50, Math.sqrt(20 / 40)],
    ["PVC", 30, 1],
    ["XLPE", 50, Math.sqrt(40 / 60)],
    ["XLPE", 67.5, Math.sqrt(22.5 / 60)],
  ] as const)("%s at %d °C", (insulation, ambient, factor) => {
    const found = cableAmbientFactor({ ...at(insulation, ambient), by: "equation" });
    expect(found.value).toBeCloseTo(factor, 12);
    expect(found.governing).toBe("equation");
    expect(found.warnings.map(({ code, path }) => [code, path])).toContainEqual(["approximate", "by"]);
  });

  it("is the table's to its two digits where the table has one", () => {
    for (const [insulation, hottest] of [
      ["PVC", 60],
      ["XLPE", 80],
    ] as const) {
      for (let ambient = 10; ambient <= hottest; ambient += 5) {
        const [table, equation] = [
          cableAmbientFactor(at(insulation, ambient)),
          cableAmbientFactor({ ...at(insulation, ambient), by: "equation" }),
        ];
        expect(Math.abs((table.value as number) - (equation.value as number))).toBeLessThanOrEqual(0.0051);
      }
    }
  });

  it("is not for mineral insulation, nor at the rating", () => {
    for (const insulation of ["mineral 70", "mineral 105"]) {
      const given = { ...at(insulation, 40), edition: "BS 7671:2008" } as const;
      expect(cableAmbientFactor(given).value).toBeLessThan(1);
      const call = () => cableAmbientFactor({ ...given, by: "equation" });
      expectRefusal(call, "inconsistent", "by", insulation);
    }
    const hot = () => cableAmbientFactor({ ...at("PVC", 70), by: "equation" });
    expectRefusal(hot, "out-of-range", "ambient", "70 °C");
    expectRefusal(
      () => cableAmbientFactor({ ...at("PVC", 40), by: "guess" as "table" }),
      "unknown-name",
      "by",
      "guess",
    );
  });
});

describe("insulation referred to 20 °C by the law", () => {
  const reading = ohms(1e8);
  const referred = (temperature: number, insulation: "oil" | "solid", by: "table" | "law") =>
    insulationAt20({ resistance: reading, temperature: celsius(temperature), insulation, by });

  it.each([
    [30, "oil", 2],
    [20, "oil", 1],
    [10, "oil", 0.5],
    [70, "solid", 10],
    [20, "solid", 1],
    [45, "solid", 10 ** 0.5],
    [33.3, "oil", 2 ** 1.33],
  ] as const)("%d °C, %s: times %d", (temperature, insulation, factor) => {
    const found = referred(temperature, insulation, "law");
    expect((found.value as number) / reading).toBeCloseTo(factor, 12);
    expect(found).toMatchObject({ governing: "law", cells: [{ provenance: "derived" }] });
    expect(found.warnings).toHaveLength(1);
  });

  it("is within 2 % of the table, 5 % for oil at 15 °C, and only the table asks for a multiple of 5", () => {
    for (const insulation of ["oil", "solid"] as const) {
      for (let temperature = 0; temperature <= 80; temperature += 5) {
        const [table, law] = [
          referred(temperature, insulation, "table").value as number,
          referred(temperature, insulation, "law").value as number,
        ];
        const within = insulation === "oil" && temperature === 15 ? 0.05 : 0.02;
        expect(Math.abs(law / table - 1), `${insulation} ${temperature}`).toBeLessThan(within);
      }
    }
    expectRefusal(() => referred(33.3, "oil", "table"), "outside-table", "temperature", "33.3");
    expect(referred(35, "oil", "table").warnings).toEqual([]);
  });
});

describe("a size as people write it", () => {
  const fits = (size: string) => () =>
    lugFit({
      edition: "NEC 2023",
      size,
      material: "copper",
      insulationTemperature: celsius(90),
      designCurrent: amperes(10),
      lug: { smallest: "14 AWG", largest: "250 kcmil", materials: ["copper"], temperature: celsius(75) },
    });

  it.each([
    ["00 AWG", "2/0 AWG"],
    ["0000", "4/0 AWG"],
    ["0 AWG", "1/0 AWG"],
    ["no.6", "6 AWG"],
    ["#6", "6 AWG"],
    ["250 MCM", "250 kcmil"],
  ])("%s is %s", (written, name) => {
    expect(fits(written)()).toEqual(fits(name)());
  });

  it.each([
    ["6", "ambiguous"],
    ["2.5", "ambiguous"],
    ["six", "malformed-text"],
    ["5/0", "malformed-text"],
    [" ", "missing"],
    ["6 AWG of the good kind, tinned", "malformed-text"],
    [null, "missing"],
    [6, "wrong-type"],
  ] as const)("%j is refused as %s", (written, code) => {
    expectRefusal(fits(written as string), code, "size", String(written));
  });
});
