/**
 * The figures the room was asked for by name, one test each, through the builders as a caller would write it.
 *
 * Source of all of them unless said otherwise: derived by hand from Millman's theorem and Kirchhoff's laws (the formula
 * stands beside the figure), not printed by this library. Figures are given to four decimals.
 */
import {
  balancedSupply,
  buildModule,
  energise,
  type FaultEffect,
  faultEffect,
  healthyLineToLineResistance,
  type ModulePlan,
  reconnected,
  terminalResistance,
} from "electroheat/circuit";
import { ohms, volts, watts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

type Running = Extract<FaultEffect, { readonly outcome: "runs" | "dead" }>;

const lineVoltage = volts(480);
const supply = balancedSupply({ lineVoltage });
const elementResistance = ohms(15.36);

function stars(count: number, starPoints: "tied" | "separate"): ModulePlan {
  const banks = Array.from({ length: count }, (_, i) => ({
    id: "ABCD".charAt(i),
    connection: "star" as const,
    elementResistance,
  }));
  return { banks, starPoints };
}
const delta = (elementsInParallel: number): ModulePlan => ({
  banks: [{ id: "A", connection: "delta", elementResistance, elementsInParallel }],
});

function effect(plan: ModulePlan, faults: Parameters<typeof faultEffect>[0]["faults"]): Running {
  const found = faultEffect({ network: buildModule(plan).network, supply, faults });
  if (found.outcome === "supply shorted") throw new Error("no steady state");
  return found;
}
const open = (id: string) => ({ kind: "open", id }) as const;
const lineRatios = (of: Running): (number | null)[] =>
  of.lines.filter(({ node }) => node !== "N").map(({ currentRatio }) => currentRatio);
const survivor = (of: Running, id: string) => of.survivors.find((one) => one.id === id)!;

/** Four decimals as printed in the task. */
function expectRatios(got: readonly (number | null)[], printed: readonly number[]): void {
  expect(got).toHaveLength(printed.length);
  got.forEach((value, i) => {
    expect(value).toBeCloseTo(printed[i]!, 4);
  });
}

describe("two parallel elements per branch, star points tied, one open", () => {
  const found = effect(stars(2, "tied"), [open("A-L1")]);

  it("total power is 0.8000 of healthy: (1 + 2m)/(2 + m), m = 1/2", () => {
    expect(found.powerRatio).toBeCloseTo(0.8, 12);
  });

  it("the survivor beside it sees 1.2000 times voltage and current: 3/(2 + m)", () => {
    expect(survivor(found, "B-L1").voltageRatio).toBeCloseTo(1.2, 12);
    expect(survivor(found, "B-L1").currentRatio).toBeCloseTo(1.2, 12);
  });

  it("the survivor carries 1.4400 times power, not double: (3/(2 + m))²", () => {
    expect(survivor(found, "B-L1").powerRatio).toBeCloseTo(1.44, 12);
    expect(found.worst?.id).toBe("B-L1");
  });

  it("line currents are 0.6000 / 0.9165 / 0.9165: 3m/(2 + m) and √(3(1 + m + m²))/(2 + m)", () => {
    expectRatios(lineRatios(found), [0.6, 0.9165, 0.9165]);
  });
});

describe("two parallel elements per branch, star points separate, one open", () => {
  const found = effect(stars(2, "separate"), [open("A-L1")]);

  it("total power is 0.7500 of healthy: 1 − 1/(2n), n = 2", () => {
    expect(found.powerRatio).toBeCloseTo(0.75, 12);
  });

  it("no element is over-stressed: survivors of the faulted star at 3/4 of their power, the other star untouched", () => {
    for (const { id, powerRatio } of found.survivors) {
      expect(powerRatio).toBeCloseTo(id.startsWith("A-") ? 0.75 : 1, 12);
    }
  });
});

describe("three parallel elements per branch, star points tied, one open", () => {
  const found = effect(stars(3, "tied"), [open("A-L1")]);

  it("total power is 0.8750: (1 + 2m)/(2 + m), m = 2/3", () => {
    expect(found.powerRatio).toBeCloseTo(0.875, 12);
  });

  it("survivors see 1.1250 times voltage: 3/(2 + m)", () => {
    expect(survivor(found, "C-L1").voltageRatio).toBeCloseTo(1.125, 12);
  });

  it("survivors carry 1.2656 times power: 1.125²", () => {
    expect(survivor(found, "B-L1").powerRatio).toBeCloseTo(1.265625, 12);
  });
});

describe("delta", () => {
  it("two in parallel, one open: total power 0.8333: (2 + m)/3, m = 1/2", () => {
    expect(effect(delta(2), [open("A-L1L2-1")]).powerRatio).toBeCloseTo(5 / 6, 12);
  });

  it("two in parallel, one open: lines 0.7638 / 0.7638 / 1: √((1 + m + m²)/3)", () => {
    expectRatios(lineRatios(effect(delta(2), [open("A-L1L2-1")])), [0.7638, 0.7638, 1]);
  });

  it("one element per branch, one open: total power 0.6667 (not the 0.577 of an open-delta transformer bank)", () => {
    expect(effect(delta(1), [open("A-L1L2")]).powerRatio).toBeCloseTo(2 / 3, 12);
  });

  it("one element per branch, one open: lines 0.5774 / 0.5774 / 1: 1/√3", () => {
    expectRatios(lineRatios(effect(delta(1), [open("A-L1L2")])), [0.5774, 0.5774, 1]);
  });

  it("with a lost line: total power 0.5000: one side in full, two in series", () => {
    expect(effect(delta(1), [{ kind: "lost line", line: "L1" }]).powerRatio).toBeCloseTo(0.5, 12);
  });

  it("with a lost line: lines 0 / 0.8660 / 0.8660: (1 + 1/2)/√3", () => {
    expectRatios(lineRatios(effect(delta(1), [{ kind: "lost line", line: "L1" }])), [0, 0.866, 0.866]);
  });
});

describe("star", () => {
  const one: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance }] };

  it("with a lost line: total power 0.5000: two branches in series on one line voltage, V²/(2R)", () => {
    expect(effect(one, [{ kind: "lost line", line: "L1" }]).powerRatio).toBeCloseTo(0.5, 12);
  });

  it("open gap carries 1.5 times the branch voltage: V_L1 − (V_L2 + V_L3)/2", () => {
    const gap = effect(one, [open("A-L1")]).gaps[0]?.voltage;
    expect(gap).toBeCloseTo((1.5 * 480) / Math.sqrt(3), 9);
  });

  it("reconnected in delta draws exactly 3 times: P = 3V²/R against V²/R", () => {
    const power = (plan: ModulePlan): number =>
      energise({ network: buildModule(plan).network, supply }).totalPower;
    expect(power(reconnected({ plan: one, connection: "delta" })) / power(one)).toBeCloseTo(3, 13);
  });
});

