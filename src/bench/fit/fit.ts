/** Least squares of any redundant set of ohm readings into branch resistances and the resistance of the leads. */
import { findBranch, type Network, withResistance } from "../../circuit/index.ts";
import { chiSquareSurvival } from "../../numeric/index.ts";
import {
  checkBetween,
  checkNonNegative,
  checkOneOf,
  checkOpenOr,
  checkPositive,
  fail,
  given,
  type Ohms,
} from "../../quantity/index.ts";
import { gaussNewton, LEADS, type Observation, observationsOf, type Setting } from "./gaussNewton.ts";
import { findOpens } from "./openSearch.ts";
import type { FittedBranch, FittedReading, LeadKnowledge, ResistanceFit, TerminalOhms } from "./types.ts";

function checkSetting({ network, unknown, readings, leads, significance }: Setting): void {
  for (const id of unknown) {
    const { resistance } = findBranch({ network, id });
    // The network's value is where the fit starts from.
    if (resistance === "open" || resistance === 0) {
      fail({
        code: "inconsistent",
        path: "unknown",
        expected: "branches with a resistance to start from",
        received: id,
      });
    }
  }
  if (readings.length === 0) {
    fail({ code: "missing", path: "readings", expected: "at least one reading", received: undefined });
  }
  readings.forEach(({ reads, standardUncertainty }, i) => {
    if (reads === "open") return;
    checkOpenOr(`readings.${i}.reads`, reads, checkNonNegative);
    checkPositive(`readings.${i}.standardUncertainty`, standardUncertainty as number, "Ω");
  });
  if (typeof leads === "object" && leads !== null) {
    checkNonNegative("leads.shorted", leads.shorted, "Ω");
    checkPositive("leads.standardUncertainty", leads.standardUncertainty, "Ω");
  } else checkOneOf("leads", leads, ["unknown", "taken off"]);
  checkBetween("significance", significance, 0, 1);
}

/**
 * Branch resistances, and the resistance of the leads, from any set of ohm readings between nodes of the dead network.
 *
 * Every reading is modelled as the network's resistance between its two probes plus the leads; OL readings decide which
 * branches are open, the finite ones are fitted by weighted least squares. χ² with the readings to spare says whether they agree
 * with each other; what they do not determine is named, not guessed. A gain error of the meter scales all values together and
 * is invisible to χ².
 * @param input.network - the network with nominal resistances to start from, one branch for each unknown
 * @param input.unknown - branches to determine; all if left out. Others count as exactly known
 * @param input.readings - the readings, at least one, leads not taken off (unless said so in `leads`)
 * @param input.leads - what is known of the leads
 * @param input.significance - probability below which the readings count as inconsistent, 0 to 1; 0.01 if left out (common practice)
 * @returns branches, leads, covariance, residuals, χ² verdict, what is not identifiable
 * @throws ElectroheatError `missing`, `unknown-name`, `inconsistent`, `not-a-number`, `out-of-range`, `no-convergence`
 * @source weighted least squares (Gauss-Newton); sensitivities by Cohn's theorem, see terminalReading
 * @example
 * ```ts
 * const { network } = buildModule({ banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] });
 * const reads = (from: string, to: string, value: number): TerminalOhms =>
 *   ({ from, to, reads: ohms(value), standardUncertainty: ohms(0.06) });
 * const fit = fitTerminalReadings({
 *   network,
 *   readings: [
 *     reads("L1", "S", 7.9), reads("L2", "S", 7.9), reads("L3", "S", 7.8),
 *     reads("L1", "L2", 15.5), reads("L2", "L3", 15.5), reads("L3", "L1", 15.5),
 *   ],
 *   leads: "unknown",
 * });
 * [...fit.branches.map((branch) => branch.resistance), fit.leads.resistance] // => [7.650, 7.650, 7.600, 0.2333]
 * ```
 * @since 0.1.0
 */
export function fitTerminalReadings(input: {
  readonly network: Network;
  readonly unknown?: readonly string[];
  readonly readings: readonly TerminalOhms[];
  readonly leads: LeadKnowledge;
  readonly significance?: number;
}): ResistanceFit {
  given(input);
  const { network, readings, leads, significance = 0.01 } = input;
  const unknown = input.unknown ?? network.branches.map((branch) => branch.id);
  const setting: Setting = { network, unknown, readings, leads, significance };
  checkSetting(setting);
  const all = network.branches.map((branch) => branch.id);
  const { sets, unfinished } = findOpens(
    network,
    unknown,
    readings.map(({ from, to, reads, only = all }) => ({ from, to, only, open: reads === "open" })),
  );
  if (unfinished) return withoutFit(setting, "partly", []);
  if (sets.length === 0) return withoutFit(setting, "contradictory", []);
  const [certain, ...others] = sets as [readonly string[], ...(readonly string[])[]];
  // Several choices fit the OL readings alike: nothing finite can be attributed to a branch before that is settled.
  if (others.length > 0) return withoutFit(setting, "partly", sets);
  return fitWithOpens(setting, certain);
}

function withoutFit(
  setting: Setting,
  outcome: "partly" | "contradictory",
  sets: readonly (readonly string[])[],
): ResistanceFit {
  const nothing = (id: string): FittedBranch => ({
    id,
    resistance: null,
    standardUncertainty: null,
    atLeast: null,
  });
  return {
    outcome,
    branches: setting.unknown.map(nothing),
    leads: nothing(LEADS),
    covariance: [],
    fitted: [],
    readings: setting.readings.map(({ from, to, reads }) => ({
      from,
      to,
      reads,
      predicted: null,
      residual: null,
    })),
    chiSquare: 0,
    degreesOfFreedom: 0,
    pValue: null,
    consistency: "untestable",
    notIdentifiable: [...setting.unknown],
    openChoices: sets,
  };
}

