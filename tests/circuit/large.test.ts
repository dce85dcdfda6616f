/**
 * Networks large enough that a dense or careless solver would show, with answers known in closed form.
 * Sources: R. M. Foster, The average impedance of an electrical network (1949) for the torus and the complete graph;
 * series and parallel laws for the rest. No timings: a test that cannot finish fails by the runner's limit.
 */
import {
  balancedSupply,
  buildModule,
  energise,
  faultEffect,
  faultScan,
  type Network,
  starWithOpenElements,
  terminalReading,
  terminalResistance,
} from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const supply = balancedSupply({ lineVoltage: volts(480) });

/** A square grid closed on itself: size² nodes, 2·size² equal branches. */
function torus(size: number): Network {
  const branches = [];
  for (let x = 0; x < size; x += 1) {
    for (let y = 0; y < size; y += 1) {
      const here = `${x},${y}`;
      branches.push({
        id: `r${here}`,
        from: here,
        to: `${(x + 1) % size},${y}`,
        resistance: ohms(10),
      });
      branches.push({
        id: `d${here}`,
        from: here,
        to: `${x},${(y + 1) % size}`,
        resistance: ohms(10),
      });
    }
  }
  return { branches };
}

describe("5,000 branches", () => {
  it("in a torus of 50 × 50: every branch reads R·(n − 1)/(2n) between its ends", () => {
    const network = torus(50);
    expect(network.branches).toHaveLength(5000);
    for (const [from, to] of [
      ["0,0", "1,0"],
      ["24,49", "24,0"],
      ["17,31", "17,32"],
    ] as const) {
      const reading = terminalResistance({ network, from, to }) as number;
      expect(reading / ((10 * 2499) / 5000)).toBeCloseTo(1, 11);
    }
  });

  it("in a torus: the ohmmeter's shares heat as much as the reading says", () => {
    const { resistance, currentShare } = terminalReading({ network: torus(50), from: "0,0", to: "25,25" });
    const heat = currentShare.reduce<number>((sum, share) => sum + 10 * share! * share!, 0);
    expect(heat / (resistance as number)).toBeCloseTo(1, 11);
  });

  it("in a module of 833 star banks and one odd element: Σ V²/R", () => {
    const banks = Array.from({ length: 833 }, (_, i) => ({
      id: `B${i}`,
      connection: "star" as const,
      elementResistance: ohms(100 + i),
      elementsInSeries: 2,
    }));
    for (const starPoints of ["tied", "separate"] as const) {
      const { network } = buildModule({ banks, starPoints });
      expect(network.branches).toHaveLength(4998);
      const expected = banks.reduce((sum, bank) => sum + (480 * 480) / (2 * bank.elementResistance), 0);
      expect(energise({ network, supply }).totalPower / expected).toBeCloseTo(1, 10);
    }
  });

  it("in one string of 5,000 micro-ohm joints and one element", () => {
    const branches: Network["branches"][number][] = Array.from({ length: 5000 }, (_, i) => ({
      id: `J${i}`,
      from: i === 0 ? "L1" : `n${i}`,
      to: `n${i + 1}`,
      resistance: ohms(1e-6),
      role: "joint" as const,
    }));
    branches.push({ id: "E", from: "n5000", to: "L2", resistance: ohms(10) });
    const found = energise({ network: { branches }, supply });
    expect(found.lines[0]!.current / (480 / 10.005)).toBeCloseTo(1, 12);
    // Each joint by itself, though its voltage is a ten-millionth of the node voltages beside it.
    for (const i of [0, 2500, 4999]) {
      expect(found.branches[i]!.voltage! / ((480 / 10.005) * 1e-6)).toBeCloseTo(1, 8);
    }
  });

  it("in a complete graph of 100 nodes (4,950 branches): 2R/n between any two", () => {
    const branches = [];
    for (let a = 0; a < 100; a += 1) {
      for (let b = a + 1; b < 100; b += 1)
        branches.push({ id: `${a}-${b}`, from: `${a}`, to: `${b}`, resistance: ohms(7) });
    }
    expect(terminalResistance({ network: { branches }, from: "3", to: "77" })).toBeCloseTo(14 / 100, 13);
  });

  it("with one of 1,666 tied parallel elements open: the closed form", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(5000), elementsInParallel: 1666 }],
    });
    const effect = faultEffect({ network, supply, faults: [{ kind: "open", id: "A-L1-7" }] });
    const form = starWithOpenElements({ elementsInParallel: 1666, open: 1 });
    if (effect.outcome === "supply shorted") throw new Error("no steady state");
    expect(effect.powerRatio).toBeCloseTo(form.totalPower, 11);
    expect(effect.worst!.powerRatio).toBeCloseTo(form.survivorPower!, 10);
  });
});

describe("a scan of 300 elements", () => {
  it("finds every single open alike by symmetry", () => {
    const { network } = buildModule({
      banks: [{ id: "A", connection: "star", elementResistance: ohms(900), elementsInParallel: 100 }],
    });
    const scan = faultScan({ network, supply });
    const form = starWithOpenElements({ elementsInParallel: 100, open: 1 });
    expect(scan).toHaveLength(300);
    for (const effect of scan) {
      expect(effect.outcome === "runs" && effect.powerRatio).toBeCloseTo(form.totalPower, 11);
    }
  });
});
