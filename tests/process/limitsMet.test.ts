/** Limits of the room met exactly, and what is said of either side: by the first law, or by what the source table reaches. */
import * as room from "electroheat/process";
import {
  celsius,
  joulesPerKilogramKelvin,
  kilograms,
  kilogramsPerSecond,
  kilojoulesPerKelvin,
  kilowatts,
  type Seconds,
  watts,
  wattsPerKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const oven: room.OvenPlan = {
  ambient: celsius(20),
  lossConductance: wattsPerKelvin(40),
  structure: kilojoulesPerKelvin(200),
};

describe("a set point", () => {
  const refused = (start: number | undefined, target: number) =>
    caught(() =>
      room.ovenHeatUp({
        oven,
        power: kilowatts(12),
        target: celsius(target),
        ...(start === undefined ? {} : { start: celsius(start) }),
      }),
    ).message;

  it("is above the start where that is the warmer, and above ambient else", () => {
    expect(refused(60, 60)).toContain("the start, 60");
    expect(refused(60, 45)).toContain("the start, 60");
    expect(refused(undefined, 20)).toContain("ambient, 20");
    expect(refused(20, 20)).toContain("ambient, 20");
    expect(refused(5, 10)).toContain("ambient, 20");
  });
});

describe("an oven on the edge of what its power holds", () => {
  // 40 W/K × (220 − 20) K = 8 kW hold 220 °C for ever, and it is never reached (first law).
  const at = (power: number) => room.ovenHeatUp({ oven, power: watts(power), target: celsius(220) });

  it("never gets there at the holding power itself, and does above it", () => {
    expect(at(8000)).toMatchObject({ reached: false, time: "never", ultimate: 220, holdingPower: 8000 });
    expect(at(8000.001).reached).toBe(true);
  });

  it("stays where it is at that power, whichever way a watt more or less takes it", () => {
    const hotAfter = (power: number) =>
      room.ovenAfter({ oven, power: watts(power), time: 3600 as Seconds, start: celsius(220) }).temperature;
    expect(hotAfter(8000)).toBeCloseTo(220, 9);
    // T = 220 + ΔP/G·(1 − exp(−t·G/C)).
    const share = 1 - Math.exp((-3600 * 40) / 200e3);
    for (const more of [-1000, 1000]) expect(hotAfter(8000 + more)).toBeCloseTo(220 + (more / 40) * share, 6);
  });
});

describe("steel below its law", () => {
  const heat = (temperature: number, beyondTable?: "extrapolate") =>
    room.steelSpecificHeat({ temperature: celsius(temperature), ...(beyondTable ? { beyondTable } : {}) });
  /** EN 1993-1-2, 3.4.1.2, first branch. */
  const law = (t: number) => 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;

  it("is continued down to −50 °C where asked, and not without", () => {
    for (const t of [-50, -20, 0, 19]) {
      expect(heat(t, "extrapolate")).toBeCloseTo(law(t), 9);
      expect(caught(() => heat(t)).issues[0]?.expected).toContain("20 to 1200");
    }
    expect(caught(() => heat(-50.01, "extrapolate")).issues[0]?.expected).toContain("-50 to 1200");
  });

  it("heats an oven from there too", () => {
    const cold: room.OvenPlan = {
      ambient: celsius(-40),
      lossConductance: wattsPerKelvin(0),
      loads: [{ mass: kilograms(100), specificHeat: "carbon steel" }],
    };
    const plan = { power: kilowatts(10), target: celsius(100) };
    expect(caught(() => room.ovenHeatUp({ oven: cold, ...plan }))).toMatchObject({
      code: "outside-table",
      argument: "start",
    });
    const found = room.ovenHeatUp({ oven: { ...cold, beyondTable: "extrapolate" }, ...plan });
    // The integral of the law between the two, by Simpson, which is exact for a cubic.
    const integral = ((100 + 40) / 6) * (law(-40) + 4 * law(30) + law(100));
    expect(found.time).toBeCloseTo((100 * integral) / 10e3, 3);
    expect(found.warnings.length).toBeGreaterThan(0);
  });
});

describe("air above the middle of its table", () => {
  const flow = { basis: "mass", massFlow: kilogramsPerSecond(0.1) } as const;
  const at = (power: number, specificHeat?: number) =>
    room.airOutlet({
      power: kilowatts(power),
      flow,
      inlet: celsius(20),
      ...(specificHeat === undefined ? {} : { specificHeat: joulesPerKilogramKelvin(specificHeat) }),
    });
  const limits = (found: { readonly warnings: readonly { readonly limit?: number }[] }) =>
    found.warnings.map(({ limit }) => limit);

  it("is doubted above 926.85 °C where the table is used, and past its end where it is not", () => {
    for (const power of [20, 60, 95, 100, 104, 110, 130]) {
      const found = at(power);
      expect(limits(found)).toEqual(found.outlet > 926.85 ? [926.85] : []);
    }
    expect(at(130).outlet).toBeGreaterThan(926.85);
    // 0.1 kg/s of 1000 J/(kg·K): 100 W for each kelvin.
    expect(limits(at(100, 1000))).toEqual([]);
    expect(at(100, 1000).outlet).toBeCloseTo(1020, 9);
    expect(limits(at(120.685, 1000))).toEqual([]);
    expect(limits(at(120.687, 1000))).toEqual([1226.85]);
  });

  it("is said to be less, or at more volts, by the name of what was changed", () => {
    const paths = (change: object) =>
      room
        .airWhatIf({ power: kilowatts(10), flow, inlet: celsius(20), ...change })
        .warnings.map(({ path }) => path);
    expect(paths({})).toEqual([]);
    expect(paths({ flowRatio: 0.8 })).toEqual(["flowRatio"]);
    expect(paths({ voltageRatio: 1.1 })).toEqual(["voltageRatio"]);
    expect(paths({ flowRatio: 0.8, voltageRatio: 1.1 })).toEqual(["flowRatio"]);
    expect(paths({ flowRatio: 1.2, voltageRatio: 0.9 })).toEqual([]);
    expect(paths({ powerRatio: 1.2 })).toEqual(["powerRatio"]);
  });
});

describe("a bare piece", () => {
  it("never gets past the temperature at which it takes nothing up", () => {
    const at = (start: number, target: number) =>
      room.pieceHeatingTime({
        density: 7850,
        specificHeat: 490,
        characteristicLength: 0.005,
        filmCoefficient: 20,
        emissivity: 0.8,
        air: 200,
        walls: 200,
        start,
        target,
      } as unknown as Parameters<typeof room.pieceHeatingTime>[0]);
    expect(at(20, 199).reached).toBe(true);
    expect(at(20, 200)).toMatchObject({ reached: false, time: "never", steady: 200 });
    expect(at(300, 201).reached).toBe(true);
    expect(at(300, 200)).toMatchObject({ reached: false, time: "never", steady: 200 });
    // Away from the steady state, from either side and from itself.
    for (const [start, target] of [
      [200, 210],
      [200, 190],
      [250, 260],
      [150, 140],
    ] as const)
      expect(at(start, target).reached).toBe(false);
    expect(at(150, 150)).toMatchObject({ reached: true, time: 0 });
  });
});

describe("vapor of a solvent", () => {
  it("takes the molar volume of an ideal gas, 22.413969545e-3 m³/mol at 0 °C and 101325 Pa (CODATA), at 70 °F", () => {
    const molar = (22.413969545e-3 * (273.15 + 38 / 1.8)) / 273.15;
    for (const [liquidDensity, molarMass] of [
      [867, 0.09214],
      [790, 0.05808],
    ] as const) {
      const ratio = room.solventVaporRatio({ liquidDensity, molarMass } as never);
      expect(ratio / ((liquidDensity / molarMass) * molar)).toBeCloseTo(1, 9);
    }
  });
});
