/**
 * Decisions are exact: each sentence of the requirement as a test of its own. Limits: 48 A and 60 A from NFPA 70, 424.22(B); ratings
 * from 240.6(A); columns of Tables 310.16 and 310.18. The 12 digits of the guard are our decision (see `decision`).
 */
import {
  absoluteKelvins,
  amperes,
  type Celsius,
  celsius,
  fahrenheit,
  kiloamperes,
  kiloohms,
  kilovolts,
  megaohms,
  milliamperes,
  ohms,
  toFahrenheit,
  volts,
} from "electroheat/quantity";
import {
  ambientFactor,
  cableForLoad,
  conductorAmpacity,
  conductorForLoad,
  designCurrent,
  insulationInParallel,
  insulationVerdicts,
  largestDevice,
  loadForConductor,
  lugFit,
  standardDevice,
  subdivision,
  tableAmpacity,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";

const edition = "NEC 2023";
const run = {
  edition,
  equipment: "space heating",
  installation: "raceway",
  material: "copper",
  insulationTemperature: celsius(75),
  ambient: celsius(30),
  currentCarryingConductors: 3,
  terminalTemperature: celsius(75),
} as const;

describe.each([47.99999999999999, 48, 48.00000000000001])("%d A", (current) => {
  it("times 1.25 selects 60 A", () => {
    const design = designCurrent({ ...run, heaterCurrent: amperes(current) }).value;
    expect(standardDevice({ edition, current: design, direction: "up" }).value).toBe(60);
    const chosen = conductorForLoad({ ...run, heaterCurrent: amperes(current) });
    expect([chosen.device, chosen.value, chosen.warnings]).toEqual([60, "6 AWG", []]);
  });

  it("counts as not more than 48 A", () => {
    const split = subdivision({ ...run, current: amperes(current) });
    expect([split.value, split.required, split.device]).toEqual([1, false, 60]);
  });

  it("is what a 60 A device and a split heater allow", () => {
    const size = { ...run, size: "6 AWG", device: amperes(1.25 * current), subdivided: true } as const;
    expect(loadForConductor(size).value).toBeCloseTo(48, 9);
  });
});

describe("57.75 A does not pass 57.7 A", () => {
  it("on a block marked 57.7 A, while 57.70000000000001 A does", () => {
    const lug = { smallest: "14 AWG", largest: "1/0 AWG", materials: ["copper"], temperature: celsius(75) };
    const fit = (current: number): string =>
      lugFit({
        ...run,
        size: "6 AWG",
        designCurrent: amperes(current),
        lug: { ...lug, current: amperes(57.7) },
      }).value;
    expect([57.75, 57.70000000000001, 57.7, 57.69999999999999].map(fit)).toEqual([
      "does not fit",
      "fits",
      "fits",
      "fits",
    ]);
  });

  it("through a device of one's own edition rated 57.7 A", () => {
    const own = {
      name: "works rules 9",
      system: "North America",
      standardRatings: {
        label: "R",
        table: {
          id: "ratings",
          title: "ratings",
          source: "invented",
          edition: "9",
          kind: "user table",
          provenance: "seen",
          columns: [{ name: "rating", unit: "A", meaning: "rating" }],
          rows: [[57.7], [80]],
        },
      },
    } as const;
    const device = (current: number): number =>
      standardDevice({ edition: own, current: amperes(current), direction: "up" }).value;
    expect([57.75, 57.70000000000001, 57.7].map(device)).toEqual([80, 57.7, 57.7]);
  });
});

describe("no result flips when inputs are permuted", () => {
  it("heaters in any order: 0.1 + 0.2 + 47.7 A is 48 A, whichever comes first", () => {
    const parts = [0.1, 0.2, 15.9, 15.9, 15.9];
    for (let turn = 0; turn < parts.length; turn++) {
      const turned = [...parts.slice(turn), ...parts.slice(0, turn)];
      for (const list of [turned, [...turned].reverse()]) {
        const chosen = conductorForLoad({ ...run, heaterCurrent: list.map((one) => amperes(one)) });
        expect([chosen.value, chosen.device]).toEqual(["6 AWG", 60]);
      }
    }
  });

  it("insulation readings and criteria in any order", () => {
    const readings = [3, 0.7, 11, 5, 0.1].map((one) => megaohms(one));
    expect(insulationInParallel([...readings].reverse())).toBe(insulationInParallel(readings));
    const criteria = ["1 MΩ per kV", "maker assembly", "IEC 60364-6"] as const;
    const given = {
      resistance: megaohms(1),
      nominalVoltage: volts(480),
      testVoltage: volts(500),
      temperature: celsius(20),
    };
    const verdicts = insulationVerdicts({ ...given, criteria }).map(({ value }) => value);
    expect(verdicts).toEqual(["within", "outside", "within"]);
    expect(
      insulationVerdicts({ ...given, criteria: [...criteria].reverse() }).map(({ value }) => value),
    ).toEqual([...verdicts].reverse());
  });
});

describe("no result flips when inputs come through another unit", () => {
  it("currents in mA and kA at every edge: 48 A, 13.3 A, 800 A, a device's rating", () => {
    for (const [a, ma, ka] of [
      [48, 48_000, 0.048],
      [64, 64_000, 0.064],
      [96, 96_000, 0.096],
      [57.7, 57_700, 0.0577],
    ] as const) {
      for (const current of [milliamperes(ma), kiloamperes(ka)]) {
        const plain = subdivision({ ...run, current: amperes(a) });
        const other = subdivision({ ...run, current });
        expect([other.value, other.device]).toEqual([plain.value, plain.device]);
        const wanted = conductorForLoad({ ...run, heaterCurrent: amperes(a) });
        const found = conductorForLoad({ ...run, heaterCurrent: current });
        expect([found.value, found.device, found.governing]).toEqual([
          wanted.value,
          wanted.device,
          wanted.governing,
        ]);
      }
    }
    const permitted = { edition, size: "3/0 AWG", material: "copper" } as const;
    expect(largestDevice({ ...permitted, ampacity: kiloamperes(0.8) }).governing).toBe("standard rating");
    const cable = {
      edition: "IEC 60364-5-52:2009",
      method: "B2",
      loadedConductors: 3,
      insulation: "PVC",
      material: "copper",
      ambient: celsius(30),
      circuits: 1,
      deviceKind: "circuit-breaker",
    } as const;
    expect(cableForLoad({ ...cable, designCurrent: kiloamperes(0.063) }).device).toBe(63);
  });

  const routes: readonly (readonly [string, (t: number) => Celsius])[] = [
    ["°F", (t) => fahrenheit(toFahrenheit(celsius(t)))],
    ["K", (t) => absoluteKelvins(t + 273.15)],
    ["thirds of a degree", (t) => celsius((t / 3 / 7) * 21)],
  ];
  it.each(routes)("temperatures through %s find their columns, bases and bands", (_, through) => {
    for (const rating of [60, 75, 90]) {
      const given = { ...run, size: "6 AWG", insulationTemperature: through(rating) };
      expect(tableAmpacity(given).value).toBe(
        tableAmpacity({ ...given, insulationTemperature: celsius(rating) }).value,
      );
      for (const ambient of [30, 35, 40, 45, 50, 55]) {
        const plain = {
          ...run,
          size: "6 AWG",
          insulationTemperature: celsius(rating),
          ambient: celsius(ambient),
        };
        const other = { ...given, ambient: through(ambient), terminalTemperature: through(75) };
        expect(conductorAmpacity(other).value, `${rating} at ${ambient}`).toBe(
          conductorAmpacity(plain).value,
        );
        expect(ambientFactor({ ...other, baseAmbient: through(30) }).value).toBe(
          ambientFactor({ ...plain, baseAmbient: celsius(30) }).value,
        );
      }
    }
    for (const rating of [150, 200, 250]) {
      const material = rating === 250 ? "nickel-coated copper" : "copper";
      const hot = { ...run, installation: "high-temperature raceway", material, size: "8 AWG" };
      const wire = { ...hot, ambient: through(90), insulationTemperature: through(rating) };
      expect(conductorAmpacity({ ...wire, terminalTemperature: through(75) }).correctedAmpacity).toBe(
        conductorAmpacity({ ...hot, ambient: celsius(90), insulationTemperature: celsius(rating) })
          .correctedAmpacity,
      );
    }
  });

  it("resistance and voltage in kΩ and kV at a limit", () => {
    const verdict = (
      resistance: ReturnType<typeof ohms>,
      nominalVoltage: ReturnType<typeof volts>,
    ): string[] =>
      insulationVerdicts({
        resistance,
        nominalVoltage,
        testVoltage: kilovolts(0.5),
        temperature: celsius(20),
        criteria: ["1 MΩ per kV", "maker assembly", "IEC 60364-6"],
      }).map(({ value, warnings }) => `${value} ${warnings.length}`);
    const plain = verdict(megaohms(5), volts(500));
    expect(plain).toEqual(["within 0", "within 0", "within 0"]);
    expect(verdict(kiloohms(5000), kilovolts(0.5))).toEqual(plain);
    expect(verdict(ohms(5e6 * (1 - 2e-16)), kilovolts(0.1 + 0.4))).toEqual(plain);
  });
});
