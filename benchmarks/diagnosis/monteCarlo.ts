/**
 * The posterior by brute force: worlds drawn under every listed set of faults, weighted by the probability of the very
 * digits that the instruments showed. No linearisation, no Gaussian error, nothing of the inference; slow, so for small
 * modules only.
 */
import { Chance } from "./chance.ts";
import type { DiagnosedFault, DiagnosisInput, FaultPriors, FieldReading, Instrument } from "./contract.ts";
import {
  energised,
  type Live,
  size,
  trueCurrent,
  trueDrop,
  trueInsulation,
  trueResistance,
  trueVoltage,
} from "./inside.ts";
import { drawnFrom } from "./plan.ts";
import { listedSets, makeWorld, type World, withParameters } from "./world.ts";

export interface Weighed {
  readonly faults: readonly DiagnosedFault[];
  readonly probability: number;
  /** Standard error of the probability from the finite number of drawn worlds. */
  readonly standardError: number;
}

/** Probability that an instrument of this gain shows these digits for a true value. */
function showing(
  reads: number,
  value: number,
  gain: number,
  { ofReading, digits, resolution }: Instrument,
): number {
  const middle = value * (1 + gain);
  const limit = (ofReading / 2) * value + digits * resolution;
  const low = reads < resolution / 2 ? Number.NEGATIVE_INFINITY : reads - resolution / 2;
  const overlap = Math.min(reads + resolution / 2, middle + limit) - Math.max(low, middle - limit);
  return Math.max(0, overlap) / (2 * limit);
}

/** Probability of the whole sheet in one drawn world; instruments' gains and leads are drawn with it. */
function sheetProbability(world: World, input: DiagnosisInput, chance: Chance): number {
  const { instruments, readings } = input;
  const gains = new Map<Instrument, number>();
  const gainOf = (instrument: Instrument): number => {
    const known = gains.get(instrument);
    if (known !== undefined) return known;
    const drawn = chance.between(-instrument.ofReading / 2, instrument.ofReading / 2);
    gains.set(instrument, drawn);
    return drawn;
  };
  const ohmmeter = instruments.ohmmeter as NonNullable<typeof instruments.ohmmeter>;
  const shows = (reads: number, value: number, instrument: Instrument | undefined): number =>
    showing(reads, value, gainOf(instrument as Instrument), instrument as Instrument);
  const leads = ohmmeter.leads === "taken off" ? 0 : chance.between(0, 0.5);
  let probability = typeof ohmmeter.leads === "object" ? shows(ohmmeter.leads.shorted, leads, ohmmeter) : 1;
  let live: Live | undefined;
  const now = (): Live => {
    live ??= energised(world);
    return live;
  };
  const of = (one: FieldReading): number => {
    switch (one.kind) {
      case "resistance": {
        const value = trueResistance(world, one.from, one.to, one.only);
        if (value === "open" || one.reads === "open") return value === one.reads ? 1 : 0;
        return shows(one.reads, value + leads, ohmmeter);
      }
      case "insulation": {
        const value = trueInsulation(world, one.from, chance.logBetween(1e6, 10e9), one.only);
        return one.reads === "open" ? 0 : shows(one.reads, value, instruments.insulationTester);
      }
      case "current":
        return shows(one.reads, size(trueCurrent(world, now(), one.at, one.into)), instruments.clamp);
      case "voltage":
        return shows(one.reads, trueVoltage(world, now(), one.from, one.to), instruments.voltmeter);
      default:
        return shows(one.reads, trueDrop(now(), one.across), instruments.millivoltmeter);
    }
  };
  for (const one of readings) {
    if (probability === 0) return 0;
    probability *= of(one);
  }
  return probability;
}

/** Posterior over all listed sets of faults, best first. */
export function monteCarlo(input: DiagnosisInput, worlds: number, seed: number): readonly Weighed[] {
  const drawn = drawnFrom(input.module, input.supply?.lineVoltage as number);
  const sets = listedSets(drawn, input.priors as Required<FaultPriors>, input.depth ?? "single");
  const weighed = sets.map(({ faults, odds }, stream) => {
    const chance = new Chance(seed, stream);
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < worlds; i += 1) {
      const world = makeWorld(
        chance,
        drawn,
        faults.map((fault) => withParameters(chance, fault)),
      );
      const p = sheetProbability(world, input, chance);
      sum += p;
      squares += p ** 2;
    }
    const mean = sum / worlds;
    const error = Math.sqrt(Math.max(0, squares / worlds - mean ** 2) / worlds);
    return { faults, weight: odds * mean, error: odds * error };
  });
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0);
  return weighed
    .map(({ faults, weight, error }) => ({
      faults,
      probability: weight / total,
      standardError: error / total,
    }))
    .sort((a, b) => b.probability - a.probability);
}
