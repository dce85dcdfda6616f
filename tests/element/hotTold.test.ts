/** What a hot element's refusals and warnings tell: figure, unit, limit and whose it is. The figures are those of the case. */
import {
  elementOnVoltage,
  heatBalance,
  operatingPoint,
  radiantStrip,
  radiantSurfaceLoad,
  radiantTemperature,
  radiantTemperatureAtVoltage,
  radiantWire,
  standardWhatIfs,
  surfaceTemperature,
  surfaceTemperatureWhatIfs,
} from "electroheat/element";
import { alloyDataset } from "electroheat/material";
import {
  amperes,
  type Celsius,
  celsius,
  kelvins,
  meters,
  metersPerSecond,
  microohmMeters,
  millimeters,
  ohms,
  pascals,
  volts,
  type Warning,
  watts,
  wattsPerSquareCentimeter,
  wattsPerSquareMeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const refusal = (call: () => unknown) => {
  const [issue] = caught(call).issues;
  return [issue?.code, issue?.path, issue?.expected, issue?.received, issue?.unit];
};
const facts = ({ message: _, ...rest }: Warning) => rest;
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
    const [, low, high] = /^(\S+) to (\S+), so that/.exec(expected) ?? [];
    expect(Number(low)).toBeCloseTo(2 * COLDEST - 20, 4);
    expect(Number(high)).toBeCloseTo(2 * HOTTEST - 20, 4);
    expect(refusal(at(-500)).slice(0, 2)).toEqual(["outside-table", "surfaceTemperature"]);
    // One correlation reads the air at the surface itself, while there is a flow.
    const direct = refusal(at(6000, { forcedCorrelation: "zukauskas" }))[2] ?? "";
    expect(Number(/ to (\S+),/.exec(direct)?.[1])).toBeCloseTo(HOTTEST, 4);
    const still =
      refusal(at(6000, { forcedCorrelation: "zukauskas", airSpeed: metersPerSecond(0) }))[2] ?? "";
    expect(Number(/ to (\S+),/.exec(still)?.[1])).toBeCloseTo(2 * HOTTEST - 20, 4);
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

describe("the temperature at a load", () => {
  it("beyond what air and alloy are known for is told with its ends and its side", () => {
    const at =
      (load: number, change: object = {}) =>
      () =>
        surfaceTemperature({ ...cooling, ...change, surfaceLoad: wattsPerSquareMeter(load) });
    const [code, path, expected = "", , unit] = refusal(at(1e9));
    expect([code, path, unit]).toEqual(["outside-table", "surfaceTemperature", "°C"]);
    expect(expected).toMatch(/^a surface from 20 to 2433\.69\d*, .*lies above$/);
    expect(refusal(at(-1)).slice(0, 3)).toEqual(["out-of-range", "surfaceLoad", "0 or more"]);
    expect(refusal(at(-1))[4]).toBe("W/m²");
    expect(refusal(at(1, { surroundingsTemperature: Number.NaN })).slice(0, 2)).toEqual([
      "not-a-number",
      "surroundingsTemperature",
    ]);
    expect(refusal(at(1, { surroundingsTemperature: Number.NaN }))[4]).toBe("°C");
    // Without a load and with like surroundings the element stands at them, and no part of nothing is radiated.
    expect(at(0)()).toMatchObject({
      surfaceTemperature: 20,
      surfaceLoad: 0,
      radiationShare: null,
      warnings: [],
    });
    // Walls hotter than the element: heat flows the other way, so there is no share.
    expect(at(100, { surroundingsTemperature: celsius(200) })()).toMatchObject({ radiationShare: null });
    const plain = at(20_000)();
    expect(plain.radiationShare).toBeCloseTo(plain.radiation / plain.surfaceLoad, 14);
    expect(plain.band.convectionTolerance).toBe(0.15);
    expect(plain.deferral).toMatch(/licensed electrician/);
  });

  it("has a band from each correlation, 15 % of convection up and down", () => {
    const found = surfaceTemperature({ ...cooling, surfaceLoad: wattsPerSquareCentimeter(5) });
    const others = found.band.others.map(({ surfaceTemperature: t }) => t as number);
    expect(found.band.others.map(({ correlation }) => correlation)).toEqual(["hilpert", "zukauskas"]);
    // Each of them alone is what it gives when it is asked for.
    (["hilpert", "zukauskas"] as const).forEach((forcedCorrelation, i) => {
      const alone = surfaceTemperature({
        ...cooling,
        forcedCorrelation,
        surfaceLoad: wattsPerSquareCentimeter(5),
      });
      expect(others[i]).toBeCloseTo(alone.surfaceTemperature, 5);
    });
    // 15 % less of its convection at the hot end: the least of all balances closes there.
    const convection = (
      surface: number,
      forcedCorrelation: "churchill-bernstein" | "hilpert" | "zukauskas",
    ) => {
      const { convection: h, radiation } = heatBalance({
        ...cooling,
        forcedCorrelation,
        surfaceTemperature: surface as Celsius,
      });
      return { h, radiation };
    };
    const loads = (surface: number, part: number) =>
      (["churchill-bernstein", "hilpert", "zukauskas"] as const).map((one) => {
        const { h, radiation } = convection(surface, one);
        return part * h + radiation;
      });
    expect(Math.min(...loads(found.band.high as number, 0.85))).toBeCloseTo(50_000, 1);
    expect(Math.max(...loads(found.band.low as number, 1.15))).toBeCloseTo(50_000, 1);
  });

  it("of what if tells the cases by name and in order", () => {
    expect(
      standardWhatIfs().map(({ name, powerRatio, airSpeedRatio }) => [
        name.length > 5,
        Number(powerRatio.toFixed(9)),
        airSpeedRatio,
      ]),
    ).toEqual([
      [true, 1, 1],
      [true, 1.44, 1],
      [true, 0.64, 1],
      [true, 1, 0.8],
      [true, 1, 0],
      [true, 1.44, 1],
    ]);
    const at =
      (change: object, load = 20_000) =>
      () =>
        surfaceTemperatureWhatIfs({
          ...cooling,
          surfaceLoad: wattsPerSquareMeter(load),
          cases: [
            { name: "a", powerRatio: 1, airSpeedRatio: 1 },
            { name: "b", powerRatio: 1, airSpeedRatio: 1, ...change },
          ],
        });
    expect(refusal(at({ powerRatio: -1 })).slice(0, 3)).toEqual([
      "out-of-range",
      "cases.1.powerRatio",
      "0 or more",
    ]);
    expect(refusal(at({ airSpeedRatio: -1 })).slice(0, 3)).toEqual([
      "out-of-range",
      "cases.1.airSpeedRatio",
      "0 or more",
    ]);
    expect(refusal(at({}, 0))).toEqual(["out-of-range", "surfaceLoad", "more than 0", "0", "W/m²"]);
    // A slip that is no end of a table is not a case's result.
    expect(() =>
      surfaceTemperatureWhatIfs({
        ...cooling,
        emissivity: 2,
        surfaceLoad: wattsPerSquareMeter(1),
        cases: standardWhatIfs(),
      }),
    ).toThrow(/emissivity/);
  });
});

describe("an element on a voltage", () => {
  const dataset = alloyDataset("nicr-80-20-gb");
  const element = {
    ...cooling,
    dataset,
    voltage: volts(230),
    coldResistance: ohms(53),
    heatedLength: meters(5),
  };
  const on = (change: object) => () => elementOnVoltage({ ...element, ...change });

  it("asks how much hotter a sheathed wire is, and nothing of a bare one", () => {
    const tube = { shape: "tube", diameter: millimeters(8), heatedLength: meters(1.2) };
    const [code, path, , , unit] = refusal(on(tube));
    expect([code, path, unit]).toEqual(["missing", "wireExcess", "K"]);
    expect(refusal(on({ ...tube, wireExcess: kelvins(-1) }))).toEqual([
      "out-of-range",
      "wireExcess",
      "0 or more",
      "-1",
      "K",
    ]);
    expect(on({ ...tube, wireExcess: kelvins(0) })().wireTemperature).toBe(
      on({ ...tube, wireExcess: kelvins(0) })().balance.surfaceTemperature,
    );
    const bare = refusal(on({ wireExcess: kelvins(5) }));
    expect([bare[0], bare[1], bare[3], bare[4]]).toEqual(["inconsistent", "wireExcess", "5", "K"]);
    expect(bare[2]).toMatch(/^0 for bare wire/);
    expect(on({ wireExcess: kelvins(0) })()).toEqual(on({})());
    for (const [change, argument, told] of [
      [{ voltage: 0 }, "voltage", "V"],
      [{ coldResistance: 0 }, "coldResistance", "Ω"],
      [{ heatedLength: 0 }, "heatedLength", "m"],
      [{ diameter: 0 }, "diameter", "m"],
      [{ shape: "rod" }, "shape", undefined],
      [{ dataset: undefined }, "dataset.temperatureFactor", undefined],
    ] as const) {
      const found = refusal(on(change));
      expect([found[1], found[4]]).toEqual([argument, told]);
    }
    expect(refusal(on({ dataset: { id: "x", alloy: "NiCr 80/20" } }))[2]).toBe("a dataset with a Ct table");
  });

  it("tells which end passes the dataset's limit, and when that end is not known", () => {
    const basis = { source: "maker-x", edition: "x", table: "x", kind: "user table" } as const;
    const limited = (value: number, change: object = {}) =>
      on({
        ...change,
        dataset: { ...dataset, maximumElementTemperature: { value: celsius(value), basis } },
      })();
    const { wireTemperature, balance } = limited(1200);
    const high = balance.band.high as number;
    expect(high).toBeGreaterThan(wireTemperature);
    expect(limited(high + 0.01).warnings).toEqual([]);
    const told = (value: number) => {
      const [warning, ...more] = limited(value).warnings as [Warning];
      expect(more).toEqual([]);
      expect(facts(warning)).toEqual({
        code: "caution",
        path: "wireTemperature",
        limit: value,
        unit: "°C",
        source: "maker-x",
      });
      return warning.message;
    };
    const tail = (value: number) =>
      ` above ${value} °C, the highest element temperature of dataset nicr-80-20-gb`;
    const between = Math.floor((wireTemperature + high) / 2);
    expect(told(between)).toBe(`the hot end of the band reaches ${Math.round(high)} °C,${tail(between)}`);
    expect(told(100)).toBe(`the wire reaches ${Math.round(wireTemperature)} °C${tail(100)}`);
    // So hot that 15 % less convection leaves the Ct table.
    let [low, top] = [230, 2000];
    while (top - low > 0.1) {
      const middle = (low + top) / 2;
      try {
        elementOnVoltage({ ...element, voltage: volts(middle) });
        low = middle;
      } catch {
        top = middle;
      }
    }
    const open = limited(1500, { voltage: volts(low) });
    expect(open.balance.band.high).toBeNull();
    expect(open.warnings[0]?.message).toBe(`the hot end of the band is not known and may lie${tail(1500)}`);
    expect(
      open.balance.warnings.some(({ path, message }) => path === "band" && /^the hot end/.test(message)),
    ).toBe(true);
    const { maximumElementTemperature: _, ...silent } = dataset;
    expect(on({ dataset: silent })().warnings.map(facts)).toEqual([
      { code: "caution", path: "wireTemperature" },
    ]);
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
