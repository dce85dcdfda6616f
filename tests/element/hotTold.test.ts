/** What a hot element's refusals and warnings tell: figure, unit, limit and whose it is. The figures are those of the case. */
import {
  elementOnVoltage,
  heatBalance,
  standardWhatIfs,
  surfaceTemperature,
  surfaceTemperatureWhatIfs,
} from "electroheat/element";
import { alloyDataset } from "electroheat/material";
import {
  type Celsius,
  celsius,
  kelvins,
  meters,
  metersPerSecond,
  millimeters,
  ohms,
  pascals,
  volts,
  type Warning,
  wattsPerSquareCentimeter,
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

describe("the temperature at a load", () => {
  it("beyond what air and alloy are known for is told with its ends and its side", () => {
    const at =
      (load: number, change: object = {}) =>
      () =>
        surfaceTemperature({ ...cooling, ...change, surfaceLoad: wattsPerSquareMeter(load) });
    const [code, path, expected = "", , unit] = refusal(at(1e9));
    expect([code, path, unit]).toEqual(["outside-table", "surfaceTemperature", "°C"]);
    expect(expected).toMatch(/^a surface from 20 to 2433\.69\d* °C, .*lies above$/);
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
    expect(bare[2]).toMatch(/^0 K for bare wire/);
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
