/** Groups with open elements, and figures beyond float64. Kirchhoff's laws and Ohm's law; an open circuit is a state, not an error. */
import {
  groupResistance,
  operatingPoint,
  parallelGroup,
  powerFromVoltageAndResistance,
  seriesString,
} from "electroheat/element";
import { amperes, type BranchVolts, ohms, volts, watts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectRefusal } from "../support/spoil.ts";

const branch = (voltage: number) => voltage as BranchVolts;
const refusedIn = (call: () => unknown) => caught(call).issues[0]?.unit;

describe("open elements", () => {
  it("leave a group of like ones open, and a string of dead ones without a current", () => {
    expect(groupResistance({ resistance: "open", inSeries: 2, inParallel: 3 })).toBe("open");
    expect(groupResistance({ resistance: ohms(0), inSeries: 2, inParallel: 3 })).toBe(0);
  });

  it("and shorted ones give no heat without a voltage; on one there is no figure for a short", () => {
    // Source: V²/R with V = 0, which a short does not change.
    const power = (voltage: number, resistance: number) => () =>
      powerFromVoltageAndResistance({ voltage: branch(voltage), resistance: ohms(resistance) });
    expect(power(0, 0)()).toBe(0);
    expect(caught(power(240, 0)).code).toBe("short-circuit");
  });

  it("all of them: nothing flows, and the voltage stands across each", () => {
    const group = parallelGroup({ voltage: branch(240), resistances: ["open", "open"] });
    expect(group).toEqual({
      resistance: "open",
      current: 0,
      power: 0,
      elements: [1, 2].map(() => ({ resistance: "open", voltage: 240, current: 0, power: 0 })),
    });
    // One of two left: 240 V over 60 Ω.
    const half = parallelGroup({ voltage: branch(240), resistances: ["open", ohms(60)] });
    expect(half).toMatchObject({ resistance: 60, current: 4, power: 960 });
  });

  it("one in a string carries the whole voltage, the others none", () => {
    const string = seriesString({ voltage: branch(240), resistances: [ohms(8), "open", ohms(8)] });
    expect(string.elements.map(({ voltage }) => voltage)).toEqual([0, 240, 0]);
    const whole = seriesString({ voltage: branch(240), resistances: [ohms(10), ohms(20)] });
    expect(whole).toMatchObject({ resistance: 30, current: 8, power: 1920 });
    expect(whole.elements.map(({ voltage, power }) => [voltage, power])).toEqual([
      [80, 640],
      [160, 1280],
    ]);
  });

  it("have a working point only where the voltage is told", () => {
    expect(operatingPoint({ voltage: volts(480), resistance: "open" })).toMatchObject({
      voltage: 480,
      current: 0,
      power: 0,
      resistance: "open",
    });
    for (const rest of [{ current: amperes(0) }, { power: watts(0) }]) {
      expectRefusal(
        () => operatingPoint({ resistance: "open", ...rest }),
        "not-identifiable",
        "voltage",
        "open",
      );
    }
    expectRefusal(
      () => operatingPoint({ resistance: "open", current: amperes(1) }),
      "inconsistent",
      "resistance",
      "1 A through an open element",
    );
  });
});

describe("figures beyond float64 are refused in their own unit", () => {
  it.each([
    ["Ω", () => groupResistance({ resistance: ohms(1e305), inSeries: 1e4, inParallel: 1 })],
    ["Ω", () => seriesString({ voltage: branch(1), resistances: [ohms(1.7e308), ohms(1.7e308)] })],
    ["W", () => seriesString({ voltage: branch(1e200), resistances: [ohms(1)] })],
    ["A", () => parallelGroup({ voltage: branch(1e200), resistances: [ohms(1e-200)] })],
    ["W", () => parallelGroup({ voltage: branch(1e200), resistances: [ohms(1)] })],
    ["W", () => operatingPoint({ voltage: volts(1e200), current: amperes(1e200) })],
    ["V", () => operatingPoint({ current: amperes(1e200), resistance: ohms(1e200) })],
    ["A", () => operatingPoint({ voltage: volts(1e200), resistance: ohms(1e-200) })],
  ] as const)("%s", (unit, call) => {
    expect(caught(call).code).toBe("out-of-range");
    expect(refusedIn(call)).toBe(unit);
  });
});
