/**
 * The simulated bench by itself, before it judges anything: its network against published faults, its power balance,
 * and its draws against the distributions they claim.
 *
 * Sources beside each check. Ratios of the fault table: Millman's theorem and the delta formulas in closed form,
 * recomputed with a circuit simulator (`shared/vectors/circuit/fault-cases.json` holds the same states in volts and
 * amperes).
 */
import type { BankPlan, ModulePlan } from "electroheat/circuit";
import type { Ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { Chance } from "../../benchmarks/diagnosis/chance.ts";
import type { DiagnosedFault } from "../../benchmarks/diagnosis/contract.ts";
import {
  energised,
  powers,
  size,
  trueCurrent,
  trueInsulation,
  trueResistance,
  trueVoltage,
} from "../../benchmarks/diagnosis/inside.ts";
import { Kit, METER_CLASSES } from "../../benchmarks/diagnosis/meters.ts";
import { drawModule, drawnFrom, LINES } from "../../benchmarks/diagnosis/plan.ts";
import { simulate } from "../../benchmarks/diagnosis/simulate.ts";
import {
  makeWorld,
  possibleFaults,
  type TrueFault,
  together,
  type World,
  withParameters,
} from "../../benchmarks/diagnosis/world.ts";

const bank = (
  connection: "star" | "delta",
  elementResistance: number,
  elementsInParallel = 1,
  id = "A",
): BankPlan => ({
  id,
  connection,
  elementResistance: elementResistance as Ohms,
  elementsInParallel,
});
const nominal = (plan: ModulePlan, lineVoltage: number, faults: readonly TrueFault[] = []): World =>
  makeWorld(new Chance(1, 1), drawnFrom(plan, lineVoltage), faults, 0);
const plain = (fault: DiagnosedFault): TrueFault => ({ fault, parameters: [] });
const open = (element: string): TrueFault => plain({ kind: "element open", element });
const unfed = (bankName: string, line?: string): TrueFault =>
  plain({ kind: "unfed bank", bank: bankName, ...(line === undefined ? {} : { line }) });
const lost = (line: string): TrueFault => plain({ kind: "lost line", line });

function state(world: World): { power: number; currents: number[] } {
  const live = energised(world);
  const { taken, heat } = powers(world, live);
  expect(Math.abs(taken - heat)).toBeLessThan(1e-6 * heat + 1e-9);
  return { power: heat, currents: LINES.map((line) => size(trueCurrent(world, live, line))) };
}

describe("a bank without supply in the simulated network", () => {
  it("reads dead as it is, and live as what still carries: two sides of a delta in series", () => {
    const world = nominal({ banks: [bank("delta", 24)] }, 480, [unfed("A", "L1")]);
    // 24 beside 48 Ω; 480 V over 48 Ω, round the line that is off.
    expect(trueResistance(world, "L1", "L2")).toBeCloseTo(16, 9);
    const live = energised(world);
    expect(size(trueCurrent(world, live, "L1"))).toBeCloseTo(0, 9);
    expect(size(trueCurrent(world, live, "L1", "A-L1L2"))).toBeCloseTo(10, 9);
    expect(trueVoltage(world, live, "L1", "L2")).toBeCloseTo(480, 6);
  });
});

describe("the simulated network against published faults", () => {
  // Singh, Electrical Networks, Example 6.20: three 100 Ω resistors on 400 V, star and delta, one opened.
  it.each([
    ["star", [], 1600],
    ["delta", [], 4800],
    ["star", ["A-L1"], 800],
    ["delta", ["A-L1L2"], 3200],
  ] as const)("100 Ω in %s on 400 V with open %j gives %d W", (connection, opens, watts) => {
    const world = nominal({ banks: [bank(connection, 100)] }, 400, opens.map(open));
    expect(state(world).power).toBeCloseTo(watts, 6);
  });

  const star = (n: number): ModulePlan => ({ banks: [bank("star", 24, n)] });
  const delta = (n: number): ModulePlan => ({ banks: [bank("delta", 24, n)] });
  const onNeutral = (n: number): ModulePlan => ({ ...star(n), neutral: "connected" });
  const apart: ModulePlan = { banks: [bank("star", 24), bank("star", 24, 1, "B")], starPoints: "separate" };
  const half: TrueFault = {
    fault: { kind: "shorted turns", element: "A-L1" },
    parameters: [{ of: "turns shorted", value: 0.5 }],
  };
  const relink = (as: "star" | "delta"): TrueFault => plain({ kind: "mis-linked", bank: "A", as });
  // A 1 µΩ path from the middle of the coil to the earthed frame stands for the bolted fault of the table.
  const earth: TrueFault = {
    fault: { kind: "earth fault", element: "A-L1" },
    parameters: [
      { of: "position", value: 0.5 },
      { of: "fault resistance", value: 1e-6 },
    ],
  };
  it.each([
    ["star n=1, A open", star(1), [open("A-L1")], 0.5, [0, 0.866, 0.866]],
    ["star n=2, A1 open", star(2), [open("A-L1-1")], 0.8, [0.6, 0.917, 0.917]],
    ["star n=3, one open", star(3), [open("A-L1-2")], 0.875, [0.75, 0.944, 0.944]],
    ["star n=4, one open", star(4), [open("A-L1-4")], 0.909, [0.818, 0.958, 0.958]],
    ["star n=2, A1 and B1 open", star(2), [open("A-L1-1"), open("A-L2-1")], 0.625, [0.573, 0.573, 0.75]],
    ["star n=2, line A lost and B1 open", star(2), [lost("L1"), open("A-L2-1")], 0.333, [0, 0.577, 0.577]],
    ["star n=1, A half shorted", star(1), [half], 1.25, [1.5, 1.146, 1.146]],
    ["star on neutral n=1, A open", onNeutral(1), [open("A-L1")], 0.667, [0, 1, 1]],
    ["star on neutral n=2, A1 open", onNeutral(2), [open("A-L1-1")], 0.833, [0.5, 1, 1]],
    ["two separate stars, A1 open", apart, [open("A-L1")], 0.75, [0.5, 0.901, 0.901]],
    ["two separate stars, line A lost, B1 open", apart, [lost("L1"), open("A-L2")], 0.286, [0, 0.495, 0.495]],
    ["delta n=1, AB open", delta(1), [open("A-L1L2")], 0.667, [0.577, 0.577, 1]],
    ["delta n=2, one of AB open", delta(2), [open("A-L1L2-1")], 0.833, [0.764, 0.764, 1]],
    ["delta n=3, one of AB open", delta(3), [open("A-L1L2-1")], 0.889, [0.839, 0.839, 1]],
    // A pole of the bank's contactor does to it what the lost line does to a module of one bank, or an open branch to a star.
    ["delta, bank without L1", delta(1), [unfed("A", "L1")], 0.5, [0, 0.866, 0.866]],
    ["two separate stars, one without L1", apart, [unfed("A", "L1")], 0.75, [0.5, 0.901, 0.901]],
    ["two separate stars, one without supply", apart, [unfed("A")], 0.5, [0.5, 0.5, 0.5]],
    ["delta, line A lost", delta(1), [lost("L1")], 0.5, [0, 0.866, 0.866]],
    ["delta, line A lost and AB open", delta(1), [lost("L1"), open("A-L1L2")], 0.333, [0, 0.577, 0.577]],
    ["delta, line A lost and BC open", delta(1), [lost("L1"), open("A-L2L3")], 0.167, [0, 0.289, 0.289]],
    ["delta n=2, line A lost and AB1 open", delta(2), [lost("L1"), open("A-L1L2-1")], 0.444, [0, 0.77, 0.77]],
    ["star parts rewired in delta", star(1), [relink("delta")], 3, [3, 3, 3]],
    ["delta parts in star", delta(1), [relink("star")], 0.333, [0.333, 0.333, 0.333]],
    ["star, A earthed at its middle", star(1), [earth], 1.25, [2, 0.901, 0.901]],
  ] as const)("%s", (_, plan, faults, power, currents) => {
    const sound = state(nominal(plan, 480));
    const found = state(nominal(plan, 480, faults));
    expect(found.power / sound.power).toBeCloseTo(power, 3);
    found.currents.forEach((current, i) => {
      expect(current / (sound.currents[i] as number)).toBeCloseTo(currents[i] as number, 3);
    });
  });

  it("sees the ohms of a star and a delta with an open", () => {
    // Two 24 Ω in series, one open: terminal readings in closed form.
    expect(trueResistance(nominal(star(1), 480), "L1", "L2")).toBeCloseTo(48, 9);
    expect(trueResistance(nominal(star(1), 480, [open("A-L1")]), "L1", "L2")).toBe("open");
    const opened = nominal(delta(1), 480, [open("A-L1L2")]);
    expect(trueResistance(opened, "L1", "L2")).toBeCloseTo(48, 9);
    expect(trueResistance(opened, "L2", "L3")).toBeCloseTo(24, 9);
    expect(trueResistance(nominal(delta(1), 480), "L1", "L2", ["A-L1L2"])).toBeCloseTo(24, 9);
    // Joined stars, one open: 36, 24, 36 Ω; separate ones: 42, 24, 42 Ω (24 Ω elements).
    expect(trueResistance(nominal(apart, 480, [open("A-L1")]), "L1", "L2")).toBeCloseTo(42, 9);
    const joined = nominal({ ...apart, starPoints: "tied" }, 480, [open("A-L1")]);
    expect(trueResistance(joined, "L1", "L2")).toBeCloseTo(36, 9);
    expect(trueResistance(joined, "L2", "L3")).toBeCloseTo(24, 9);
  });

  it("puts half as much again as a phase voltage across an open in a star, and none on a floating line", () => {
    const live = nominal(star(1), 400, [open("A-L1")]);
    // Star point of the two survivors sits halfway between their lines: 1.5 times the phase voltage from L1.
    expect(trueVoltage(live, energised(live), "L1", "S")).toBeCloseTo((1.5 * 400) / Math.sqrt(3), 6);
    const floating = nominal(star(1), 400, [lost("L1"), open("A-L1")]);
    expect(trueVoltage(floating, energised(floating), "L1", "L2")).toBe(0);
  });
});

describe("the simulated draws", () => {
  it("keep the power balance in random worlds with any fault", () => {
    for (let index = 0; index < 300; index += 1) {
      const chance = new Chance(3, index);
      const drawn = drawModule(chance);
      const first = chance.pick(possibleFaults(drawn));
      const second = chance.pick(possibleFaults(drawn).filter((one) => together(first, one)));
      const faults = [first, second].map((fault) => withParameters(chance, fault));
      const world = makeWorld(chance, drawn, faults);
      const { taken, heat } = powers(world, energised(world));
      expect(Math.abs(taken - heat), `module ${index}`).toBeLessThan(1e-6 * heat + 1e-6);
    }
  });

  it("split a line's current into its banks' and branches' currents", () => {
    for (let index = 0; index < 100; index += 1) {
      const chance = new Chance(4, index);
      const drawn = drawModule(chance);
      const inside = possibleFaults(drawn).filter(({ kind }) => kind !== "earthed terminal");
      const world = makeWorld(chance, drawn, [withParameters(chance, chance.pick(inside))]);
      const live = energised(world);
      for (const line of LINES) {
        const whole = trueCurrent(world, live, line);
        const parts = drawn.plan.banks.map(({ id }) => trueCurrent(world, live, line, id));
        const sum = parts.reduce((a, b) => ({ re: a.re + b.re, im: a.im + b.im }), { re: 0, im: 0 });
        expect(size({ re: whole.re - sum.re, im: whole.im - sum.im })).toBeLessThan(1e-6 * (1 + size(whole)));
      }
    }
  });

  it("take what leaves at a line's terminal from the line alone: its phase voltage over the fault", () => {
    const fault: TrueFault = {
      fault: { kind: "earthed terminal", terminal: "L1" },
      parameters: [{ of: "fault resistance", value: 50 }],
    };
    const world = nominal({ banks: [bank("star", 24)] }, 480, [fault]);
    const live = energised(world);
    const [whole, own] = [trueCurrent(world, live, "L1"), trueCurrent(world, live, "L1", "A")];
    expect(size(own)).toBeCloseTo(480 / Math.sqrt(3) / 24, 9);
    expect(size({ re: whole.re - own.re, im: whole.im - own.im })).toBeCloseTo(480 / Math.sqrt(3) / 50, 9);
    expect(trueInsulation(world, "L2", 1e9)).toBeCloseTo(50 + 48, 4);
  });

  it("stay inside the instruments' stated accuracy and fill it", () => {
    for (const types of METER_CLASSES) {
      const { ofReading, digits, resolution } = types.clamp;
      const limit = ofReading * 20 + (digits + 0.5) * resolution;
      let largest = 0;
      for (let session = 0; session < 4000; session += 1) {
        const error = new Kit(new Chance(5, session), types).shows("clamp", 20) - 20;
        largest = Math.max(largest, Math.abs(error));
      }
      expect(largest).toBeLessThanOrEqual(limit + 1e-9);
      expect(largest).toBeGreaterThan(0.85 * limit);
    }
  });

  it("are the same for the same seed and differ for another", () => {
    expect(simulate(9, 77)).toEqual(simulate(9, 77));
    expect(simulate(9, 77)).not.toEqual(simulate(10, 77));
    expect(JSON.parse(JSON.stringify(simulate(9, 77)))).toEqual(simulate(9, 77));
  });

  it("hold the stated mix: sound and each kind within four standard errors", () => {
    const count = 3000;
    const kinds = new Map<string, number>();
    let expectedSound = 0;
    let seen = 0;
    for (let index = 0; index < count; index += 1) {
      const chance = new Chance(11, index);
      const drawn = drawModule(chance);
      const possible = possibleFaults(drawn);
      const { truth, input } = simulate(11, index);
      if (input.depth === "pairs") continue;
      seen += 1;
      expect(possible.length).toBeGreaterThan(0);
      const elements = drawn.elements.length;
      const opens = 0.8 * 0.34;
      expectedSound += 1 / (1 + 0.8 + (opens ** 2 * (1 - 1 / elements)) / 2);
      const kind = truth.map(({ fault }) => fault.kind).join("+") || "sound";
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    }
    const sound = kinds.get("sound") as number;
    const share = expectedSound / seen;
    expect(Math.abs(sound / seen - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / seen));
    const joints = (kinds.get("joint") as number) / seen;
    expect(Math.abs(joints - share * 0.8 * 0.16)).toBeLessThan(4 * Math.sqrt((joints * (1 - joints)) / seen));
  });
});
