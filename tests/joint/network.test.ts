/** A joint as a branch of the network: what it burns, and what the clamp meter cannot see. */
import {
  balancedSupply,
  buildModule,
  energise,
  supplyFromLineVoltages,
  unbalance,
} from "electroheat/circuit";
import { jointPower, judgeJoint, measuredJoint } from "electroheat/joint";
import { amperes, millivolts, type Ohms, ohms, volts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const close = (a: number, b: number, part: number) => expect(Math.abs(a / b - 1)).toBeLessThan(part);

function star(element: number, joint: Ohms, line: number) {
  const { network } = buildModule({
    banks: [{ id: "A", connection: "star", elementResistance: ohms(element) }],
    joints: [{ id: "J", at: "L1", resistance: joint }],
  });
  return energise({ network, supply: balancedSupply({ lineVoltage: volts(line) }) });
}

describe("a bad joint in one branch", () => {
  // Worked question: nodal solve and closed form agree to 1e-9, repeated by a separate route.
  it("50 mΩ in a 6.4 Ω star at 480 V burns 93 W and moves its line by 0.5 %: balanced amps do not clear the terminals", () => {
    const bad = star(6.4, ohms(0.05), 480);
    const healthy = star(6.4, ohms(0), 480);
    const current = bad.lines[0]?.current as number;
    close(current, 43.0769, 1e-5);
    close(100 * (current / (healthy.lines[0]?.current as number) - 1), -0.518135, 1e-4);
    close(bad.branches.find(({ id }) => id === "J")?.power as number, 92.781, 1e-5);
    // A clamp of 2 % cannot tell.
    const lines = bad.lines.map((line) => line.current) as unknown as [number, number, number];
    const { maxDeviation } = unbalance({ l1: lines[0], l2: lines[1], l3: lines[2] });
    expect(maxDeviation).toBeLessThan(0.02);
  });

  // Derived by Millman's node voltage, then checked as phasors.
  it("0.1 Ω in an 8 Ω star at 480 V burns 118 W for 0.83 % of current", () => {
    const bad = star(8, ohms(0.1), 480);
    close(bad.lines[0]?.current as number, 34.354726761696746, 1e-9);
    close(bad.lines[1]?.current as number, 34.56966607761363, 1e-9);
    close(bad.branches.find(({ id }) => id === "J")?.power as number, 118.02472508708428, 1e-9);
  });

  it("burns current² × resistance in the network and in the closed form alike", () => {
    const part = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(part(1, 50), part(1e-4, 1), part(100, 600), (element, resistance, line) => {
        const found = star(element, ohms(resistance), line).branches.find(({ id }) => id === "J");
        const power = jointPower({
          current: amperes(found?.current as number),
          resistance: ohms(resistance),
        });
        close(found?.power as number, power, 1e-9);
        // Millimetrically: the drop a millivoltmeter reads gives the resistance back.
        const back = measuredJoint({
          drop: volts(found?.voltage as number),
          current: amperes(found?.current as number),
          barResistance: ohms(0),
          dropHalfWidth: volts(0),
          currentHalfWidth: amperes(0),
        });
        close(back.resistance, resistance, 1e-9);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("curing oven, 54 kW delta, burning smell and no trip (invented case)", () => {
  const factors = [1.004, 0.997, 1.006, 0.999, 1.002, 0.995];
  const element = (400 ** 2 / 54000) * 6;
  const joints = { L1: 7.2e-5, L2: 3.2e-3, L3: 8.1e-5 };
  const ids = ["A-L1L2-1", "A-L1L2-2", "A-L2L3-1", "A-L2L3-2", "A-L3L1-1", "A-L3L1-2"];
  const { network } = buildModule({
    banks: [{ id: "A", connection: "delta", elementResistance: ohms(element), elementsInParallel: 2 }],
    elements: Object.fromEntries(ids.map((id, i) => [id, ohms(element * (factors[i] as number))])),
    joints: Object.entries(joints).map(([at, r]) => ({ id: `J-${at}`, at, resistance: ohms(r) })),
  });
  const v = volts(398);
  const found = energise({ network, supply: supplyFromLineVoltages({ v12: v, v23: v, v31: v }) });

  it("the network repeats the clamp within its accuracy and the power within 1 %", () => {
    const read = [78.1, 77.8, 77.3];
    found.lines.slice(0, 3).forEach((line, i) => {
      // Clamp ±(2 % + 5 digits of 0.1 A).
      expect(Math.abs(line.current - (read[i] as number))).toBeLessThan(0.02 * line.current + 0.5);
    });
    close(found.totalPower, 53586, 0.01);
  });

  it("millivolts find it, amps do not", () => {
    const readings = { L1: [5.5, 78.1], L2: [248.2, 77.8], L3: [6.5, 77.3] } as const;
    const measured = Object.fromEntries(
      Object.entries(readings).map(([at, [mv, a]]) => [
        at,
        measuredJoint({
          drop: millivolts(mv),
          current: amperes(a),
          barResistance: ohms(0),
          dropHalfWidth: millivolts(0.005 * mv + 0.3),
          currentHalfWidth: amperes(0.02 * a + 0.5),
        }),
      ]),
    );
    const verdict = (at: string) =>
      judgeJoint({
        resistance: measured[at]?.resistance as Ohms,
        halfWidth: measured[at]?.halfWidth as Ohms,
        similar: Object.keys(readings)
          .filter((other) => other !== at)
          .map((other) => measured[other]?.resistance as Ohms),
        similarHalfWidth: measured["L1"]?.halfWidth as Ohms,
        rule: "50-percent-above-lowest",
      });
    expect(verdict("L2").judgement.verdict).toBe("outside");
    expect(verdict("L2").action).toBe("open, clean or renew, remake");
    expect(verdict("L1").judgement.verdict).toBe("within");
    for (const [at, r] of Object.entries(joints)) {
      expect(Math.abs((measured[at]?.resistance as number) - r)).toBeLessThan(
        measured[at]?.halfWidth as number,
      );
    }
    const { maxDeviation } = unbalance({ l1: 78.1, l2: 77.8, l3: 77.3 });
    close(100 * maxDeviation, 0.557461, 1e-5);
    expect(maxDeviation).toBeLessThan(0.02);
  });
});
