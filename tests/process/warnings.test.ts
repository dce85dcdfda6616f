/** What the room must say beside a figure: contract of the room unless a source is named. */
import {
  airOutlet,
  airWhatIf,
  ductHeaterCheck,
  heatUpOptions,
  type OvenPlan,
  ovenAfter,
  ovenFromTwoReadings,
  ovenHeatUp,
  surfaceBehindReading,
  wallHeat,
} from "electroheat/process";
import {
  celsius,
  cubicFeetPerMinute,
  cubicMetersPerSecond,
  fahrenheit,
  isElectroheatError,
  joulesPerKilogramKelvin,
  kilograms,
  kilojoulesPerKelvin,
  kilowatts,
  meters,
  pascals,
  seconds,
  squareFeet,
  squareMeters,
  watts,
  wattsPerKelvin,
  wattsPerMeterKelvin,
  wattsPerSquareMeterKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";

function refused(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (isElectroheatError(error)) return `${error.code} ${error.argument}`;
    throw error;
  }
  return "not refused";
}

const flow = { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicMetersPerSecond(1) } as const;

describe("heated air", () => {
  it("warns where a fixed specific heat carries the outlet beyond the table, which ends at 1500 K", () => {
    const at = (power: number) =>
      airOutlet({
        power: watts(power),
        flow,
        inlet: celsius(20),
        specificHeat: joulesPerKilogramKelvin(1005),
      });
    expect(at(1e8).warnings.map(({ code }) => code)).toEqual(["outside-validity"]);
    expect(at(1e8).warnings[0]?.limit).toBeCloseTo(1226.85, 9);
    expect(at(1e5).warnings).toEqual([]);
  });

  it("says what a power ratio does to the elements, above 1 and below", () => {
    const at = (powerRatio: number) =>
      airWhatIf({ power: kilowatts(30), flow, inlet: celsius(20), powerRatio }).warnings;
    expect(at(1)).toEqual([]);
    expect(at(1.5).map(({ path }) => path)).toEqual(["powerRatio"]);
    expect(at(1.5)[0]?.message).toMatch(/hotter/);
    expect(at(2 / 3)[0]?.message).toMatch(/survivors may run harder/);
  });

  it("states the basis of the velocity where the air is thin", () => {
    const at = (pressure: number) =>
      ductHeaterCheck({
        power: kilowatts(1),
        faceArea: squareMeters(1),
        flow: {
          basis: "actual",
          volumeFlow: cubicMetersPerSecond(20),
          temperature: celsius(20),
          pressure: pascals(pressure),
        },
        inlet: celsius(20),
        pressure: pascals(pressure),
        element: "tubular",
      }).warnings;
    expect(at(101325)).toEqual([]);
    // By hand: 20 × 70000/(287.05 × 293.15)/1.2014 = 13.85 m/s.
    expect(at(70000).map(({ message }) => message)).toEqual([
      expect.stringMatching(/20\.00 m\/s.*13\.8\d m\/s of standard air/),
    ]);
  });
});

describe("an oven from two readings", () => {
  const at = (first: number, second: number) => () =>
    ovenFromTwoReadings({
      ambient: celsius(0),
      time: seconds(600),
      first: celsius(first),
      second: celsius(second),
      power: watts(1000),
    });
  it("refuses readings that say nothing", () => {
    expect(refused(at(1e-200, 1.5e-200))).toBe("out-of-range first");
    expect(refused(at(30, 60 - 1e-10))).toBe("not-identifiable second");
    expect(refused(at(30, 59.8))).toBe("not-identifiable second");
    // Bend 0.6 K: 30²/0.6 = 1500 K.
    expect(at(30, 59.4)().finalRise).toBeCloseTo(1500, 6);
  });
});

describe("an oven with steel in it", () => {
  const oven: OvenPlan = {
    ambient: celsius(20),
    lossConductance: wattsPerKelvin(40),
    structure: kilojoulesPerKelvin(50),
  };
  const loads = [{ mass: kilograms(300), specificHeat: "carbon steel" }] as const;
  it("warns where the end temperature leaves the law of EN 1993-1-2, at 1200 °C", () => {
    const at = (plan: OvenPlan, power: number) =>
      ovenHeatUp({ oven: plan, power: watts(power), target: celsius(200) }).warnings.map(
        ({ code, limit }) => [code, limit],
      );
    // 40 W/K × 1180 K = 47.2 kW.
    expect(at({ ...oven, loads }, 47_100)).toEqual([]);
    expect(at({ ...oven, loads }, 47_300)).toEqual([["outside-validity", 1200]]);
    expect(at(oven, 47_300)).toEqual([]);
  });
});

