/** Integrations and closed forms against an independent ODE package (odex) and against each other. */
import { bracketedRoot, integrateOde } from "electroheat/numeric";
import {
  type OvenPlan,
  ovenAfter,
  ovenHeatUp,
  ovenTemperature,
  pieceHeatingTime,
  radiantHeat,
  steelSpecificHeat,
  twoNodeHeatUp,
  twoNodeTemperatures,
} from "electroheat/process";
import {
  type Celsius,
  celsius,
  cubicMeters,
  hours,
  joulesPerKilogramKelvin,
  kilograms,
  kilogramsPerCubicMeter,
  kilojoulesPerKelvin,
  kilowatts,
  millimeters,
  pascals,
  seconds,
  squareMeters,
  type Watts,
  watts,
  wattsPerKelvin,
  wattsPerSquareMeterKelvin,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { odexState } from "../support/odex.ts";

/** Stefan-Boltzmann constant, CODATA 2022. */
const SIGMA = 5.670374419e-8;
const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);
const at = (state: readonly number[], i = 0): number => state[i] as number;

describe("one body", () => {
  const oven = {
    heatCapacity: kilojoulesPerKelvin(200),
    lossConductance: wattsPerKelvin(40),
    ambient: celsius(20),
  };
  it("in closed form agrees with odex", () => {
    for (const power of [0, 3000, 12_000, 40_000]) {
      for (const start of [20, 150]) {
        const closed = ovenTemperature({
          ...oven,
          power: watts(power),
          time: hours(1),
          start: celsius(start),
        });
        const [t] = odexState((_, [y]) => [(power - 40 * ((y as number) - 20)) / 200e3], 0, [start], 3600);
        expect(relative(closed, t as number)).toBeLessThan(1e-10);
      }
    }
  });
});

describe("an oven from its parts", () => {
  // Steel through its peak at 735 °C, air through eight kinks of its table.
  const plan: OvenPlan = {
    ambient: celsius(20),
    lossConductance: wattsPerKelvin(40),
    structure: kilojoulesPerKelvin(50),
    air: { volume: cubicMeters(10), pressure: pascals(101325) },
    loads: [
      { mass: kilograms(300), specificHeat: "carbon steel" },
      { mass: kilograms(40), specificHeat: joulesPerKilogramKelvin(900) },
    ],
  };
  const airMass = (10 * 101325) / (287.055 * 293.15);
  // The same table, read here again: temperature in kelvins, specific heat.
  const rows = [
    [250, 1006],
    [300, 1007],
    [350, 1009],
    [400, 1014],
    [450, 1021],
    [500, 1030],
    [550, 1040],
    [600, 1051],
    [650, 1063],
    [700, 1075],
    [750, 1087],
    [800, 1099],
    [850, 1110],
    [900, 1121],
    [950, 1131],
    [1000, 1141],
    [1100, 1159],
    [1200, 1175],
  ] as const;
  const air = (t: number): number => {
    const kelvin = t + 273.15;
    const i = rows.findIndex(([k]) => k >= kelvin);
    const [[k0, c0], [k1, c1]] = [
      rows[i - 1] as readonly [number, number],
      rows[i] as readonly [number, number],
    ];
    return c0 + ((c1 - c0) * (kelvin - k0)) / (k1 - k0);
  };
  // EN 1993-1-2, 3.4.1.2, written out again.
  const steel = (t: number): number => {
    if (t < 600) return 425 + 7.73e-1 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
    if (t < 735) return 666 + 13002 / (738 - t);
    return t < 900 ? 545 + 17820 / (t - 731) : 650;
  };
  const capacity = (t: number): number => 50e3 + airMass * air(t) + 300 * steel(t) + 40 * 900;
  /** Time from one temperature to another, by odex over temperature, split where the law has its breaks. */
  const odexTime = (power: number, from: number, to: number): number => {
    const edges = [
      from,
      ...[600, 735, 900, ...rows.map(([k]) => k - 273.15)]
        .sort((a, b) => a - b)
        .filter((edge) => edge > from && edge < to),
      to,
    ];
    let time = 0;
    edges.slice(1).forEach((high, i) => {
      const low = edges[i] as number;
      const inside = (t: number): number => Math.min(Math.max(t, low + 1e-10), high - 1e-10);
      time += at(odexState((t) => [capacity(inside(t)) / (power - 40 * (t - 20))], low, [0], high));
    });
    return time;
  };

  it.each([
    [12_000, 200],
    [30_000, 590],
    [60_000, 700],
    [60_000, 800],
    [60_000, 925],
    [7201, 200],
  ])("by %d W to %d °C agrees with odex to 1e-8", (power, target) => {
    const { time } = ovenHeatUp({ oven: plan, power: watts(power), target: celsius(target) });
    expect(relative(time as number, odexTime(power, 20, target))).toBeLessThan(1e-8);
  });

  it.each([
    [60_000, 20],
    [0, 900],
    [20_000, 700],
  ])("after a time at %d W from %d °C agrees with odex", (power, start) => {
    const { temperature } = ovenAfter({
      oven: plan,
      power: watts(power),
      time: hours(1),
      start: celsius(start),
    });
    // The mass of air is that of the start.
    const mass = (10 * 101325) / (287.055 * (start + 273.15));
    const heat = (t: number): number => 50e3 + mass * air(t) + 300 * steel(t) + 40 * 900;
    const [t] = odexState(
      (_, [y]) => [(power - 40 * ((y as number) - 20)) / heat(y as number)],
      0,
      [start],
      3600,
      1e-13,
    );
    // odex steps over the kinks without knowing of them.
    expect(relative(temperature, t as number)).toBeLessThan(1e-7);
  });

  it("has the specific heat of steel that is written in the standard", () => {
    for (let t = 20; t <= 1200; t += 0.5) {
      const here = steelSpecificHeat({ temperature: t as Celsius });
      expect(relative(here, steel(t))).toBeLessThan(1e-12);
    }
  });
});

