/** What the module draws as found and as repaired, and what happens if any one element opens. */
import {
  balancedSupply,
  buildModule,
  type EnergisedNetwork,
  energise,
  faultScan,
  type HeatingModule,
  type Network,
  type Supply,
  withResistance,
} from "../circuit/index.ts";
import { isElectroheatError, type Ohms, type Open, type Watts } from "../quantity/index.ts";
import { enlargement } from "./assessResistance.ts";
import type { BranchFinding, Draw, DrawAssessment, ResistanceAssessment, WhatIfRow } from "./assessTypes.ts";
import type { BranchModule } from "./branchModule.ts";
import type { ResistanceFit } from "./fitTypes.ts";
import type { ParsedRecord } from "./recordParsed.ts";
import type { SupplyState } from "./supplyState.ts";

/** Branch values at working temperature, and what became of those nobody measured. */
export interface HotBranches {
  /** As found: `null` where the readings do not settle it. */
  readonly asFound: ReadonlyMap<string, Ohms | Open | null>;
  /** Repaired: faulty and unmeasured branches at their target. */
  readonly repaired: ReadonlyMap<string, Ohms>;
  /** Branches of which the repaired value is the target. */
  readonly atTarget: readonly string[];
}

/** Cold values times the temperature factor. */
export function hotBranches(resistances: ResistanceAssessment, temperatureFactor: number): HotBranches {
  const asFound = new Map<string, Ohms | Open | null>();
  const repaired = new Map<string, Ohms>();
  const atTarget: string[] = [];
  for (const branch of resistances.branches) {
    const { id, resistance, target, finding } = branch;
    const value = typeof resistance === "number" ? ((resistance * temperatureFactor) as Ohms) : null;
    asFound.set(id, value ?? (finding === "open" ? "open" : null));
    const usable =
      value !== null && (finding === "sound" || finding === "undecided" || finding === "unjudged");
    repaired.set(id, usable ? value : ((target * temperatureFactor) as Ohms));
    if (!usable) atTarget.push(id);
  }
  return { asFound, repaired, atTarget };
}

function withBranches(network: Network, values: ReadonlyMap<string, Ohms | Open>): Network {
  let changed = network;
  for (const [id, resistance] of values) changed = withResistance({ network: changed, id, resistance });
  return changed;
}

function linesOf(state: EnergisedNetwork, module: HeatingModule): Draw["lines"] {
  const onNeutral = Object.values(module.starPoints).includes("N");
  return state.lines
    .filter(({ node }) => node !== "N" || onNeutral)
    .map(({ node, current }) => ({ node, current }));
}

/**
 * Standard uncertainty of the power: dP/dR = −I² for each branch of a network at fixed voltages, with the covariance of the fit
 * and the meter's gain, which acts on all resistances alike.
 */
function powerUncertainty(
  state: EnergisedNetwork,
  fit: ResistanceFit | null,
  factor: number,
  gain: number,
  measured: readonly string[],
): Watts | null {
  if (fit === null || measured.length === 0) return null;
  const current = new Map(state.branches.map((branch) => [branch.id, branch.current as number]));
  // Branches taken at their target are assumed, not measured: their fit says nothing of the draw.
  const slope = fit.fitted.map((id) => (measured.includes(id) ? -((current.get(id) ?? 0) ** 2) * factor : 0));
  let variance = 0;
  fit.covariance.forEach((row, p) => {
    row.forEach((cov, q) => {
      variance += (slope[p] as number) * (slope[q] as number) * cov;
    });
  });
  return Math.hypot(
    enlargement(fit) * Math.sqrt(Math.max(0, variance)),
    (state.totalPower * gain) / Math.sqrt(3),
  ) as Watts;
}

/** A short between lines has no steady draw: nothing to print, and a next step says so. */
function unlessShorted(run: () => Draw): Draw | null {
  try {
    return run();
  } catch (error) {
    if (isElectroheatError(error) && error.code === "short-circuit") return null;
    throw error;
  }
}

/** Findings that leave no doubt of the repaired value: sound as it is, or known to be faulty and renewed to target. */
const SETTLED_FINDINGS: readonly BranchFinding[] = ["sound", "outside", "open", "shorted", "high"];

