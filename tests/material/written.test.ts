/**
 * Names and sizes as people write them: what is taken, what is refused and as what. The sizes are those of ASTM B258 (AWG) and BS 3737
 * (SWG), 1 kcmil is 0.5067075 mm² by definition; which of two readings a text has is the contract of the room.
 */
import * as material from "electroheat/material";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const refused = (text: unknown) => {
  const { code, issues } = caught(() => material.wireSize(text as string));
  return [code, issues[0]?.path, issues[0]?.expected.includes('"12 AWG"')];
};

describe("a wire size", () => {
  it.each([
    ["2.5 mm²", "mm²", 2.5],
    ["2.5mm2", "mm²", 2.5],
    ["2.5 sq mm", "mm²", 2.5],
    ["2.5 sq. mm", "mm²", 2.5],
    ["2.5 SQMM", "mm²", 2.5],
    [" 1000 mm² ", "mm²", 1000],
    ["0.0001 mm²", "mm²", 0.0001],
    ["250 kcmil", "kcmil", 250 * 0.506707479],
    ["250MCM", "kcmil", 250 * 0.506707479],
    ["2.582 kcmil", "kcmil", 2.582 * 0.506707479],
    ["12 AWG", "AWG", 3.3088],
    ["No. 12 AWG", "AWG", 3.3088],
    ["#12 awg", "AWG", 3.3088],
    ["4/0 AWG", "AWG", 107.219],
    ["18 SWG", "SWG", (Math.PI / 4) * 1.2192 ** 2],
  ] as const)("%s", (text, system, area) => {
    const found = material.wireSize(text);
    expect(found.system).toBe(system);
    expect((1e6 * found.area) / area).toBeCloseTo(1, 4);
    expect((1e6 * (Math.PI / 4) * found.diameter ** 2) / area).toBeCloseTo(1, 4);
  });

  it.each(["1", "9", "10", "100", "0", "2.5", "0.5", "10.25", " 7 "])("%s could be of any system", (text) => {
    expect(refused(text)).toEqual(["ambiguous", "text", true]);
  });

  it("is SWG with its letters before or behind, and says what a diameter and a comma are", () => {
    // BS 3737:1964: SWG 18 is 0.048 in, 1.2192 mm.
    for (const text of ["18 SWG", "SWG 18", "swg18"])
      expect(material.wireSize(text).diameter, text).toBeCloseTo(1.2192e-3, 9);
    expect(() => material.wireSize("0.4 mm")).toThrow(/a diameter is no size/);
    expect(() => material.wireSize("2,5 mm²")).toThrow(/2\.5 mm².*with a decimal point/);
  });
  it.each(["AWG", "wire", "2.5 mm", "twelve AWG", "x".repeat(24), "1".repeat(25), "-3 mm²", "2.5 mm² ²"])(
    "%s is no size",
    (text) => {
      const [code, path] = refused(text);
      expect(path).toBe("text");
      expect(["malformed-text", "unknown-name", "out-of-range"]).toContain(code);
    },
  );

  it("is text, and more than nothing", () => {
    for (const none of [undefined, null, ""]) expect(refused(none)).toEqual(["missing", "text", true]);
    for (const other of [12, {}, true]) expect(refused(other)).toEqual(["wrong-type", "text", true]);
    expect(refused(`${" ".repeat(25)}12 AWG`)).toEqual(["malformed-text", "text", true]);
    for (const [text, system] of [
      ["0 mm²", "mm²"],
      ["0.0 mm²", "mm²"],
    ] as const) {
      const [issue] = caught(() => material.wireSize(text)).issues;
      expect([issue?.code, issue?.path, issue?.expected]).toEqual([
        "out-of-range",
        "text",
        `more than 0 ${system}`,
      ]);
    }
  });
});

describe("an alloy that is meant", () => {
  it.each([
    "NiCr 80/20",
    "nicr 80/20",
    "NICR80/20",
    "nichrome 80/20",
    "Nickel-chromium 80/20",
    "80/20",
    "nicr",
  ])("by %s, which is no source, is answered with its sources", (name) => {
    const { code, issues } = caught(() => material.alloyDataset(name));
    expect([code, issues[0]?.path]).toEqual(["ambiguous", "id"]);
    const listed = issues[0]?.expected.replace("one of ", "").split(", ") ?? [];
    expect(listed).toContain("nicr-80-20-gb");
    expect(listed.every((id) => id.startsWith("nicr-"))).toBe(true);
    if (/80/.test(name)) expect(listed.every((id) => id.startsWith("nicr-80-20"))).toBe(true);
    for (const id of listed) expect(material.alloyDataset(id).id).toBe(id);
  });

  it.each(["ni", "cr", "20", "", "steel", "/20"])("%s names none, and all are listed", (name) => {
    const { code, issues } = caught(() => material.alloyDataset(name));
    expect(code).toBe(name === "" ? "missing" : "unknown-name");
    for (const id of ["nicr-80-20-gb", "fecral-25-5-gb"])
      expect(issues[0]?.expected).toMatch(new RegExp(`[ ]${id}(?:,|$)`));
  });
});
