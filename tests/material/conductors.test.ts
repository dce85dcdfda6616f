/** Conductor metals: straight lines, tables, names. Printed figures are in shared/vectors/material. */
import * as material from "electroheat/material";
import {
  ALUMINUM_61_IACS,
  COPPER_HARD_DRAWN,
  COPPER_IACS,
  COPPER_PURE_CRC,
  type ConductorDataset,
  classesOfResistivity,
  coatedCopperResistivity,
  conductorDataset,
  conductorDatasetIds,
  conductorResistance,
  conductorResistivity,
  copperOfConductivity,
  emissivity,
  highestElementTemperatures,
  lengthOfResistance,
  NICKEL_MAKER_I,
  referenceFactor,
  resistanceAtTemperature,
  resistanceOfLength,
  resistancePerLength,
  resistivityClasses,
  temperatureCoefficientAt,
  temperatureFromResistance,
  zeroResistanceTemperature,
} from "electroheat/material";
import {
  type Celsius,
  celsius,
  meters,
  microohmMeters,
  type OhmMeters,
  type Ohms,
  type OhmsPerMeter,
  ohms,
  type PerKelvin,
  perKelvin,
  squareMillimeters,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught, codeOf } from "./errors.ts";

const RUNS = { numRuns: 1000 };
const all = conductorDatasetIds().map(conductorDataset);
const warm = fc.double({ min: -50, max: 200, noNaN: true });
const coefficients = fc.double({ min: 0.001, max: 0.0045, noNaN: true });

describe("conductor datasets", () => {
  it("are all listed, once, and survive JSON", () => {
    const exported = Object.values(material).filter(
      (value): value is ConductorDataset => typeof value === "object" && "metal" in value,
    );
    expect(exported.map(({ id }) => id).sort()).toEqual([...conductorDatasetIds()].sort());
    for (const dataset of all) expect(JSON.parse(JSON.stringify(dataset))).toEqual(dataset);
  });

  // Materials memo, pitfall 5: copper of physics tables is the pure element, 2.7 % lower; aluminum 6.2 %.
  it.each([
    [COPPER_IACS, COPPER_PURE_CRC, 0.027],
    [ALUMINUM_61_IACS, conductorDataset("aluminum-pure-crc"), 0.0665],
  ])("$id is wire, not the pure element", (wire, pure, above) => {
    const at = (conductor: ConductorDataset) =>
      conductorResistivity({ conductor, temperature: celsius(20) }).value;
    expect(at(wire) / at(pure) - 1).toBeCloseTo(above, 2);
  });

  it.each(["copper", "aluminum", "aluminium", "stainless", "stainless steel"])(
    "%s alone is ambiguous",
    (name) => {
      const error = caught(() => conductorDataset(name));
      expect(error.code).toBe("ambiguous");
      expect(error.issues[0]?.expected).toContain(name.slice(0, 5));
    },
  );

  it("refuses unknown names with all that are known", () => {
    const error = caught(() => conductorDataset("unobtainium"));
    expect(error.code).toBe("unknown-name");
    for (const id of conductorDatasetIds()) expect(error.message).toContain(id);
    expect(codeOf(() => conductorDataset(""))).toBe("missing");
    expect(codeOf(() => conductorDataset(7 as unknown as string))).toBe("unknown-name");
  });
});