/** Nothing finite was read: only what is open is known. */
function openOnly(setting: Setting, opens: readonly string[], names: readonly string[]): ResistanceFit {
  const none = withoutFit(setting, "partly", []);
  return {
    ...none,
    outcome: opens.length === setting.unknown.length ? "solved" : "partly",
    branches: setting.unknown.map((id) => fittedBranch({ id, opens, names: [], values: [], variances: [] })),
    notIdentifiable: names,
  };
}

/** Branches that came out at 0 Ω, with the uncertainty of that. */
type Shorts = ReadonlyMap<string, number>;

function fitWithOpens(setting: Setting, opens: readonly string[], shorts: Shorts = new Map()): ResistanceFit {
  const { unknown, leads, significance } = setting;
  let start = setting.network;
  for (const id of opens) start = withResistance({ network: start, id, resistance: "open" });
  for (const id of shorts.keys()) start = withResistance({ network: start, id, resistance: 0 as Ohms });
  const closed = unknown.filter((id) => !opens.includes(id) && !shorts.has(id));
  const names = leads === "taken off" ? closed : [...closed, LEADS];
  if (observationsOf(setting).length === 0) return openOnly(setting, opens, names);
  const settled = gaussNewton(setting, closed, start);
  if (settled.state === "restless") return withoutFit(setting, "partly", []);
  // A side of a closed delta can be open without any OL reading: it shows as a resistance that grows without end.
  if (settled.state === "runaway") return fitWithOpens(setting, [...opens, settled.id], shorts);
  // 0 Ω is the least a branch can have: it is held there, and the rest is fitted again.
  if (settled.state === "shorted") {
    return fitWithOpens(setting, opens, new Map([...shorts, [settled.id, settled.standardUncertainty]]));
  }
  const { values, fit } = settled;
  const variances = names.map((_, k) => (settled.unknown.has(k) ? null : (fit.covariance[k]?.[k] ?? null)));
  const places = names.flatMap((_, k) => (variances[k] === null ? [] : [k]));
  const pValue =
    fit.degreesOfFreedom > 0
      ? chiSquareSurvival({ chiSquare: fit.chiSquare, degreesOfFreedom: fit.degreesOfFreedom })
      : null;
  const branches = unknown.map((id) => {
    const u = shorts.get(id);
    if (u !== undefined) return { id, resistance: 0 as Ohms, standardUncertainty: u as Ohms, atLeast: null };
    const nominal = findBranch({ network: setting.network, id }).resistance as number;
    return fittedBranch({ id, opens, names, values, variances, nominal });
  });
  const leadsFit =
    leads === "taken off"
      ? { id: LEADS, resistance: 0 as Ohms, standardUncertainty: 0 as Ohms, atLeast: null }
      : fittedBranch({ id: LEADS, opens: [], names, values, variances });
  const unclear = [...branches, leadsFit].filter((one) => one.resistance === null).map((one) => one.id);
  return {
    outcome: unclear.some((name) => name !== LEADS) ? "partly" : "solved",
    branches,
    leads: leadsFit,
    covariance: places.map((p) => places.map((q) => fit.covariance[p]?.[q] as number)),
    fitted: places.map((k) => names[k] as string),
    readings: readingsAgainst(setting, settled.predicted),
    chiSquare: fit.chiSquare,
    degreesOfFreedom: fit.degreesOfFreedom,
    pValue,
    consistency: pValue === null ? "untestable" : pValue < significance ? "inconsistent" : "consistent",
    notIdentifiable: unclear,
    openChoices: [],
  };
}

function readingsAgainst(setting: Setting, predicted: readonly number[]): readonly FittedReading[] {
  const observations = observationsOf(setting);
  return setting.readings.map((reading) => {
    const { from, to, reads } = reading;
    const k = observations.findIndex((one) => one.reading === reading);
    if (reads === "open" || k < 0) return { from, to, reads, predicted: null, residual: null };
    const value = predicted[k] as number;
    const residual = (reads - value) / (observations[k] as Observation).uncertainty;
    return { from, to, reads, predicted: value as Ohms, residual };
  });
}

/**
 * Above this relative standard uncertainty a resistance is bounded from below rather than known. Relative to the nominal value
 * where the branch reads less: a few milliohms known to a few milliohms are well known beside 8 Ω.
 */
const TOO_VAGUE = 0.5;

function fittedBranch(input: {
  readonly id: string;
  readonly opens: readonly string[];
  readonly names: readonly string[];
  readonly values: readonly number[];
  readonly variances: readonly (number | null)[];
  readonly nominal?: number;
}): FittedBranch {
  const { id, opens, names, values, variances, nominal = 0 } = input;
  if (opens.includes(id)) return { id, resistance: "open", standardUncertainty: null, atLeast: null };
  const k = names.indexOf(id);
  const variance = variances[k] ?? null;
  if (variance === null) return { id, resistance: null, standardUncertainty: null, atLeast: null };
  const value = values[k] as number;
  const u = Math.sqrt(variance);
  if (id !== LEADS && u > TOO_VAGUE * Math.max(value, nominal)) {
    // Conductance is what the readings see of a very high resistance: its upper end bounds the resistance from below.
    return {
      id,
      resistance: null,
      standardUncertainty: null,
      atLeast: (1 / (1 / value + (2 * u) / value ** 2)) as Ohms,
    };
  }
  return { id, resistance: value as Ohms, standardUncertainty: u as Ohms, atLeast: null };
}