describe("readings", () => {
  it("healthy line to line reads 2V²/P for star and delta alike", () => {
    const power = watts(48_000);
    const printed = (2 * 480 * 480) / 48_000; // 9.6 Ω
    expect(healthyLineToLineResistance({ power, lineVoltage })).toBeCloseTo(printed, 12);
    // R = V²/P in star, 3V²/P in delta, by hand
    for (const [connection, resistance] of [
      ["star", 4.8],
      ["delta", 14.4],
    ] as const) {
      const { network } = buildModule({
        banks: [{ id: "A", connection, elementResistance: ohms(resistance) }],
      });
      for (const [from, to] of [
        ["L1", "L2"],
        ["L2", "L3"],
        ["L3", "L1"],
      ] as const) {
        expect(terminalResistance({ network, from, to })).toBeCloseTo(printed, 12);
      }
    }
  });

  it("two stars tied at the lines but not at the star points read 2R/3 line to own star point, not R/2", () => {
    // By symmetry L2 and L3 are at one potential: R beside R + R/2 + R/2 through the other star, so R beside 2R.
    const { network, starPoints } = buildModule(stars(2, "separate"));
    const own = starPoints["A"] as string;
    expect(terminalResistance({ network, from: "L1", to: own })).toBeCloseTo((2 * 15.36) / 3, 12);
  });
});
