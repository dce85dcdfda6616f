/** Running on with a fault: remaining power, stress, heat-up, energy and live ends, against figures worked out elsewhere. */
import {
  type DegradedOption,
  type DegradedOptions,
  degradedHeatUp,
  degradedOptions,
} from "electroheat/bench";
import { balancedSupply, type Fault, type ModulePlan, supplyFromNeutralVoltages } from "electroheat/circuit";
import type { OvenPlan } from "electroheat/process";
import {
  celsius,
  hours,
  joulesPerKelvin,
  kilowattHours,
  metersPerSecond,
  millimeters,
  ohms,
  pascals,
  seconds,
  volts,
  wattsPerKelvin,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const supply = balancedSupply({ lineVoltage: volts(480) });
const onNeutral = supplyFromNeutralVoltages({
  voltages: [volts(480 / Math.sqrt(3)), volts(480 / Math.sqrt(3)), volts(480 / Math.sqrt(3))],
});
/** 20 kW in star at 480 V. */
const star = (id: string) => ({ id, connection: "star" as const, elementResistance: ohms(11.52) });
const tied: ModulePlan = { banks: [star("A"), star("B")], starPoints: "tied" };
const openL1: readonly Fault[] = [{ kind: "open", id: "A-L1" }];
/** The lumped oven of the heat memo: 200 kJ/K, 40 W/K, 20 °C to 200 °C. */
const oven: OvenPlan = {
  ambient: celsius(20),
  lossConductance: wattsPerKelvin(40),
  structure: joulesPerKelvin(200_000),
};
const target = celsius(200);
/** From a heat capacity and a loss, by the closed form written again here. */
const timeTo200 = (power: number): number => -(200e3 / 40) * Math.log(1 - (40 * 180) / power);
const ask = (more: Partial<Parameters<typeof degradedOptions>[0]> = {}): DegradedOptions =>
  degradedOptions({ module: tied, supply, faults: openL1, oven, target, shift: hours(8), ...more });
const named = ({ options }: DegradedOptions, name: string): DegradedOption => {
  const found = options.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no option ${name}`);
  return found;
};

describe("degraded heat-up", () => {
  // Source: heat memo, oven-partial-element-failure (12 kW; 2/3 with a delta element open, 1/2 with a star element open).
  it("answers how long to 200 °C with a delta element open: 2.51 times as long on two thirds of the power", () => {
    const module: ModulePlan = {
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(57.6) }],
    };
    const found = degradedHeatUp({ module, supply, faults: [{ kind: "open", id: "A-L2L3" }], oven, target });
    expect(found.outcome).toBe("runs");
    expect(found.healthy.time).toBeCloseTo(4581.454, 2);
    expect(found.degraded?.power).toBeCloseTo(8000, 8);
    expect(found.degraded?.time).toBeCloseTo(11_512.93, 1);
    expect(found.degraded?.timeRatio).toBeCloseTo(2.51294, 4);
  });

  it("answers never with a star element open: half the power ends at 170 °C", () => {
    const module: ModulePlan = {
      banks: [{ id: "A", connection: "star", elementResistance: ohms(19.2) }],
    };
    const { degraded } = degradedHeatUp({ module, supply, faults: openL1, oven, target });
    expect(degraded?.time).toBe("never");
    expect(degraded?.ultimate).toBeCloseTo(170, 9);
    expect(degraded?.timeRatio).toBe(null);
  });

  it("comes with the cautions of running on, and says who decides", () => {
    const module: ModulePlan = { banks: [star("A")] };
    const { cautions, deferral } = degradedHeatUp({ module, supply, faults: openL1, oven, target });
    const common = degradedOptions({ module, supply, faults: openL1, oven, target, shift: hours(8) });
    expect(cautions.slice(1)).toEqual(common.cautions);
    expect(cautions[0]?.message).toContain("Survivors");
    expect(deferral).toBe(common.deferral);
    expect(deferral).toContain("licensed electrician");
  });

  it("tells a dead module from one that shorts its supply, and throws for neither", () => {
    const module: ModulePlan = { banks: [star("A")] };
    const dead = degradedHeatUp({
      module,
      supply,
      faults: [
        { kind: "lost line", line: "L1" },
        { kind: "lost line", line: "L2" },
      ],
      oven,
      target,
    });
    expect([dead.outcome, dead.degraded?.power, dead.degraded?.time]).toEqual(["dead", 0, "never"]);
    const delta: ModulePlan = { banks: [{ id: "A", connection: "delta", elementResistance: ohms(19.2) }] };
    const shorted = degradedHeatUp({
      module: delta,
      supply,
      faults: [{ kind: "short", id: "A-L1L2" }],
      oven,
      target,
    });
    expect([shorted.outcome, shorted.degraded]).toEqual(["supply shorted", null]);
    expect(shorted.cautions[0]?.message).toContain("must not be energised");
  });

  it("has less power and needs more time than the sound module when an element opens, whatever the module", () => {
    const resistance = fc.double({ min: 2, max: 200, noNaN: true });
    let slower = 0;
    fc.assert(
      fc.property(
        fc.array(resistance, { minLength: 1, maxLength: 3 }),
        fc.constantFrom("star" as const, "delta" as const),
        fc.constantFrom("tied" as const, "separate" as const),
        fc.constantFrom("1", "2", "3"),
        (resistances, connection, starPoints, where) => {
          const module: ModulePlan = {
            banks: resistances.map((r, i) => ({
              id: `B${i}`,
              connection,
              elementResistance: ohms(r),
              elementsInParallel: 2,
            })),
            starPoints,
          };
          const next = { "1": "2", "2": "3", "3": "1" }[where];
          const id = connection === "star" ? `B0-L${where}-1` : `B0-L${where}L${next}-1`;
          const found = degradedHeatUp({ module, supply, faults: [{ kind: "open", id }], oven, target });
          expect(found.degraded?.power).toBeLessThan(found.healthy.power);
          if (found.healthy.time === "never") expect(found.degraded?.time).toBe("never");
          else if (found.degraded?.time !== "never") {
            slower += 1;
            expect(found.degraded?.time).toBeGreaterThan(found.healthy.time);
            // Time grows faster than 1/power.
            expect((found.degraded?.timeRatio ?? 0) * (found.degraded?.powerRatio ?? 0)).toBeGreaterThan(1);
          }
        },
      ),
      { numRuns: 200, seed: 6 },
    );
    expect(slower).toBeGreaterThan(50);
  });
});

describe("degraded options", () => {
  // Source: bench question degraded-options: 40 kW, 480 V, two tied stars, one L1 element open, by nodal solve elsewhere.
  it.each([
    ["leave as is", 32_000, 1.44, 0.260182],
    ["untie star points", 30_000, 1, 0.348612],
    ["isolate bank A", 20_000, 1, 0],
  ])("%s: power, stress and unbalance of the published question", (name, power, worst, unbalance) => {
    const found = named(ask(), name);
    expect(found.power).toBeCloseTo(power, 7);
    expect(found.worst?.powerRatio).toBeCloseTo(worst, 9);
    expect(found.unbalance?.maxDeviation).toBeCloseTo(unbalance, 6);
  });

  // Millman's theorem: the tied star point moves by a fifth of the branch voltage, the untied one by half of it.
  it("names the live break and its voltage, and none where the bank is isolated", () => {
    const branch = 480 / Math.sqrt(3);
    const ends = ask().options.map(({ openEnds }) => openEnds.map(({ id, voltage }) => [id, voltage]));
    expect(ends[0]).toEqual([]);
    expect(ends[1]).toEqual([["A-L1", expect.closeTo(1.2 * branch, 9)]]);
    expect(ends[2]).toEqual([["A-L1", expect.closeTo(1.5 * branch, 9)]]);
    expect(ends[3]).toEqual([]);
  });

  it("counts a shift: full power to the set point, holding power for the rest, full power to the end if it never gets there", () => {
    const found = ask({
      oven: { ...oven, lossConductance: wattsPerKelvin(40) },
      shifts: 10,
      tariff: 0.2,
      shift: hours(2),
    });
    for (const { power, energyPerShift, timeAtTarget, cost } of found.options) {
      const heating = timeTo200(power);
      const expected = power * heating + 7200 * (7200 - heating);
      expect(energyPerShift / expected).toBeCloseTo(1, 9);
      expect(timeAtTarget / (7200 - heating)).toBeCloseTo(1, 9);
      expect((cost ?? 0) / ((10 * 0.2 * expected) / 3.6e6)).toBeCloseTo(1, 9);
    }
    const weak = ask({ oven: { ...oven, lossConductance: wattsPerKelvin(1000) } });
    for (const { power, energyPerShift, timeAtTarget, heatUp, cost } of weak.options) {
      expect(heatUp.time).toBe("never");
      expect(energyPerShift / kilowattHours((power * 8) / 1000)).toBeCloseTo(1, 12);
      expect([timeAtTarget, cost]).toEqual([0, null]);
    }
    // A shift shorter than the heat-up is all heating.
    const short = named(ask({ shift: seconds(60) }), "leave as is");
    expect(short.energyPerShift).toBeCloseTo(32_000 * 60, 6);
    expect(short.timeAtTarget).toBe(0);
  });

  it("works the surface of the worst element out at its stress, or says why it cannot", () => {
    const element = {
      surfaceLoad: wattsPerSquareCentimeter(4),
      shape: "tube" as const,
      diameter: millimeters(11),
      airTemperature: celsius(20),
      airSpeed: metersPerSecond(3),
      pressure: pascals(100_000),
      surroundingsTemperature: celsius(20),
      emissivity: 0.88,
      radiatingEfficiency: 1,
    };
    const found = ask({ element });
    // Heat memo, tubular-forced-air-what-if: 477 °C at 4 W/cm², 589 °C with 1.44 times the power.
    expect(named(found, "healthy").worst?.surface?.balance?.surfaceTemperature).toBeCloseTo(477, -0.5);
    expect(named(found, "leave as is").worst?.surface?.balance?.surfaceTemperature).toBeCloseTo(589, -0.5);
    const far = ask({ element: { ...element, surfaceLoad: wattsPerSquareCentimeter(200) } });
    expect(named(far, "leave as is").worst?.surface).toMatchObject({
      balance: null,
      issue: { code: "outside-table" },
    });
    expect(named(ask(), "leave as is").worst?.surface).toBe(null);
  });

  it("offers only what the module allows", () => {
    const names = (found: DegradedOptions): string[] => found.options.map(({ name }) => name);
    expect(names(ask({ module: { banks: [star("A")] } }))).toEqual(["healthy", "leave as is"]);
    expect(names(ask({ module: { ...tied, starPoints: "separate" } }))).toEqual([
      "healthy",
      "leave as is",
      "isolate bank A",
    ]);
    expect(names(ask({ module: { ...tied, neutral: "connected" }, supply: onNeutral }))).toEqual([
      "healthy",
      "leave as is",
      "isolate bank A",
    ]);
    expect(names(ask({ faults: [{ kind: "lost line", line: "L2" }] }))).toEqual(["healthy", "leave as is"]);
    const both: readonly Fault[] = [
      { kind: "open", id: "A-L1" },
      { kind: "open", id: "B-L2" },
    ];
    expect(names(ask({ faults: both })).slice(3)).toEqual(["isolate bank A", "isolate bank B"]);
    // The other bank's fault stays when one is isolated: a lone star with a branch open has half its power.
    expect(named(ask({ faults: both }), "isolate bank A").power).toBeCloseTo(10_000, 8);
  });

  it("leaves out joints on the tie when the tie goes, and says so", () => {
    const joints = [{ id: "J", at: "S", behind: ["A"], resistance: ohms(0.01) }];
    const found = named(ask({ module: { ...tied, joints } }), "untie star points");
    expect(found.cautions.map(({ code }) => code)).toContain("assumed");
    expect(found.power).toBeCloseTo(30_000, 8);
  });

  it("says so when the fault must not be energised", () => {
    const module: ModulePlan = {
      banks: [
        { id: "A", connection: "delta", elementResistance: ohms(30) },
        { id: "B", connection: "delta", elementResistance: ohms(30) },
      ],
    };
    const found = ask({ module, faults: [{ kind: "short", id: "A-L1L2" }] });
    const left = named(found, "leave as is");
    expect(left).toMatchObject({
      outcome: "supply shorted",
      power: 0,
      worst: null,
      unbalance: null,
      lines: [],
    });
    expect(left.cautions[0]?.message).toContain("must not be energised");
    expect(named(found, "isolate bank A").power).toBeCloseTo(23_040, 8);
  });

  it("warns of the stressed survivor, of the tie and of isolation, and defers", () => {
    const found = ask();
    const messages = (name: string): string =>
      named(found, name)
        .cautions.map(({ message }) => message)
        .join(" ");
    expect(messages("leave as is")).toMatch(/B-L1 carries 1\.44 times/);
    expect(messages("untie star points")).toMatch(/floats live/);
    expect(messages("isolate bank A")).toMatch(/locked out and proved dead.*Take the star tie off/s);
    expect(found.cautions.map(({ message }) => message).join(" ")).toMatch(/prove dead/);
    expect(found.deferral).toMatch(/licensed electrician govern/);
    expect(JSON.parse(JSON.stringify(found))).toEqual(found);
  });

  it("refuses what it cannot know", () => {
    const refused = (more: Partial<Parameters<typeof degradedOptions>[0]>, code: string, argument: string) =>
      expect(() => ask(more), argument).toThrow(expect.objectContaining({ code, argument }));
    refused({ faults: [] }, "missing", "faults");
    refused({ faults: [{ kind: "open", id: "C-L1" }] }, "unknown-name", "faults.0.id");
    refused({ shift: seconds(0) }, "out-of-range", "shift");
    refused({ shifts: -1 }, "out-of-range", "shifts");
    refused({ tariff: Number.NaN }, "not-a-number", "tariff");
    refused({ target: celsius(20) }, "out-of-range", "target");
    refused({ module: { banks: [star("A"), star("B")] } }, "missing", "starPoints");
  });
});
