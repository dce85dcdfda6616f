/** What does not compile: a flow without its basis, a temperature for a difference. The refusal at run time is beside it. */
import {
  type AirFlow,
  airMassFlow,
  airOutlet,
  exhaustHeat,
  heatUpTime,
  safetyVentilation,
} from "electroheat/process";
import {
  celsius,
  cubicFeetPerMinute,
  fahrenheitDegrees,
  kilojoulesPerKelvin,
  kilowatts,
  pascals,
  wattsPerKelvin,
} from "electroheat/quantity";
import { expect, it } from "vitest";
import { caught } from "../support/caught.ts";

it("a bare flow does not compile, and is refused", () => {
  const bare = cubicFeetPerMinute(2000);
  const heater = { power: kilowatts(36), inlet: celsius(20) };
  // @ts-expect-error: a volume flow alone is not a flow
  expect(caught(() => airMassFlow(bare)).code).toBe("wrong-type");
  // @ts-expect-error: a volume flow alone is not a flow
  expect(caught(() => airOutlet({ ...heater, flow: bare })).argument).toBe("flow");
  // @ts-expect-error: a number is not a flow
  expect(caught(() => exhaustHeat({ flow: 2000, makeUp: celsius(20), oven: celsius(200) })).code).toBe(
    "wrong-type",
  );
  // @ts-expect-error: an actual flow needs the temperature and pressure where it was measured
  const actual: AirFlow = { basis: "actual", volumeFlow: bare };
  expect(caught(() => airMassFlow(actual)).code).toBe("missing");
  // @ts-expect-error: a standard flow needs to say which standard
  const standard: AirFlow = { basis: "standard", volumeFlow: bare };
  expect(caught(() => airMassFlow(standard)).argument).toBe("flow.standard");
  // @ts-expect-error: there is no such standard
  const other: AirFlow = { basis: "standard", volumeFlow: bare, standard: "STP" };
  expect(caught(() => airMassFlow(other)).code).toBe("unknown-name");
  expect(
    airMassFlow({ basis: "actual", volumeFlow: bare, temperature: celsius(20), pressure: pascals(101325) }),
  ).toBeCloseTo(1.1366, 3);
});

it("a temperature difference is not a set point", () => {
  const oven = {
    heatCapacity: kilojoulesPerKelvin(200),
    lossConductance: wattsPerKelvin(40),
    ambient: celsius(20),
    power: kilowatts(12),
  };
  // @ts-expect-error: a difference of 360 Fahrenheit degrees is not 200 °C
  expect(heatUpTime({ ...oven, target: fahrenheitDegrees(360) }).reached).toBe(true);
});

it("never is a result, and its time is not a number to calculate with", () => {
  const { time } = heatUpTime({
    heatCapacity: kilojoulesPerKelvin(200),
    lossConductance: wattsPerKelvin(40),
    ambient: celsius(20),
    power: kilowatts(6),
    target: celsius(200),
  });
  // @ts-expect-error: "never" must be handled before the time is divided
  expect(Number.isNaN(time / 3600)).toBe(true);
  expect(time).toBe("never");
});

it("a share of the flammable limit does not come without its figures", () => {
  const solventRate = cubicFeetPerMinute(0.001);
  // @ts-expect-error: the rule by the flammable limit needs vapor ratio, limit and share
  const call = () => safetyVentilation({ solventRate, by: { rule: "share of the flammable limit" } });
  expect(caught(call).code).toBe("missing");
});