describe("conductorResistivity", () => {
  it.each(all.map((conductor) => [conductor.id, conductor] as const))(
    "%s: positive, and warns or refuses at its ends",
    (_, conductor) => {
      const law = conductor.resistivity;
      if ("coefficient" in law) {
        const at = (t: number) => conductorResistivity({ conductor, temperature: celsius(t) });
        expect(at(-50).warnings.concat(at(200).warnings)).toEqual([]);
        expect(at(-50.001).warnings[0]?.code).toBe("outside-validity");
        expect(at(200.001).warnings[0]?.code).toBe("outside-validity");
        expect(at(20).value).toBe(law.resistivity);
        expect([at(-60), at(210)].map(({ warnings }) => warnings[0]?.limit)).toEqual([-50, 200]);
      } else {
        const [first, last] = [law.temperatures[0] as Celsius, law.temperatures.at(-1) as Celsius];
        expect(conductorResistivity({ conductor, temperature: last }).value).toBe(law.values.at(-1));
        for (const beyond of [first - 0.001, last + 0.001]) {
          const temperature = celsius(beyond);
          expect(codeOf(() => conductorResistivity({ conductor, temperature }))).toBe("outside-table");
          if (law.temperatures.length > 1) {
            const asked = conductorResistivity({ conductor, temperature, beyondTable: "extrapolate" });
            expect(asked.warnings[0]?.code).toBe("extrapolated");
          }
        }
      }
    },
  );

  // Materials memo 1.1: 7 → 36 µΩ·cm from 20 to 500 °C; a straight line from 20 and 100 °C gives 31.
  it("takes nickel by table: no coefficient follows it", () => {
    const at = (t: number) =>
      conductorResistivity({ conductor: NICKEL_MAKER_I, temperature: celsius(t) }).value;
    const line = at(20) + ((at(100) - at(20)) / 80) * 480;
    expect(at(500) / line).toBeGreaterThan(1.1);
    expect(at(500) / at(20)).toBeGreaterThan(5);
  });

  it("a straight line that has run out of resistance is an error", () => {
    expect(codeOf(() => conductorResistivity({ conductor: COPPER_IACS, temperature: celsius(-240) }))).toBe(
      "out-of-range",
    );
    expect(
      codeOf(() => conductorResistivity({ conductor: COPPER_IACS, temperature: -273.15 as Celsius })),
    ).toBe("out-of-range");
    expect(
      codeOf(() => conductorResistivity({ conductor: COPPER_IACS, temperature: Number.NaN as Celsius })),
    ).toBe("not-a-number");
    expect(codeOf(() => conductorResistivity({ temperature: celsius(20) } as never))).toBe("missing");
  });

  // Dellinger: resistivity × coefficient is the same for copper of any conductivity.
  it("copper of any conductivity has the same rise per kelvin", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1.1, noNaN: true }), warm, (conductivity, t) => {
        const at = (temperature: number) =>
          conductorResistivity({
            conductor: copperOfConductivity(conductivity),
            temperature: celsius(temperature),
          }).value;
        const pure = (temperature: number) =>
          conductorResistivity({ conductor: COPPER_IACS, temperature: celsius(temperature) }).value;
        expect((at(t) - at(20)) * 1e10).toBeCloseTo((pure(t) - pure(20)) * 1e10, 6);
      }),
      RUNS,
    );
    expect(copperOfConductivity(0.97).resistivity).toEqual(COPPER_HARD_DRAWN.resistivity);
    expect([copperOfConductivity(0.985).id, copperOfConductivity(1).resistivity]).toEqual([
      "copper-98.5-iacs",
      COPPER_IACS.resistivity,
    ]);
    expect([COPPER_IACS, COPPER_HARD_DRAWN].map(({ resistivity }) => resistivity.basis.source)).toEqual([
      "iec-60028",
      "dellinger",
    ]);
    for (const edge of [0.5, 1.1]) expect(copperOfConductivity(edge).metal).toBe("copper");
    for (const beyond of [0.4999, 1.1001])
      expect(codeOf(() => copperOfConductivity(beyond))).toBe("out-of-range");
    expect(codeOf(() => copperOfConductivity(97))).toBe("out-of-range");
  });
});

