/**
 * Whether the stated uncertainties are true: simulated readings with known truth, by a forward model of the tests' own (closed
 * forms and mathjs), fitted again. Seeded, so that each run is the same; bands are four standard errors of the simulated count.
 *
 * Expected: a normal error lies within two standard uncertainties in 95.45 % of cases (normal distribution); z² has the mean 1;
 * p-values of a true model are uniform (Kolmogorov-Smirnov, D·√n < 1.95 at the 0.1 % level).
 */
import {
  assessModule,
  type BenchRecord,
  fitTerminalReadings,
  type LeadKnowledge,
  type ResistanceFit,
  type TerminalOhms,
} from "electroheat/bench";
import { buildModule, type Network } from "electroheat/circuit";
import { type Ohms, type Open, ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { Chance } from "../support/networks.ts";
import {
  deltaReadings,
  distanceFromUniform,
  LINES,
  nodeReading,
  normal,
  PAIRS,
  type Resistor,
  starReadings,
  type Three,
} from "./forward.ts";

const RUNS = 2000;
const WITHIN_TWO = 0.9545;
/** Four standard errors of a share p of n. */
const band = (p: number, n: number): number => 4 * Math.sqrt((p * (1 - p)) / n);

const three = (make: () => number): Three => [make(), make(), make()];
const networkOf = (connection: "star" | "delta", nominal: number): Network =>
  buildModule({ banks: [{ id: "A", connection, elementResistance: ohms(nominal) }] }).network;

interface Trial {
  readonly truth: Three;
  readonly leads: number;
  readonly fit: ResistanceFit;
}

function simulate(
  seed: number,
  make: (chance: Chance) => {
    readonly network: Network;
    readonly truth: Three;
    readonly leads: number;
    readonly readings: readonly { readonly from: string; readonly to: string; readonly value: number }[];
    readonly relative: number;
    readonly knowledge: "unknown" | "taken off" | "shorted";
  },
): readonly Trial[] {
  const chance = new Chance(seed);
  return Array.from({ length: RUNS }, () => {
    const { network, truth, leads, readings, relative, knowledge } = make(chance);
    const read = (value: number): { reads: Ohms; standardUncertainty: Ohms } => {
      const u = relative * value + 0.003;
      return { reads: ohms(value + u * normal(chance)), standardUncertainty: ohms(u) };
    };
    const given = readings.map(({ from, to, value }): TerminalOhms => ({ from, to, ...read(value + leads) }));
    const lead = 0.004;
    const known: LeadKnowledge =
      knowledge === "shorted"
        ? { shorted: ohms(Math.max(0, leads + lead * normal(chance))), standardUncertainty: ohms(lead) }
        : knowledge;
    return { truth, leads, fit: fitTerminalReadings({ network, readings: given, leads: known }) };
  });
}

function expectCalibrated(trials: readonly Trial[]): void {
  // One branch of each module: the three of one module share errors and would not count as three.
  const z = trials.map(({ truth, fit }, i) => {
    const branch = fit.branches[i % 3];
    return (
      ((branch?.resistance as number) - (truth[i % 3] as number)) / (branch?.standardUncertainty as number)
    );
  });
  const covered = z.filter((one) => Math.abs(one) <= 2).length / RUNS;
  expect(Math.abs(covered - WITHIN_TWO)).toBeLessThan(band(WITHIN_TWO, RUNS));
  const mean = z.reduce((sum, one) => sum + one * one, 0) / RUNS;
  expect(Math.abs(mean - 1)).toBeLessThan(4 * Math.sqrt(2 / RUNS));
}

function expectUniform(trials: readonly Trial[], degreesOfFreedom: number): void {
  expect(trials.every(({ fit }) => fit.degreesOfFreedom === degreesOfFreedom)).toBe(true);
  const p = trials.map(({ fit }) => fit.pValue as number);
  expect(distanceFromUniform(p) * Math.sqrt(RUNS)).toBeLessThan(1.95);
  const rejected = trials.filter(({ fit }) => fit.consistency === "inconsistent").length / RUNS;
  expect(Math.abs(rejected - 0.01)).toBeLessThan(band(0.01, RUNS));
}

describe("six readings of a star, leads unknown", () => {
  const trials = simulate(20_261, (chance) => {
    const nominal = chance.spread(2, 60);
    const truth = three(() => nominal * chance.between(0.8, 1.25));
    return {
      network: networkOf("star", nominal),
      truth,
      leads: chance.between(0.05, 0.6),
      readings: starReadings(truth),
      relative: 0.004,
      knowledge: "unknown",
    };
  });

  it("covers the branches as stated", () => expectCalibrated(trials));

  it("covers the leads as stated", () => {
    const covered = trials.filter(
      ({ leads, fit }) =>
        Math.abs((fit.leads.resistance as number) - leads) <= 2 * (fit.leads.standardUncertainty as number),
    );
    expect(Math.abs(covered.length / RUNS - WITHIN_TWO)).toBeLessThan(band(WITHIN_TWO, RUNS));
  });

  it("has uniform p-values, two readings to spare", () => expectUniform(trials, 2));

  it("p is exp(−χ²/2) with two to spare", () => {
    for (const { fit } of trials.slice(0, 200)) {
      expect(Math.abs((fit.pValue as number) / Math.exp(-fit.chiSquare / 2) - 1)).toBeLessThan(1e-10);
    }
  });

  it("flags one reading that is off by ten of its uncertainties", () => {
    const chance = new Chance(77);
    for (let i = 0; i < 300; i += 1) {
      const truth = three(() => 12 * chance.between(0.9, 1.1));
      const bad = chance.whole(0, 5);
      const readings = starReadings(truth).map(
        ({ from, to, value }, k): TerminalOhms => ({
          from,
          to,
          reads: ohms(value + 0.2 + (k === bad ? 0.5 : 0.05 * normal(chance) * 0.5)),
          standardUncertainty: ohms(0.05),
        }),
      );
      const fit = fitTerminalReadings({ network: networkOf("star", 12), readings, leads: "unknown" });
      expect(fit.consistency).toBe("inconsistent");
    }
  });
});

describe("a star read line to line and one line to the star point, leads shorted", () => {
  const trials = simulate(20_262, (chance) => {
    const nominal = chance.spread(2, 60);
    const truth = three(() => nominal * chance.between(0.8, 1.25));
    return {
      network: networkOf("star", nominal),
      truth,
      leads: chance.between(0.1, 0.6),
      readings: starReadings(truth).slice(2),
      relative: 0.004,
      knowledge: "shorted",
    };
  });
  it("covers the branches as stated", () => expectCalibrated(trials));
  it("has uniform p-values, one reading to spare", () => expectUniform(trials, 1));
});

describe("a closed delta, each pair read twice, leads taken off", () => {
  const trials = simulate(20_263, (chance) => {
    const nominal = chance.spread(2, 60);
    const truth = three(() => nominal * chance.between(0.8, 1.25));
    const values = deltaReadings(truth);
    const once = PAIRS.map(([from, to], i) => ({ from, to, value: values[i] as number }));
    return {
      network: networkOf("delta", nominal),
      truth,
      leads: 0,
      readings: [...once, ...once],
      relative: 0.002,
      knowledge: "taken off",
    };
  });
  it("covers the sides as stated, though the model is not linear", () => expectCalibrated(trials));
  it("has uniform p-values, three readings to spare", () => expectUniform(trials, 3));
});

describe("the meter's own limits through the whole assessment", () => {
  // Two separate stars read with the links in: every reading sees both stars. Forward model by mathjs. Errors uniform inside the
  // accuracy of ±(0.5 % + 2 digits), one gain error for the whole job, then rounded to the display.
  const banks = [
    { id: "A", connection: "star" },
    { id: "B", connection: "star" },
  ] as const;
  const chance = new Chance(5150);
  const jobs = Array.from({ length: 400 }, () => {
    const nominal = chance.spread(4, 40);
    const truth = new Map<string, number>();
    const resistors: Resistor[] = banks.flatMap(({ id }) =>
      LINES.map((line) => {
        const value = nominal * chance.between(0.93, 1.08);
        truth.set(`${id}-${line}`, value);
        return { from: line, to: `S-${id}`, ohms: value };
      }),
    );
    const leads = chance.between(0.1, 0.4);
    const gain = chance.between(-0.005, 0.005);
    const read = (from: string, to: string): string => {
      const value = nodeReading(resistors, from, to) + leads;
      const seen = value * (1 + gain) + chance.between(-0.02, 0.02);
      return `${seen.toFixed(2)} Ω`;
    };
    const pairs: readonly (readonly [string, string])[] = [
      ...banks.flatMap(({ id }) => LINES.map((line) => [line, `S-${id}`] as const)),
      ...PAIRS,
      ["S-A", "S-B"],
    ];
    const record: BenchRecord = {
      title: "simulated",
      nameplate: { power: (2 * 480 * 480) / nominal, voltage: 480 },
      wiring: { banks, starPoints: "separate" },
      tolerance: { low: -0.1, high: 0.1 },
      instruments: {
        ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: `${leads.toFixed(2)} Ω` } },
      },
      asFound: { ohms: pairs.map(([from, to]) => ({ from, to, reads: read(from, to) })) },
    };
    return { truth, assessment: assessModule(record) };
  });
  const branches = jobs.flatMap(({ truth, assessment }) =>
    assessment.asFound!.resistances.branches.map((branch) => ({
      branch,
      truth: truth.get(branch.id) as number,
    })),
  );

  it("expanded uncertainties cover the truth in at least 95 of 100 branches", () => {
    const value = (one: (typeof branches)[number]): number => one.branch.resistance as Exclude<Ohms, Open>;
    const covered = branches.filter(
      (one) => Math.abs(value(one) - one.truth) <= (one.branch.expandedUncertainty as number),
    );
    expect(branches).toHaveLength(2400);
    expect(covered.length / branches.length).toBeGreaterThan(0.95);
  });

  it("uncertainties are not blown up either: the usual error is a fair part of them", () => {
    const rms = Math.sqrt(
      branches.reduce(
        (sum, { branch, truth }) =>
          sum + (((branch.resistance as number) - truth) / (branch.standardUncertainty as number)) ** 2,
        0,
      ) / branches.length,
    );
    expect(rms).toBeGreaterThan(0.4);
    expect(rms).toBeLessThan(1.3);
  });

  it("a firm verdict is wrong in less than 3 of 100 branches", () => {
    const wrong = branches.filter(({ branch, truth }) => {
      const inside = Math.abs(truth / (branch.target as number) - 1) <= 0.1;
      const { verdict } = branch.judgement as NonNullable<typeof branch.judgement>;
      return (verdict === "within" && !inside) || (verdict === "outside" && inside);
    });
    expect(wrong.length / branches.length).toBeLessThan(0.03);
  });

  it("readings within the meter's accuracy are hardly ever called contradictory", () => {
    const flagged = jobs.filter(
      ({ assessment }) => assessment.asFound?.resistances.consistency === "inconsistent",
    );
    expect(flagged.length / jobs.length).toBeLessThan(0.03);
  });

  it("the stated power covers the true one", () => {
    const covered = jobs.filter(({ truth, assessment }) => {
      // Floating stars by Millman's theorem, cold taken as hot.
      const power = banks.reduce((sum, { id }) => {
        const [a, b, c] = LINES.map((line) => truth.get(`${id}-${line}`) as number) as unknown as Three;
        return sum + (480 * 480 * (a + b + c)) / (a * b + b * c + c * a);
      }, 0);
      const drawn = assessment.draw?.asFound;
      return drawn != null && Math.abs(drawn.power - power) <= 2 * (drawn.standardUncertainty as number);
    });
    expect(covered.length / jobs.length).toBeGreaterThan(0.95);
  });
});
