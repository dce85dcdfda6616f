/** Radiation and the balance at a temperature: at their ends, and what is told beyond. Figures by the law beside them. */
import {
  heatBalance,
  operatingPoint,
  radiantStrip,
  radiantSurfaceLoad,
  radiantTemperature,
  radiantTemperatureAtVoltage,
  radiantWire,
} from "electroheat/element";
import {
  amperes,
  type Celsius,
  celsius,
  metersPerSecond,
  microohmMeters,
  millimeters,
  ohms,
  pascals,
  volts,
  type Warning,
  watts,
  wattsPerSquareMeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { facts, refusal } from "../support/told.ts";

const cooling = {
  shape: "wire" as const,
  diameter: millimeters(2),
  airTemperature: celsius(20),
  airSpeed: metersPerSecond(3),
  pressure: pascals(100_000),
  surroundingsTemperature: celsius(20),
  emissivity: 0.88,
  radiatingEfficiency: 1,
};
/** First and last temperature of the air table (Incropera, table A.4): 250 K and 1500 K. */
const [COLDEST, HOTTEST] = [250 - 273.15, 1500 - 273.15];

describe("radiation", () => {
  const surface = { emissivity: 0.9, radiatingEfficiency: 0.57 };

  it("is told absolute zero where it is, and where a textbook puts it", () => {
    const at = (temperature: number, zeroCelsius?: number) => () =>
      radiantSurfaceLoad({
        ...surface,
        temperature: temperature as Celsius,
        surroundingsTemperature: celsius(-100),
        ...(zeroCelsius === undefined ? {} : { zeroCelsius }),
      });
    // Nothing comes from 0 K: what is left is the other side's σ·K·ε·T⁴.
    expect(at(-273.15)()).toBeCloseTo(-0.9 * 0.57 * 5.670374419e-8 * 173.15 ** 4, 6);
    expect(refusal(at(-273.2))).toEqual(["out-of-range", "temperature", "-273.15 or more", "-273.2", "°C"]);
    expect(refusal(at(-273.1, 273))).toEqual(["out-of-range", "temperature", "-273 or more", "-273.1", "°C"]);
    expect(
      refusal(() => radiantTemperatureAtVoltage({ temperature: -274 as Celsius, voltageRatio: 1 }))[1],
    ).toBe("temperature");
    const cold = () =>
      radiantTemperature({
        ...surface,
        surfaceLoad: wattsPerSquareMeter(1),
        surroundingsTemperature: -274 as Celsius,
      });
    expect(refusal(cold).slice(0, 3)).toEqual(["out-of-range", "surroundingsTemperature", "-273.15 or more"]);
    for (const [change, path, unit] of [
      [{ emissivity: 0 }, "emissivity", undefined],
      [{ emissivity: 1.01 }, "emissivity", undefined],
      [{ radiatingEfficiency: 0 }, "radiatingEfficiency", undefined],
      [{ radiatingEfficiency: 1.01 }, "radiatingEfficiency", undefined],
      [{ stefanBoltzmann: 0 }, "stefanBoltzmann", "W/(m²·K⁴)"],
      [{ zeroCelsius: 0 }, "zeroCelsius", "K"],
    ] as const) {
      const input = {
        ...surface,
        temperature: celsius(900),
        surroundingsTemperature: celsius(20),
        ...change,
      };
      const [code, argument, , , told] = refusal(() => radiantSurfaceLoad(input));
      expect([code, argument, told]).toEqual(["out-of-range", path, unit]);
    }
    // A black body that radiates whole is the limit, and is taken.
    const black = {
      emissivity: 1,
      radiatingEfficiency: 1,
      temperature: celsius(0),
      surroundingsTemperature: celsius(-273.15),
    };
    expect(radiantSurfaceLoad(black)).toBeCloseTo(5.670374419e-8 * 273.15 ** 4, 9);
  });

  it("heats nothing that is as hot as the element", () => {
    const duty = {
      power: watts(16_000),
      voltage: volts(220),
      resistivity: microohmMeters(1.09),
      ...surface,
      chargeTemperature: celsius(830),
    };
    const wire = (t: number) => () => radiantWire({ ...duty, wireTemperature: celsius(t) });
    const strip = (t: number) => () =>
      radiantStrip({ ...duty, thickness: millimeters(0.25), stripTemperature: celsius(t) });
    for (const [call, path] of [
      [wire, "wireTemperature"],
      [strip, "stripTemperature"],
    ] as const) {
      expect(call(831)).not.toThrow();
      for (const t of [830, 800])
        expect(refusal(call(t))).toEqual([
          "inconsistent",
          path,
          "more than the charge temperature, 830",
          String(t),
          "°C",
        ]);
    }
    // As many watts over the surface as the load says: P = π·d·L·p.
    const { diameter, length, surfaceLoad } = wire(1170)();
    expect(Math.PI * diameter * length * surfaceLoad).toBeCloseTo(16_000, 6);
  });
});

describe("the balance at a temperature", () => {
  const at =
    (surface: number, change: object = {}) =>
    () =>
      heatBalance({ ...cooling, ...change, surfaceTemperature: surface as Celsius });

  it("is told as far as the film stays within the air table", () => {
    // The film is the mean of surface and air: 2·end − air.
    const [, path, expected = "", received, unit] = refusal(at(6000));
    expect([path, received, unit]).toEqual(["surfaceTemperature", "6000", "°C"]);
    const [, low, high] = /^(\S+) to (\S+) °C, so that/.exec(expected) ?? [];
    expect(Number(low)).toBeCloseTo(2 * COLDEST - 20, 4);
    expect(Number(high)).toBeCloseTo(2 * HOTTEST - 20, 4);
    expect(refusal(at(-500)).slice(0, 2)).toEqual(["outside-table", "surfaceTemperature"]);
    // One correlation reads the air at the surface itself, while there is a flow.
    const direct = refusal(at(6000, { forcedCorrelation: "zukauskas" }))[2] ?? "";
    expect(Number(/ to (\S+) °C,/.exec(direct)?.[1])).toBeCloseTo(HOTTEST, 4);
    const still =
      refusal(at(6000, { forcedCorrelation: "zukauskas", airSpeed: metersPerSecond(0) }))[2] ?? "";
    expect(Number(/ to (\S+) °C,/.exec(still)?.[1])).toBeCloseTo(2 * HOTTEST - 20, 4);
  });

  it("needs air that the table has", () => {
    for (const air of [COLDEST - 1, HOTTEST + 1]) {
      const [code, path, expected = "", received, unit] = refusal(at(100, { airTemperature: air }));
      expect([code, path, received, unit]).toEqual(["outside-table", "airTemperature", String(air), "°C"]);
      expect(expected).toMatch(/\(table air-incropera-a4\)$/);
    }
    for (const [change, path, unit] of [
      [{ shape: "rod" }, "shape", undefined],
      [{ diameter: 0 }, "diameter", "m"],
      [{ airTemperature: Number.NaN }, "airTemperature", "°C"],
      [{ airSpeed: -1 }, "airSpeed", "m/s"],
      [{ pressure: 0 }, "pressure", "Pa"],
      [{ forcedCorrelation: "other" }, "forcedCorrelation", undefined],
      [{ freeCorrelation: "other" }, "freeCorrelation", undefined],
    ] as const) {
      const [, argument, , , told] = refusal(at(100, change));
      expect([argument, told]).toEqual([path, unit]);
    }
    expect(refusal(at(Number.NaN)).slice(0, 2)).toEqual(["not-a-number", "surfaceTemperature"]);
    expect(refusal(at(Number.NaN))[4]).toBe("°C");
  });

  it("adds up, and has no sign where air, walls and surface are alike", () => {
    const even = at(20)();
    expect([even.convection, even.radiation, even.surfaceLoad, even.rayleigh]).toEqual([0, 0, 0, 0]);
    for (const part of [even.convection, even.radiation, even.surfaceLoad])
      expect(Object.is(part, -0)).toBe(false);
    const hot = at(420)();
    expect(hot.filmTemperature).toBe(220);
    expect(hot.convection).toBeCloseTo((hot.filmCoefficient as number) * 400, 6);
    // Grey radiation: ε·σ·(T⁴ − T₀⁴).
    expect(hot.radiation).toBeCloseTo(0.88 * 5.670374419e-8 * (693.15 ** 4 - 293.15 ** 4), 6);
    // Gr/Re² = g·ΔT·d/(T·v²) (definition).
    expect(hot.buoyancyRatio).toBeCloseTo((9.80665 * 400 * 0.002) / (493.15 * 9), 8);
  });

  it("counts buoyancy and flow together from a tenth to ten, both ends, and tells both figures", () => {
    // The speed at which Gr/Re² is what is asked for.
    const ratio = (wanted: number) =>
      at(420, { airSpeed: metersPerSecond(Math.sqrt((9.80665 * 400 * 0.002) / (493.15 * wanted))) })();
    for (const [wanted, mixed] of [
      [0.0999, false],
      [0.1001, true],
      [1, true],
      [9.999, true],
      [10.001, false],
    ] as const) {
      const found = ratio(wanted);
      expect(found.buoyancyRatio).toBeCloseTo(wanted, 8);
      expect(found.regime === "mixed", String(wanted)).toBe(mixed);
      expect(found.warnings.some(({ path }) => path === "airSpeed")).toBe(mixed);
    }
    const { warnings, freeCoefficient, forcedCoefficient } = ratio(1.23456);
    const [warning] = warnings as [Warning];
    expect(facts(warning)).toEqual({ code: "approximate", path: "airSpeed", source: "incropera-heat" });
    const three = (value: number | null) => Number((value ?? 0).toPrecision(3));
    expect(warning.message).toContain(
      `Gr/Re² is 1.23: buoyancy (${three(freeCoefficient)} W/(m²·K)) and air flow (${three(forcedCoefficient)} W/(m²·K))`,
    );
  });

  it("cautions above 1400 °C, not at it, and of a coil", () => {
    const own = (surface: number, change: object = {}) =>
      at(surface, change)().warnings.filter(({ path }) => path !== "temperature");
    expect(own(1400)).toEqual([]);
    const [hot] = own(1412.34) as [Warning];
    expect(facts(hot)).toEqual({
      code: "caution",
      path: "surfaceTemperature",
      limit: 1400,
      unit: "°C",
      source: "maker-a-handbook",
    });
    expect(hot.message).toMatch(/^1410 °C is above .* 1400 °C$/);
    expect(own(400, { shape: "coil" }).map(facts)).toEqual([
      { code: "caution", path: "shape", source: "resistance-wire-design-notes" },
    ]);
    expect(own(400, { shape: "tube" })).toEqual([]);
  });
});

describe("a working point beyond float64", () => {
  it.each([
    ["W", { current: amperes(1e160), resistance: ohms(1) }],
    ["W", { voltage: volts(1e160), resistance: ohms(1) }],
    ["V", { power: watts(1e300), current: amperes(1e-300) }],
    ["A", { power: watts(1e300), voltage: volts(1e-300) }],
    ["Ω", { voltage: volts(1e300), current: amperes(1e-300) }],
  ] as const)("is refused in %s", (unit, input) => {
    expect(refusal(() => operatingPoint(input)).slice(0, 2)).toEqual(["out-of-range", "result"]);
    expect(refusal(() => operatingPoint(input))[4]).toBe(unit);
  });
});