describe("resistance of a length", () => {
  it("is proportional to length, inversely to area, and turns back into the length", () => {
    const positive = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(positive, positive, warm, (length, area, t) => {
        const temperature = celsius(t);
        const one = {
          conductor: COPPER_IACS,
          temperature,
          area: squareMillimeters(area),
          length: meters(length),
        };
        const { value } = conductorResistance(one);
        const twice = conductorResistance({ ...one, length: meters(2 * length) }).value;
        const thick = conductorResistance({ ...one, area: squareMillimeters(2 * area) }).value;
        expect(twice / value).toBeCloseTo(2, 12);
        expect(thick / value).toBeCloseTo(0.5, 12);
        const { value: resistivity } = conductorResistivity(one);
        const perLength = resistancePerLength({ resistivity, area: one.area });
        const back = lengthOfResistance({ resistance: value, resistancePerLength: perLength });
        expect(back / length).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  it("refuses negative lengths, zero areas and blanks", () => {
    const resistancePerMeter = 0.5 as OhmsPerMeter;
    const perLength = { resistancePerLength: resistancePerMeter };
    expect(caught(() => resistanceOfLength({ ...perLength, length: meters(-1) })).argument).toBe("length");
    expect(codeOf(() => lengthOfResistance({ ...perLength, resistance: -1 as Ohms }))).toBe("out-of-range");
    expect(
      codeOf(() => lengthOfResistance({ resistance: ohms(1), resistancePerLength: 0 as OhmsPerMeter })),
    ).toBe("out-of-range");
    expect(
      codeOf(() => resistancePerLength({ resistivity: microohmMeters(1), area: squareMillimeters(0) })),
    ).toBe("out-of-range");
    expect(codeOf(() => resistancePerLength({ resistivity: microohmMeters(1) } as never))).toBe("missing");
    expect(resistanceOfLength({ ...perLength, length: meters(0) })).toBe(0);
  });
});

describe("temperature coefficients", () => {
  it("go to another reference and back", () => {
    fc.assert(
      fc.property(coefficients, warm, warm, (coefficient, from, to) => {
        fc.pre(1 + coefficient * (to - from) > 0.1);
        const there = temperatureCoefficientAt({
          coefficient: perKelvin(coefficient),
          reference: celsius(from),
          at: celsius(to),
        });
        const back = temperatureCoefficientAt({
          coefficient: there,
          reference: celsius(to),
          at: celsius(from),
        });
        expect(back).toBeCloseTo(coefficient, 12);
        // Both describe one line, so both reach zero resistance at one temperature.
        const zero = zeroResistanceTemperature({ coefficient: there, reference: celsius(to) });
        expect(zero).toBeCloseTo(from - 1 / coefficient, 6);
      }),
      RUNS,
    );
  });

  it("give the same resistance whatever reference they are quoted at, and the temperature back", () => {
    fc.assert(
      fc.property(coefficients, warm, warm, warm, (coefficient, from, to, reference) => {
        const quoted = { coefficient: perKelvin(coefficient), reference: celsius(20) };
        fc.pre(1 + coefficient * (Math.min(from, to, reference) - 20) > 0.2);
        const moved = {
          coefficient: temperatureCoefficientAt({ ...quoted, at: celsius(reference) }),
          reference: celsius(reference),
        };
        const one = { resistance: ohms(7.9), from: celsius(from), to: celsius(to) };
        const hot = resistanceAtTemperature({ ...one, ...quoted });
        expect(resistanceAtTemperature({ ...one, ...moved })).toBeCloseTo(hot, 8);
        const back = temperatureFromResistance({ ...one, hotResistance: hot, ...moved });
        expect(back).toBeCloseTo(to, 6);
      }),
      RUNS,
    );
  });

  // Materials memo, pitfall 4: α0 in place of α20 is 1.5 % off at 75 °C.
  it("0 °C and 20 °C must not be mixed up", () => {
    const right = 1 + 0.00393 * 55;
    const mixed = 1 + 0.00427 * 55;
    expect(mixed / right - 1).toBeCloseTo(0.015, 3);
    const at0 = temperatureCoefficientAt({
      coefficient: perKelvin(0.00393),
      reference: celsius(20),
      at: celsius(0),
    });
    expect(at0).toBeCloseTo(0.00427, 5);
  });

  it("refuse a line without resistance and a coefficient of 0 backwards", () => {
    const metal = { coefficient: perKelvin(0.00393), reference: celsius(20) };
    expect(codeOf(() => temperatureCoefficientAt({ ...metal, at: celsius(-240) }))).toBe("out-of-range");
    const two = { resistance: ohms(1), from: celsius(20), hotResistance: ohms(2) };
    expect(codeOf(() => temperatureFromResistance({ ...two, ...metal, coefficient: perKelvin(0) }))).toBe(
      "not-identifiable",
    );
    expect(codeOf(() => temperatureFromResistance({ ...two, ...metal, hotResistance: ohms(0) }))).toBe(
      "out-of-range",
    );
    const moved = { resistance: ohms(1), from: celsius(20), to: celsius(90) };
    expect(codeOf(() => resistanceAtTemperature({ ...moved, ...metal, resistance: ohms(-1) }))).toBe(
      "out-of-range",
    );
    expect(
      codeOf(() =>
        resistanceAtTemperature({ ...moved, ...metal, coefficient: undefined as unknown as PerKelvin }),
      ),
    ).toBe("missing");
    expect(
      codeOf(() => zeroResistanceTemperature({ coefficient: perKelvin(0), reference: celsius(20) })),
    ).toBe("out-of-range");
  });

  it("the laws of IEC 60228 and of copper are named, 1 at 20 °C, and 0.4 %% apart at 90 °C", () => {
    for (const law of ["IEC 60228", "copper", "aluminum"] as const) {
      expect(referenceFactor({ temperature: celsius(20), law }).value).toBe(1);
    }
    const at90 = (law: "IEC 60228" | "copper") => referenceFactor({ temperature: celsius(90), law }).value;
    expect(at90("copper") / at90("IEC 60228") - 1).toBeCloseTo(0.004, 3);
    // IEC 60889: 0.00403 1/K; worked by hand: 1 / (1 + 0.00403 × 70).
    expect(referenceFactor({ temperature: celsius(90), law: "aluminum" }).value).toBeCloseTo(0.77997, 5);
    const basisOf = (law: "IEC 60228" | "copper") => referenceFactor({ temperature: celsius(20), law }).basis;
    expect(basisOf("IEC 60228")).toMatchObject({
      source: "iec-60228",
      kind: "published",
      edition: "2004, annex",
    });
    expect(basisOf("copper")).toMatchObject({ source: "iec-60028", kind: "definition", table: "copper" });
    const limit = (t: number) =>
      referenceFactor({ temperature: celsius(t), law: "IEC 60228" }).warnings[0]?.limit;
    expect([limit(0), limit(150)]).toEqual([5, 100]);
    const code = (t: number) =>
      referenceFactor({ temperature: celsius(t), law: "IEC 60228" }).warnings.map((one) => one.code);
    expect([code(5), code(100), code(4.99), code(100.01)]).toEqual([
      [],
      [],
      ["outside-validity"],
      ["outside-validity"],
    ]);
    expect(codeOf(() => referenceFactor({ temperature: celsius(201), law: "copper" }))).toBe("out-of-range");
    expect(codeOf(() => referenceFactor({ temperature: celsius(20), law: "Cu" as "copper" }))).toBe(
      "unknown-name",
    );
  });
});

describe("nickel-coated copper", () => {
  it("conducts between its core alone and pure copper, less with more nickel", () => {
    const temperatures = fc.double({ min: 20, max: 500, noNaN: true });
    fc.assert(
      fc.property(temperatures, (t) => {
        const temperature = celsius(t);
        const copper = conductorResistivity({ conductor: COPPER_IACS, temperature }).value;
        let before = copper;
        for (const one of [2, 4, 7, 10, 27] as const) {
          const ignored = coatedCopperResistivity({ class: one, nickel: "ignored", temperature }).value;
          const parallel = coatedCopperResistivity({ class: one, nickel: "parallel", temperature }).value;
          expect(parallel).toBeLessThan(ignored);
          expect(parallel).toBeGreaterThan(copper);
          expect(ignored).toBeGreaterThan(before);
          before = ignored;
        }
      }),
      RUNS,
    );
  });

  it("refuses other classes and temperatures that nickel has no figure for", () => {
    const asked = { nickel: "ignored", temperature: celsius(20) } as const;
    expect(codeOf(() => coatedCopperResistivity({ ...asked, class: 5 as 4 }))).toBe("unknown-name");
    expect(codeOf(() => coatedCopperResistivity({ ...asked, class: 4, nickel: "some" as "ignored" }))).toBe(
      "unknown-name",
    );
    const hot = { class: 27, nickel: "parallel", temperature: celsius(501) } as const;
    expect(codeOf(() => coatedCopperResistivity(hot))).toBe("outside-table");
    expect(coatedCopperResistivity({ ...hot, nickel: "ignored" }).warnings[0]?.code).toBe("outside-validity");
  });
});

describe("opinions and classes", () => {
  // Materials memo, pitfall 8: 60/15 from 1000 to 1150 °C.
  it("show every source's highest temperature, lowest first", () => {
    const found = highestElementTemperatures("NiCr 60/15");
    expect((found.at(-1)?.value as number) - (found[0]?.value as number)).toBe(150);
    expect(new Set(found.map(({ basis }) => basis.source)).size).toBeGreaterThanOrEqual(4);
    expect(codeOf(() => highestElementTemperatures("nichrome" as "NiCr 80/20"))).toBe("unknown-name");
    expect(highestElementTemperatures("FeCrAl 22/5.8 powder")).toEqual([]);
  });

  it("classes hold their nominal resistivity, and nothing holds copper", () => {
    // JIS class 1 NiCr 108 µΩ·cm; ASTM B603 class I 825 to 920 Ω·cmil/ft.
    expect(classesOfResistivity(microohmMeters(1.08)).map(({ name }) => name)).toContain("NiCr class 1");
    expect(classesOfResistivity(microohmMeters(1.45)).map(({ name }) => name)).toContain("class I");
    expect(classesOfResistivity(microohmMeters(0.0172))).toEqual([]);
    for (const { name, lowest, highest } of resistivityClasses()) {
      const fits = (value: number) =>
        classesOfResistivity(value as OhmMeters).some((one) => one.name === name);
      expect([lowest * 0.9999, lowest, highest, highest * 1.0001].map(fits), name).toEqual([
        false,
        true,
        true,
        false,
      ]);
    }
    expect(codeOf(() => classesOfResistivity(0 as OhmMeters))).toBe("out-of-range");
  });

  it("emissivity needs words that match, in any order and case", () => {
    expect(emissivity("polished COPPER")).toEqual(emissivity("copper polished"));
    expect(codeOf(() => emissivity(""))).toBe("missing");
    expect(codeOf(() => emissivity("copper invisible"))).toBe("unknown-name");
    expect(codeOf(() => emissivity(0.9 as unknown as string))).toBe("wrong-type");
    const nicr = emissivity("80Ni-20Cr oxidized");
    const fecral = emissivity("FeCrAl oxidized");
    // Materials memo, pitfall 9: 0.70 against 0.88.
    expect(nicr.lowest - fecral.highest).toBeGreaterThan(0.1);
  });
});
