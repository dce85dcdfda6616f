/** Control duty against numerical integration of the chopped wave, a time-domain simulation, and the network solve. */
import {
  balancedSupply,
  buildModule,
  burstDuty,
  burstFiring,
  burstReadings,
  energise,
  firingAngleForPower,
  firingAngleForVoltage,
  type ModulePlan,
  neutralCurrentFired,
  oneSidedFiring,
  phaseAngleFiring,
  singlePhasing,
  stageBanks,
  supplyFromNeutralVoltages,
  switchFault,
  threePhaseAngleFiring,
  withoutLines,
} from "electroheat/circuit";
import { amperes, ohms, volts, watts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";

const runs = { numRuns: 1000 };
const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-9 ? 0 : x));

/** Mean over one period of a function of a chopped sine, by the midpoint rule on each side of the firing. */
function overPeriod(firing: number, of: (voltage: number, angle: number) => number): number {
  const alpha = (firing * Math.PI) / 180;
  const n = 4000;
  let sum = 0;
  for (const [from, to] of [
    [alpha, Math.PI],
    [Math.PI + alpha, 2 * Math.PI],
  ] as const) {
    const step = (to - from) / n;
    for (let i = 0; i < n; i += 1) {
      const angle = from + (i + 0.5) * step;
      sum += of(Math.SQRT2 * Math.sin(angle), angle) * step;
    }
  }
  return sum / (2 * Math.PI);
}