/** Draw as found and as repaired, from the branch network. */
export function assessDraw(input: {
  readonly record: ParsedRecord;
  readonly drawn: BranchModule;
  readonly hot: HotBranches;
  readonly fit: ResistanceFit | null;
  readonly temperatureFactor: number;
  readonly supply: SupplyState;
  readonly resistances: ResistanceAssessment;
}): DrawAssessment {
  const { record, drawn, hot, fit, temperatureFactor, supply, resistances } = input;
  const { network } = drawn.module;
  const gain = record.meter?.ofReading ?? 0;
  const measured = fit !== null && hot.atTarget.length < drawn.module.elements.length;
  const draw = (
    values: ReadonlyMap<string, Ohms | Open>,
    supply: Supply,
    fitted: readonly string[],
  ): Draw => {
    const state = energise({ network: withBranches(network, values), supply });
    return {
      power: state.totalPower,
      standardUncertainty: powerUncertainty(state, fit, temperatureFactor, gain, fitted),
      lines: linesOf(state, drawn.module),
    };
  };
  const sound = [...hot.repaired.keys()].filter((id) => !hot.atTarget.includes(id));
  const plateSupply = balancedSupply({ lineVoltage: record.nameplate.voltage.value });
  const atPlate = draw(hot.repaired, plateSupply, sound);
  const settled = [...hot.asFound].flatMap(([id, value]) => (value === null ? [] : [[id, value] as const]));
  return {
    basis: measured ? "measured resistances" : "nameplate",
    confirmed:
      resistances.consistency !== "inconsistent" &&
      resistances.branches.every(({ finding }) => SETTLED_FINDINGS.includes(finding)),
    asFound:
      settled.length === hot.asFound.size
        ? unlessShorted(() => draw(new Map(settled), supply.asFound, [...hot.asFound.keys()]))
        : null,
    repaired: draw(hot.repaired, supply.repaired, sound),
    repairedAtPlateVoltage: atPlate,
    deviationFromPlate: atPlate.power / record.nameplate.power.value - 1,
  };
}

/** Every single element open, in the module as repaired. */
export function assessWhatIf(
  record: ParsedRecord,
  drawn: BranchModule,
  hot: HotBranches,
  supply: Supply,
): readonly WhatIfRow[] {
  const { wiring } = record;
  const plan = {
    banks: wiring.banks.map(({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }) => ({
      id,
      connection,
      elementsInParallel,
      elementsInSeries,
      elementResistance: 1 as Ohms,
    })),
    ...(wiring.starPoints === undefined ? {} : { starPoints: wiring.starPoints }),
    ...(wiring.neutral === undefined ? {} : { neutral: wiring.neutral }),
  };
  const bankOf = new Map(plan.banks.map((bank) => [bank.id, bank]));
  // Terminal readings cannot see how a branch is shared among its elements: equally, as far as anyone knows.
  const elements = Object.fromEntries(
    buildModule(plan).elements.map(({ id, bank, branch }) => {
      const { elementsInParallel: p, elementsInSeries: s } = bankOf.get(bank) as (typeof plan.banks)[number];
      return [id, (((hot.repaired.get(`${bank}-${branch}`) as number) * p) / s) as Ohms];
    }),
  );
  const onNeutral = Object.values(drawn.module.starPoints).includes("N");
  const effects = faultScan({
    network: buildModule({ ...plan, elements }).network,
    supply,
  });
  return effects.flatMap((effect) => {
    const [fault] = effect.faults;
    if (effect.outcome === "supply shorted" || fault === undefined || fault.kind === "lost line") return [];
    const { worst } = effect;
    return [
      {
        element: fault.id,
        power: effect.totalPower,
        powerRatio: effect.powerRatio,
        lines: effect.lines
          .filter(({ node }) => node !== "N" || onNeutral)
          .map(({ node, current, currentRatio }) => ({ node, current, ratio: currentRatio })),
        worst:
          worst === null
            ? null
            : {
                id: worst.id,
                voltageRatio: worst.voltageRatio as number,
                powerRatio: worst.powerRatio as number,
              },
        gapVoltage: effect.gaps[0]?.voltage ?? null,
      },
    ];
  });
}
