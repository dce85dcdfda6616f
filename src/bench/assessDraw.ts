/** What the module draws as found and as repaired. */
import {
  balancedSupply,
  type EnergisedNetwork,
  energise,
  type HeatingModule,
  type Network,
  type Supply,
  withResistance,
} from "../circuit/index.ts";
import { isElectroheatError, type Ohms, type Open, type Watts } from "../quantity/index.ts";
import type { BranchFinding, Draw, DrawAssessment, ResistanceAssessment } from "./assessTypes.ts";
import type { BranchModule } from "./day/branchModule.ts";
import type { HotBranches } from "./day/hotBranches.ts";
import { enlargement } from "./day/resistance.ts";
import type { SupplyState } from "./day/supplyState.ts";
import type { ResistanceFit } from "./fit/types.ts";
import type { ParsedRecord } from "./record/parsed.ts";

/** A fit, and the branches whose values are taken from it. */
export interface FitShare {
  readonly fit: ResistanceFit;
  readonly ids: ReadonlySet<string>;
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
 * Standard uncertainty of the power: dP/dR = −I² for each branch of a network at fixed voltages, with the covariance of the fits
 * and the meter's gain, which acts on all resistances alike. Branches taken at their target are assumed, not measured: no fit says
 * anything of them.
 */
function powerUncertainty(
  state: EnergisedNetwork,
  shares: readonly FitShare[],
  factor: number,
  gain: number,
): Watts | null {
  if (shares.every(({ ids }) => ids.size === 0)) return null;
  const current = new Map(state.branches.map((branch) => [branch.id, branch.current as number]));
  let variance = 0;
  for (const { fit, ids } of shares) {
    const slope = fit.fitted.map((id) => (ids.has(id) ? -((current.get(id) as number) ** 2) * factor : 0));
    let own = 0;
    fit.covariance.forEach((row, p) => {
      row.forEach((cov, q) => {
        own += (slope[p] as number) * (slope[q] as number) * cov;
      });
    });
    variance += enlargement(fit) ** 2 * Math.max(0, own);
  }
  return Math.hypot(Math.sqrt(variance), (state.totalPower * gain) / Math.sqrt(3)) as Watts;
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

/** Draw as found and as repaired, from the branch network; null where a branch has neither a value nor a target. */
export function assessDraw(input: {
  readonly record: ParsedRecord;
  readonly drawn: BranchModule;
  readonly hot: HotBranches;
  /** The fit behind the values as found. */
  readonly foundFit: ResistanceFit | null;
  /** The fits behind the values of the repaired module, by the branches taken from each. */
  readonly presentFits: readonly FitShare[];
  readonly temperatureFactor: number;
  /** The supply as found. */
  readonly found: SupplyState;
  /** The supply of the site, for the repaired module. */
  readonly site: SupplyState;
  /** The module as it stands. */
  readonly present: ResistanceAssessment;
}): DrawAssessment | null {
  const { record, drawn, hot, foundFit, presentFits, temperatureFactor, found, site, present } = input;
  const ids = drawn.module.elements.map(({ id }) => id);
  if (!ids.every((id) => hot.repaired.has(id))) return null;
  const gain = record.instruments?.ohmmeter?.ofReading ?? 0;
  const draw = (
    values: ReadonlyMap<string, Ohms | Open>,
    supply: Supply,
    shares: readonly FitShare[],
  ): Draw => {
    const state = energise({ network: withBranches(drawn.module.network, values), supply });
    return {
      power: state.totalPower,
      standardUncertainty: powerUncertainty(state, shares, temperatureFactor, gain),
      lines: linesOf(state, drawn.module),
    };
  };
  const assumed = new Set(hot.atTarget);
  const shares = presentFits.map(({ fit, ids: own }) => ({
    fit,
    ids: new Set([...own].filter((id) => !assumed.has(id))),
  }));
  const plate = record.nameplate;
  const atPlate =
    plate === undefined
      ? null
      : draw(hot.repaired, balancedSupply({ lineVoltage: plate.voltage.value }), shares);
  const settled = [...hot.asFound].flatMap(([id, value]) => (value === null ? [] : [[id, value] as const]));
  const foundShares = foundFit === null ? [] : [{ fit: foundFit, ids: new Set(ids) }];
  return {
    basis: shares.some(({ ids: own }) => own.size > 0) ? "measured resistances" : "nameplate",
    confirmed:
      present.consistency !== "inconsistent" &&
      present.branches.every(({ finding }) => SETTLED_FINDINGS.includes(finding)),
    atTarget: hot.atTarget,
    asFound:
      settled.length === hot.asFound.size
        ? unlessShorted(() => draw(new Map(settled), found.present, foundShares))
        : null,
    repaired: draw(hot.repaired, site.whole, shares),
    repairedAtPlateVoltage: atPlate,
    deviationFromPlate:
      atPlate === null || plate === undefined ? null : atPlate.power / plate.power.value - 1,
  };
}