describe("two bodies", () => {
  const oven = {
    airHeatCapacity: kilojoulesPerKelvin(80),
    loadHeatCapacity: kilojoulesPerKelvin(120),
    lossConductance: wattsPerKelvin(40),
    coupling: wattsPerKelvin(60),
    ambient: celsius(20),
  };
  type Two = typeof oven;
  const derivative =
    (one: Two, power: number) =>
    (_: number, [x, y]: readonly number[]) => {
      const flow = one.coupling * ((x as number) - (y as number));
      return [
        (power - one.lossConductance * ((x as number) - one.ambient) - flow) / one.airHeatCapacity,
        flow / one.loadHeatCapacity,
      ];
    };

  it("in closed form agree with the integrator and with odex", () => {
    for (const time of [1, 60, 627, 3600, 20_000]) {
      const closed = twoNodeTemperatures({ ...oven, power: kilowatts(12), time: seconds(time) });
      const own = integrateOde({
        derivative: derivative(oven, 12_000),
        start: 0,
        end: time,
        initial: [20, 20],
        relativeTolerance: 1e-12,
      }).state;
      const other = odexState(derivative(oven, 12_000), 0, [20, 20], time);
      expect(relative(closed.air, at(own))).toBeLessThan(1e-9);
      expect(relative(closed.load, at(own, 1))).toBeLessThan(1e-9);
      expect(relative(closed.air, at(other))).toBeLessThan(1e-8);
      expect(relative(closed.load, at(other, 1))).toBeLessThan(1e-8);
    }
  });

  it("whatever the oven, in closed form agree with the integrator", () => {
    const between = (min: number, max: number) =>
      fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-12 ? 0 : x));
    fc.assert(
      fc.property(
        between(1e4, 1e6),
        between(1e4, 1e6),
        between(5, 200),
        between(5, 500),
        between(0, 5e4),
        between(0.01, 5),
        between(0, 100),
        (airHeatCapacity, loadHeatCapacity, lossConductance, coupling, power, periods, start) => {
          const one = { airHeatCapacity, loadHeatCapacity, lossConductance, coupling, ambient: 20 } as Two;
          const time = (periods * (airHeatCapacity + loadHeatCapacity)) / lossConductance / 10;
          const closed = twoNodeTemperatures({
            ...one,
            power: power as Watts,
            time: seconds(time),
            start: celsius(start),
          });
          const own = integrateOde({
            derivative: derivative(one, power),
            start: 0,
            end: time,
            initial: [start, start],
          }).state;
          expect(Math.abs(closed.air - at(own))).toBeLessThan(1e-7 * Math.max(1, Math.abs(closed.air)));
          expect(Math.abs(closed.load - at(own, 1))).toBeLessThan(1e-7 * Math.max(1, Math.abs(closed.load)));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("reach the set point when they say", () => {
    const { airTime, loadTime, loadWhenAirReaches } = twoNodeHeatUp({
      ...oven,
      power: kilowatts(12),
      target: celsius(200),
    });
    const whenAir = odexState(derivative(oven, 12_000), 0, [20, 20], airTime as number);
    const whenLoad = odexState(derivative(oven, 12_000), 0, [20, 20], loadTime as number);
    expect(relative(at(whenAir), 200)).toBeLessThan(1e-8);
    expect(relative(at(whenAir, 1), loadWhenAirReaches as number)).toBeLessThan(1e-8);
    expect(relative(at(whenLoad, 1), 200)).toBeLessThan(1e-8);
  });
});

describe("a coated panel in an oven: Incropera example 5.3, 6th edition", () => {
  const panel = {
    characteristicLength: millimeters(1.5),
    density: kilogramsPerCubicMeter(2770),
    specificHeat: joulesPerKilogramKelvin(875),
    emissivity: 0.8,
  };
  const capacity = 2770 * 875 * 0.0015;
  const flux =
    (film: number, around: number) =>
    (_: number, [t]: readonly number[]) => {
      const [here, there] = [(t as number) + 273.15, around + 273.15];
      return [(film * (around - (t as number)) + 0.8 * SIGMA * (there ** 4 - here ** 4)) / capacity];
    };
  const heating = (target: number): number =>
    pieceHeatingTime({
      ...panel,
      filmCoefficient: wattsPerSquareMeterKelvin(40),
      air: celsius(175),
      walls: celsius(175),
      start: celsius(25),
      target: celsius(target),
    }).time as number;
  const cooling = (start: number): number =>
    pieceHeatingTime({
      ...panel,
      filmCoefficient: wattsPerSquareMeterKelvin(10),
      air: celsius(25),
      walls: celsius(25),
      start: celsius(start),
      target: celsius(37),
    }).time as number;

  it("agrees with odex to 1e-8", () => {
    for (const target of [60, 100, 150, 174]) {
      const [t] = odexState(flux(40, 175), 0, [25], heating(target));
      expect(relative(t as number, target)).toBeLessThan(1e-8);
    }
    const [t] = odexState(flux(10, 25), 0, [175], cooling(175));
    expect(relative(t as number, 37)).toBeLessThan(1e-8);
  });

  it("takes 123 s to 150 °C, 423 s with the hold, and 987 s in all", () => {
    const cured = heating(150);
    expect(relative(cured, 123.07)).toBeLessThan(0.002);
    const out = cured + 300;
    expect(relative(out, 423.07)).toBeLessThan(0.002);
    // The temperature at the end of the hold: the one it takes that long to reach.
    const hot = bracketedRoot({
      evaluate: (t) => heating(t) - out,
      low: 150,
      high: 174.9999,
      tolerance: 1e-9,
    }).root;
    expect(relative(out + cooling(hot), 987)).toBeLessThan(0.002);
  });
});

describe("a black cylindrical furnace with an open top: Incropera example 13.4, 6th edition", () => {
  it("needs 1830 W: sides and bottom each radiate to the room through the top", () => {
    const top = (Math.PI / 4) * 0.075 ** 2;
    // View factors: bottom to top 0.056 as printed, the rest of what the top sees is sides. Black: area × view factor is the area.
    const through = (share: number, temperature: number): number =>
      radiantHeat({
        inner: { temperature: celsius(temperature), area: squareMeters(top * share), emissivity: 1 },
        outer: { temperature: celsius(26.85), area: squareMeters(100), emissivity: 1 },
      });
    expect(relative(through(1 - 0.056, 1350) + through(0.056, 1650), 1830)).toBeLessThan(0.002);
  });
});