describe("a load that does not follow its surface", () => {
  const at = (characteristicLength: number) =>
    ovenHeatUp({
      oven: {
        ambient: celsius(20),
        lossConductance: wattsPerKelvin(40),
        loads: [
          { mass: kilograms(100), specificHeat: "carbon steel" },
          {
            mass: kilograms(300),
            specificHeat: "carbon steel",
            piece: {
              filmCoefficient: wattsPerSquareMeterKelvin(30),
              characteristicLength: meters(characteristicLength),
              thermalConductivity: wattsPerMeterKelvin(45),
            },
          },
        ],
      },
      power: kilowatts(12),
      target: celsius(200),
    });
  // Criterion 0.1 of Incropera, chapter 5: 30 W/(m²·K) × 0.15 m / 45 W/(m·K) is the limit itself.
  it("is warned of inside the heat-up from Biot number 0.1 on, and the time stays that of the heat", () => {
    expect(at(0.149).warnings).toEqual([]);
    expect(at(0.151).warnings.map(({ code, path }) => [code, path])).toEqual([
      ["outside-validity", "oven.loads.1.piece"],
    ]);
    expect(at(0.151).time).toBe(at(0.149).time);
    expect(refused(() => at(0))).toBe("out-of-range oven.loads.1.piece.characteristicLength");
  });
});

describe("a duct heater with a high face load", () => {
  const at = (kilowattsPerFace: number, feet: number, element: "open coil" | "tubular") =>
    ductHeaterCheck({
      power: kilowatts(kilowattsPerFace),
      faceArea: squareFeet(1),
      flow: {
        basis: "standard",
        standard: "0.075 lb/ft3",
        volumeFlow: cubicFeetPerMinute(feet),
      },
      inlet: fahrenheit(70),
      pressure: pascals(101325),
      element,
    }).warnings.map(({ path }) => path);
  // Sizing bulletin, one point of its chart: 700 ft/min at 16 kW/ft².
  it("needs more than 400 ft/min: the chart's point and its proportion for other face loads", () => {
    expect(at(16, 697, "open coil")).toEqual(["velocity"]);
    expect(at(16, 702, "open coil")).toEqual([]);
    expect(at(8, 405, "open coil")).toEqual([]);
    expect(at(22, 900, "open coil")).toEqual(["velocity"]);
    expect(at(22, 970, "open coil")).toEqual([]);
    expect(at(12, 405, "tubular")).toEqual([]);
  });
});

describe("an infrared reading", () => {
  const at = (emissivity: number, reading: number) =>
    surfaceBehindReading({
      reading: celsius(reading),
      emissivitySet: 0.95,
      emissivity,
      reflected: celsius(25),
    }).warnings.map(({ path, limit }) => [path, limit]);
  it("says from which emissivity on it is weak, and from which on no decision stands on it", () => {
    expect(at(0.5, 60)).toEqual([]);
    expect(at(0.49, 60)).toEqual([["emissivity", 0.5]]);
    expect(at(0.2, 60)).toEqual([["emissivity", 0.5]]);
    expect(at(0.11, 60)).toEqual([["emissivity", 0.2]]);
  });
  it("says when the object is as warm as what it mirrors, which no emissivity can tell apart", () => {
    expect(at(0.9, 36)).toEqual([]);
    expect(at(0.9, 34)).toEqual([["reflected", 10]]);
    expect(at(0.9, 16)).toEqual([["reflected", 10]]);
    expect(at(1, 25)).toEqual([]);
  });
});

describe("a call without its objects", () => {
  it("is refused by code and argument, not by a TypeError", () => {
    const none = undefined as never;
    expect(refused(() => ovenHeatUp(none))).toBe("missing input");
    expect(refused(() => ovenHeatUp({ power: watts(1), target: celsius(9) } as never))).toBe("missing oven");
    expect(refused(() => ovenAfter({ power: watts(1) } as never))).toBe("missing oven");
    expect(refused(() => heatUpOptions(none))).toBe("missing input");
    expect(refused(() => heatUpOptions({ oven: {} } as never))).toBe("missing powers");
    expect(refused(() => heatUpOptions({ oven: {}, powers: [null] } as never))).toBe("missing powers.0");
    expect(refused(() => wallHeat(none))).toBe("missing input");
    expect(refused(() => wallHeat({} as never))).toBe("missing layers");
    expect(refused(() => wallHeat({ layers: "x", inside: 1, outside: 0 } as never))).toBe(
      "wrong-type layers",
    );
    expect(refused(() => wallHeat({ layers: [null], inside: 1, outside: 0 } as never))).toBe(
      "missing layers.0",
    );
  });
});