describe("phase-angle firing", () => {
  it("has the integrals of the chopped wave", () => {
    for (const firing of [0, 1, 20, 60, 89.9, 90, 120, 150, 175]) {
      const found = phaseAngleFiring({ voltage: volts(1), resistance: ohms(1), firingDegrees: firing });
      expect(found.powerRatio).toBeCloseTo(
        overPeriod(firing, (v) => v * v),
        6,
      );
      expect(found.meanVoltage).toBeCloseTo(overPeriod(firing, Math.abs), 6);
      // An average-responding clamp is scaled so that a sine reads right: by π/(2√2).
      expect(found.averageClamp).toBeCloseTo((overPeriod(firing, Math.abs) * Math.PI) / (2 * Math.SQRT2), 6);
      const amplitude = (order: number): number => {
        const a = 2 * overPeriod(firing, (v, x) => v * Math.cos(order * x));
        const b = 2 * overPeriod(firing, (v, x) => v * Math.sin(order * x));
        return Math.hypot(a, b) / Math.SQRT2;
      };
      expect(found.fundamental).toBeCloseTo(amplitude(1), 6);
      for (const { order, current } of found.harmonics) expect(current).toBeCloseTo(amplitude(order), 5);
      // Each thyristor carries one half-wave: half of the mean, and half of the square.
      expect(found.thyristorMean).toBeCloseTo(overPeriod(firing, Math.abs) / 2, 6);
      expect(found.thyristorRms ** 2).toBeCloseTo(overPeriod(firing, (v) => v * v) / 2, 6);
    }
  });

  it("splits into fundamental and harmonics without a rest, and only the fundamental in phase carries power", () => {
    fc.assert(
      fc.property(between(0, 180), between(10, 700), between(1, 100), (firing, v, r) => {
        const found = phaseAngleFiring({ voltage: volts(v), resistance: ohms(r), firingDegrees: firing });
        expectFinite(found, `${firing}°`);
        const inPhase = found.fundamental * Math.cos(((found.lagDegrees ?? 0) * Math.PI) / 180);
        expect(Math.abs(v * inPhase - found.power)).toBeLessThan(1e-9 * ((v * v) / r));
        const distorted = found.distortion === null ? 0 : found.distortion * found.fundamental;
        const squares = found.fundamental ** 2 + distorted ** 2;
        expect(Math.abs(squares - found.rmsCurrent ** 2)).toBeLessThan(1e-9 * (v / r) ** 2);
        const listed = found.harmonics.reduce((sum, { current }) => sum + current ** 2, 0);
        expect(listed).toBeLessThanOrEqual(distorted ** 2 + 1e-9 * (v / r) ** 2);
        expect(found.averageClamp).toBeLessThanOrEqual(found.rmsCurrent * (1 + 1e-12));
        expect(found.powerFactor).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });

  it("has an angle for every power and every voltage", () => {
    fc.assert(
      fc.property(between(0, 1), (share) => {
        const angle = firingAngleForPower({ power: watts(share * 1000), fullPower: watts(1000) });
        const back = phaseAngleFiring({ voltage: volts(100), resistance: ohms(10), firingDegrees: angle });
        expect(Math.abs(back.powerRatio - share)).toBeLessThan(1e-12);
        const byVoltage = firingAngleForVoltage({ rmsVoltage: back.rmsVoltage, voltage: volts(100) });
        const again = phaseAngleFiring({
          voltage: volts(100),
          resistance: ohms(10),
          firingDegrees: byVoltage,
        });
        expect(Math.abs(again.rmsVoltage - back.rmsVoltage)).toBeLessThan(1e-9);
      }),
      runs,
    );
    expect(firingAngleForPower({ power: watts(0), fullPower: watts(1) })).toBe(180);
    expect(firingAngleForPower({ power: watts(1), fullPower: watts(1) })).toBe(0);
  });

  it("keeps its digits where almost nothing is left", () => {
    // The rest of the half-wave, β long, carries 2β³/(3π) of the power to first order.
    for (const rest of [1e-1, 1e-2, 1e-3, 1e-4]) {
      const { powerRatio } = phaseAngleFiring({
        voltage: volts(1),
        resistance: ohms(1),
        firingDegrees: 180 - (rest * 180) / Math.PI,
      });
      expect(powerRatio / ((2 * rest ** 3) / (3 * Math.PI))).toBeCloseTo(1 - rest ** 2 / 5, 5);
    }
  });

  it("on one side only lies between full and half, with direct voltage", () => {
    for (const firing of [0, 30, 90, 180]) {
      const { rmsVoltage, directVoltage, warnings } = oneSidedFiring({
        voltage: volts(1),
        resistance: ohms(1),
        firingDegrees: firing,
      });
      const chopped = overPeriod(firing, (v) => v * v) / 2;
      expect(rmsVoltage ** 2).toBeCloseTo(chopped + 0.5, 6);
      const late = overPeriod(firing, (v) => Math.max(v, 0));
      expect(directVoltage).toBeCloseTo(Math.SQRT2 / Math.PI - late, 6);
      expect(warnings).toHaveLength(firing === 0 ? 0 : 1);
    }
  });
});

describe("phase-angle firing of a star without neutral", () => {
  /**
   * Branch voltage by stepping through one period. A thyristor is on once fired while the current it would carry flows its way:
   * which lines conduct is found by trying, as the circuit does. Voltages are of the phase RMS.
   */
  function simulated(firing: number): number {
    const steps = 7200;
    const degree = 360 / steps;
    const phase = (i: number, angle: number): number =>
      Math.SQRT2 * Math.sin(((angle - 120 * i) * Math.PI) / 180);
    // +1 while the forward thyristor of a line conducts, −1 the reverse one, 0 none.
    let on = [0, 0, 0];
    let sum = 0;
    const current = (i: number, angle: number): number => {
      const conducting = [0, 1, 2].filter((k) => on[k] !== 0);
      if (conducting.length < 2) return 0;
      const star = conducting.reduce((total, k) => total + phase(k, angle), 0) / conducting.length;
      return conducting.includes(i) ? phase(i, angle) - star : 0;
    };
    for (let step = 0; step < 2 * steps; step += 1) {
      const angle = (step + 0.5) * degree;
      // Long pulses, refreshed until 150° after the firing angle of 0: a pair of lines is always gated together.
      const gated = [0, 1, 2].map((i) => {
        const own = (((angle - 120 * i) % 360) + 360) % 360;
        if (own >= firing && own < firing + 180 && own < 360) return 1;
        const reverse = (own + 180) % 360;
        return reverse >= firing && reverse < firing + 180 ? -1 : 0;
      });
      // Whatever is on or gated is tried together; the one that would carry the most current against its way drops out, until
      // nothing flows the wrong way: a thyristor whose current has passed zero goes off, and a newly fired one may put another off.
      on = on.map((way, i) => way || (gated[i] as number));
      for (;;) {
        const against = on.map((way, i) => (way === 0 ? 0 : -way * current(i, angle)));
        const conducting = on.filter((way) => way !== 0).length;
        if (conducting < 2) on = [0, 0, 0];
        if (conducting < 2 || Math.max(...against.map((x, i) => (on[i] === 0 ? -9 : x))) < 0) break;
        const worst = against.indexOf(Math.max(...against.map((x, i) => (on[i] === 0 ? -9 : x))));
        on = on.map((way, i) => (i === worst ? 0 : way));
      }
      if (step >= steps) sum += current(0, angle) ** 2;
    }
    return Math.sqrt(sum / steps);
  }

  it.each([0, 15, 30, 45, 59, 60, 61, 75, 89, 90, 91, 110, 130, 149])(
    "at %d° agrees with a simulation",
    (firing) => {
      const { powerFactor } = threePhaseAngleFiring({
        lineVoltage: volts(400),
        branchResistance: ohms(10),
        firingDegrees: firing,
      });
      expect(Math.abs(powerFactor - simulated(firing))).toBeLessThan(2e-3);
    },
  );

  /** Harmonics of one branch voltage by trapezoid over the waves of the simulation's rules, RMS over that of the supply. */
  function analysed(firing: number, order: number): number {
    const steps = 36_000;
    const sine = (degrees: number): number => Math.SQRT2 * Math.sin((degrees * Math.PI) / 180);
    const wave = (x: number): number => {
      if (x >= 180) return -wave(x - 180);
      const isOn = (shift: number): boolean => {
        const own = (((x + shift) % 180) + 180) % 180;
        return own >= firing;
      };
      // Below 60° a line is off from its zero crossing to its firing angle, and nothing else takes it out.
      const [a, b, c] = [isOn(0), isOn(-120), isOn(120)];
      if (!a) return 0;
      if (b && c) return sine(x);
      return ((b ? sine(x) - sine(x - 120) : sine(x) - sine(x + 120)) as number) / 2;
    };
    let [re, im] = [0, 0];
    for (let step = 0; step < steps; step += 1) {
      const x = ((step + 0.5) * 360) / steps;
      re += wave(x) * Math.cos((order * x * Math.PI) / 180);
      im += wave(x) * Math.sin((order * x * Math.PI) / 180);
    }
    return (Math.SQRT2 * Math.hypot(re, im)) / steps;
  }

  it.each([10, 30, 45, 59])(
    "at %d° has the harmonics of a numerical analysis, and none of order 3",
    (firing) => {
      const found = threePhaseAngleFiring({
        lineVoltage: volts(400),
        branchResistance: ohms(10),
        firingDegrees: firing,
      });
      const full = 400 / Math.sqrt(3) / 10;
      expect(found.fundamental / full).toBeCloseTo(analysed(firing, 1), 3);
      for (const { order, current } of found.harmonics) {
        expect(current / full, `${order}`).toBeCloseTo(analysed(firing, order), 3);
      }
      expect(analysed(firing, 3)).toBeLessThan(1e-3);
    },
  );

  it("splits its current into fundamental and harmonics without remainder, and its power into the part in phase", () => {
    for (let firing = 0; firing <= 150; firing += 2.5) {
      const found = threePhaseAngleFiring({
        lineVoltage: volts(400),
        branchResistance: ohms(10),
        firingDegrees: firing,
      });
      const listed = found.harmonics.reduce((sum, { current }) => sum + current ** 2, 0);
      const rest = found.lineCurrent ** 2 - found.fundamental ** 2;
      // Orders above the 25th are not listed; they count where little is chopped off or little is left.
      expect(listed).toBeLessThanOrEqual(rest * (1 + 1e-9) + 1e-9);
      if (firing >= 20 && firing <= 120) expect(listed).toBeGreaterThanOrEqual(0.7 * rest);
      const inPhase = found.fundamental * Math.cos(((found.lagDegrees ?? 0) * Math.PI) / 180);
      expect(Math.sqrt(3) * 400 * inPhase).toBeCloseTo(found.power, 6);
    }
  });

  it("has no step where its formula changes, falls all the way, and balances", () => {
    const at = (firing: number) =>
      threePhaseAngleFiring({ lineVoltage: volts(400), branchResistance: ohms(10), firingDegrees: firing });
    for (const edge of [60, 90]) {
      expect(Math.abs(at(edge - 1e-9).powerRatio - at(edge).powerRatio)).toBeLessThan(1e-9);
      expect(Math.abs(at(edge + 1e-9).powerRatio - at(edge).powerRatio)).toBeLessThan(1e-9);
    }
    expect(at(0).powerRatio).toBeCloseTo(1, 12);
    expect(at(150).powerRatio).toBe(0);
    expect(at(149.9999).powerRatio).toBeLessThan(1e-9);
    let before = 1.1;
    for (let firing = 0; firing <= 150; firing += 0.5) {
      const found = at(firing);
      expectFinite(found, `${firing}°`);
      expect(found.powerRatio).toBeLessThan(before);
      before = found.powerRatio + 1e-15;
      expect(3 * found.branchVoltage * found.lineCurrent).toBeCloseTo(found.power, 6);
    }
  });
});

describe("burst firing", () => {
  it("means duty for power, its root for RMS, and both for the two clamps", () => {
    fc.assert(
      fc.property(between(0, 1), between(1, 700), between(0.5, 500), (duty, v, r) => {
        const found = burstFiring({ voltage: volts(v), resistance: ohms(r), duty });
        expectFinite(found, `duty ${duty}`);
        expect(found.rmsVoltage ** 2 / r).toBeCloseTo(found.meanPower, 6);
        expect(found.trueRmsClamp ** 2 * r).toBeCloseTo(found.meanPower, 6);
        expect(found.averageClamp).toBeLessThanOrEqual(found.trueRmsClamp * (1 + 1e-12));
        expect(2 * found.thyristorRms ** 2).toBeCloseTo(found.trueRmsClamp ** 2, 6);
        const back = burstDuty({ meanPower: found.meanPower, fullPower: found.fullPower });
        expect(back).toBeCloseTo(duty, 12);
        expect(found.warnings).toHaveLength(duty > 0 && duty < 1 ? 1 : 0);
      }),
      runs,
    );
  });

  it("at the invented 65 A and 60 % shows 50 A and 39 A for 60 % of the power", () => {
    const { trueRmsClamp, averageClamp, powerRatio } = burstReadings({ onCurrent: amperes(65), duty: 0.6 });
    // 65·√0.6 and 65·0.6, by hand.
    expect(trueRmsClamp).toBeCloseTo(50.3488, 4);
    expect(averageClamp).toBeCloseTo(39, 12);
    expect(powerRatio).toBe(0.6);
  });
});

describe("what control must say or refuse", () => {
  it("cautions for the neutral of a chopped star: by superposition √3 of the line current at 120° firing", () => {
    const at = (firingDegrees: number) =>
      phaseAngleFiring({ voltage: volts(230), resistance: ohms(10), firingDegrees });
    expect(at(0).warnings).toEqual([]);
    expect(at(180).warnings).toEqual([]);
    expect(at(120).warnings[0]?.message).toMatch(/add in the neutral.*√3/);
    // Three chopped sines 120° apart, added point by point; never above √3 of one of them.
    const ratio = (firing: number): number => {
      let [one, sum] = [0, 0];
      for (let i = 0; i < 36_000; i += 1) {
        const wave = (shift: number): number => {
          const degrees = (i / 100 + 0.005 + shift) % 360;
          return degrees % 180 < firing ? 0 : Math.sin((degrees * Math.PI) / 180);
        };
        one += wave(0) ** 2;
        sum += (wave(0) + wave(120) + wave(240)) ** 2;
      }
      return Math.sqrt(sum / one);
    };
    expect(ratio(120)).toBeCloseTo(Math.sqrt(3), 6);
    for (const firing of [30, 60, 90, 150]) expect(ratio(firing)).toBeLessThan(Math.sqrt(3) + 1e-9);
    const { harmonics, rmsCurrent } = at(90);
    const triplen = harmonics.filter(({ order }) => order % 3 === 0);
    // Harmonics from the 27th are left out: a little below the whole.
    const neutral = 3 * Math.hypot(...triplen.map(({ current }) => current));
    expect(neutral / rmsCurrent / ratio(90)).toBeGreaterThan(0.98);
    expect(neutral / rmsCurrent / ratio(90)).toBeLessThan(1);
  });

  it("refuses a delta on the neutral, and calls without their objects", () => {
    const none = undefined as never;
    const delta = { connection: "delta", neutral: "connected" } as const;
    const calls: readonly (readonly [() => unknown, string, string])[] = [
      [() => singlePhasing({ ...delta, conductingLines: 2 }), "inconsistent", "neutral"],
      [
        () => switchFault({ ...delta, switchedLines: 2, failure: "open", failed: 1 }),
        "inconsistent",
        "neutral",
      ],
      [() => burstFiring(none), "missing", "input"],
      [() => stageBanks(none), "missing", "input"],
      [() => stageBanks({ demand: watts(1) } as never), "missing", "stages"],
      [() => stageBanks({ demand: watts(1), stages: [none] }), "missing", "stages.0"],
    ];
    for (const [call, code, argument] of calls)
      expect(call).toThrow(expect.objectContaining({ code, argument }));
  });
});

describe("the neutral of a star under phase-angle firing", () => {
  const at = (firing: number) =>
    neutralCurrentFired({ branchVoltage: volts(230), branchResistance: ohms(10), firingDegrees: firing });

  it.each([0, 15, 45, 59.9, 60, 75, 90, 105, 119.9, 120, 150, 179])(
    "at %d° is the RMS of three chopped waves added up",
    (firing) => {
      const steps = 60_000;
      let sum = 0;
      for (let step = 0; step < steps; step += 1) {
        const x = ((step + 0.5) * 360) / steps;
        let current = 0;
        for (const shift of [0, 120, 240]) {
          const own = (x + shift) % 360;
          if (own % 180 >= firing) current += Math.SQRT2 * 23 * Math.sin((own * Math.PI) / 180);
        }
        sum += current ** 2;
      }
      expect(Math.abs(at(firing).neutralCurrent - Math.sqrt(sum / steps))).toBeLessThan(5e-3);
    },
  );

  it("is the root of the triplen harmonics times three", () => {
    // Orders 3, 9, 15 and 21 of each branch add up; those above the 25th are not listed.
    for (const firing of [30, 60, 90, 120]) {
      const { harmonics } = phaseAngleFiring({
        voltage: volts(230),
        resistance: ohms(10),
        firingDegrees: firing,
      });
      const triplen = harmonics.filter(({ order }) => order % 3 === 0);
      const listed = 3 * Math.sqrt(triplen.reduce((sum, { current }) => sum + current ** 2, 0));
      expect(listed).toBeLessThanOrEqual(at(firing).neutralCurrent);
      expect(listed).toBeGreaterThan(0.96 * at(firing).neutralCurrent);
    }
  });

  it("is nothing at full conduction and off, √3 times the line from 120° on, highest at 90°", () => {
    expect(at(0)).toMatchObject({ neutralCurrent: 0, ratio: 0, ratioToFull: 0 });
    expect(at(180)).toMatchObject({ neutralCurrent: 0, ratio: null });
    for (const firing of [120, 140, 179]) expect(at(firing).ratio).toBeCloseTo(Math.sqrt(3), 9);
    const all = Array.from({ length: 181 }, (_, firing) => at(firing).ratioToFull);
    expect(all.indexOf(Math.max(...all))).toBe(90);
    // By hand at 90°: 3/π × [(π/6 + 0) + π/6] = 1: the neutral then carries the full line current.
    expect(Math.max(...all)).toBeCloseTo(1, 12);
  });
});

describe("single phasing and failed switches", () => {
  const lines = ["L1", "L2", "L3"] as const;
  it.each([
    ["star", "floating"],
    ["star", "connected"],
    ["delta", "floating"],
  ] as const)("a %s with its star point %s agrees with the network solve", (connection, neutral) => {
    const plan: ModulePlan = {
      banks: [{ id: "A", connection, elementResistance: ohms(8) }],
      ...(neutral === "connected" ? { neutral } : {}),
    };
    const { network } = buildModule(plan);
    const supply =
      neutral === "connected"
        ? supplyFromNeutralVoltages({ voltages: [volts(277), volts(277), volts(277)] })
        : balancedSupply({ lineVoltage: volts(480) });
    const healthy = energise({ network, supply });
    for (let conducting = 0; conducting <= 3; conducting += 1) {
      const lost = lines.slice(conducting);
      const found = singlePhasing({ connection, neutral, conductingLines: conducting });
      const solved = energise({ network, supply: withoutLines({ supply, lines: lost }) });
      expect(found.powerRatio).toBeCloseTo(solved.totalPower / healthy.totalPower, 9);
      const ratios = solved.branches
        .map((branch, i) => branch.power / (healthy.branches[i]?.power as number))
        .sort((a, b) => b - a);
      ratios.forEach((ratio, i) => {
        expect(found.branchPowerRatios[i]).toBeCloseTo(ratio, 9);
      });
      const line = solved.lines[0] as (typeof solved.lines)[0];
      expect(found.lineCurrentRatio).toBeCloseTo(line.current / (healthy.lines[0]?.current as number), 9);
      const returned = solved.lines.find(({ node }) => node === "N")?.current ?? 0;
      expect(found.neutralCurrentRatio).toBeCloseTo(returned / (healthy.lines[0]?.current as number), 9);
    }
  });

  it("counts the lines that conduct", () => {
    const lines = (switchedLines: 2 | 3, failure: "shorted" | "open", failed: number): number =>
      switchFault({ connection: "delta", neutral: "floating", switchedLines, failure, failed })
        .conductingLines;
    expect([0, 1, 2].map((n) => lines(2, "shorted", n))).toEqual([1, 2, 3]);
    expect([0, 1, 2].map((n) => lines(2, "open", n))).toEqual([3, 2, 1]);
    expect([0, 1, 2, 3].map((n) => lines(3, "shorted", n))).toEqual([0, 1, 2, 3]);
    const two = switchFault({
      connection: "star",
      neutral: "floating",
      switchedLines: 2,
      failure: "shorted",
      failed: 0,
    });
    expect(two.powerRatio).toBe(0);
    expect(two.warnings.map(({ code, message }) => [code, /live to earth/.test(message)])).toEqual([
      ["caution", true],
    ]);
  });
});

describe("staging", () => {
  it("delivers the demand wherever steps and trim can, and says what is missing or too much", () => {
    const stage = between(1, 50);
    fc.assert(
      fc.property(
        fc.array(stage, { minLength: 1, maxLength: 8 }),
        fc.option(stage, { nil: undefined }),
        between(0, 300),
        (powers, trim, demand) => {
          const stages = powers.map((power, i) => ({ id: `S${i}`, power: watts(power) }));
          const found = stageBanks({
            stages,
            demand: watts(demand),
            ...(trim === undefined ? {} : { trimmed: { id: "T", power: watts(trim) } }),
          });
          expectFinite(found, "staging");
          const all = powers.reduce((sum, one) => sum + one, trim ?? 0);
          expect(found.delivered - found.excess + found.shortfall).toBeCloseTo(demand, 9);
          expect(Math.min(found.excess, found.shortfall)).toBe(0);
          expect(found.shortfall).toBeCloseTo(Math.max(0, demand - all), 9);
          const fixed = found.on.reduce((sum, id) => sum + (powers[Number(id.slice(1))] as number), 0);
          expect(found.delivered).toBeCloseTo(fixed + found.trimDuty * (trim ?? 0), 9);
          expect(found.on).toEqual(stages.slice(0, found.on.length).map(({ id }) => id));
          // A trimmed stage as large as every step leaves no gap between them.
          if (trim !== undefined && trim >= Math.max(...powers)) expect(found.excess).toBeLessThan(1e-9);
          // One stage fewer would not have met the demand.
          if (found.on.length > 0) {
            const last = powers[found.on.length - 1] as number;
            expect(fixed - last + (trim ?? 0)).toBeLessThan(demand);
          }
        },
      ),
      runs,
    );
  });
});
