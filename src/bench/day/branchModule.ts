/** The module as ohm readings at its terminals see it, and element by element. */
import { buildModule, type HeatingModule, type ModulePlan } from "../../circuit/index.ts";
import type { ColdOhms, Ohms } from "../../quantity/index.ts";
import type { ParsedRecord } from "../record/parsed.ts";

/** The module with one resistance for each branch: what ohm readings at the terminals can see. */
export interface BranchModule {
  readonly module: HeatingModule;
  /** Target of each branch from the nameplate, cold, Ω, by branch name; empty without a nameplate. */
  readonly targets: ReadonlyMap<string, ColdOhms>;
  /** Parallel strings in each branch, by branch name. */
  readonly parallel: ReadonlyMap<string, number>;
  /** What a branch has in common with those it may be compared to: connection and count of elements. */
  readonly kind: ReadonlyMap<string, string>;
}

type Bank = ParsedRecord["wiring"]["banks"][number];

/** What a plan says beside its banks. */
function linksOf({ wiring }: ParsedRecord): Pick<ModulePlan, "starPoints" | "neutral"> {
  return {
    ...(wiring.starPoints === undefined ? {} : { starPoints: wiring.starPoints }),
    ...(wiring.neutral === undefined ? {} : { neutral: wiring.neutral }),
  };
}

/** Joints as drawn, all of one resistance. */
export function drawnJoints({ wiring }: ParsedRecord, resistance: Ohms): NonNullable<ModulePlan["joints"]> {
  return (wiring.joints ?? []).map(({ id, at, behind }) => ({
    id,
    at,
    resistance,
    ...(behind === undefined ? {} : { behind }),
  }));
}

const kindOf = ({ connection, elementsInParallel = 1, elementsInSeries = 1 }: Bank): string =>
  `${connection} ${elementsInParallel} ${elementsInSeries}`;

/** Builds the module with each branch as one element at its target, or at `start` where there is no nameplate. */
export function branchModule(
  record: ParsedRecord,
  targetOfBank: ReadonlyMap<string, ColdOhms>,
  start: ColdOhms,
): BranchModule {
  const { wiring } = record;
  const plan = {
    banks: wiring.banks.map(({ id, connection }) => ({
      id,
      connection,
      elementResistance: targetOfBank.get(id) ?? start,
    })),
    ...linksOf(record),
  };
  const module = buildModule(plan);
  // Joints count as 0 Ω here; their places are checked all the same.
  if (wiring.joints !== undefined) buildModule({ ...plan, joints: drawnJoints(record, 0 as Ohms) });
  const bankOf = new Map(wiring.banks.map((bank) => [bank.id, bank]));
  const each = <T>(of: (bank: Bank) => T): ReadonlyMap<string, T> =>
    new Map(module.elements.map(({ id, bank }) => [id, of(bankOf.get(bank) as Bank)]));
  return {
    module,
    targets: targetOfBank.size === 0 ? new Map() : each(({ id }) => targetOfBank.get(id) as ColdOhms),
    parallel: each(({ elementsInParallel = 1 }) => elementsInParallel),
    kind: each(kindOf),
  };
}

/** Elements in the whole module. */
export const elementCount = ({ wiring }: ParsedRecord): number =>
  wiring.banks.reduce((sum, { elementsInParallel: p = 1, elementsInSeries: s = 1 }) => sum + 3 * p * s, 0);

/** Beyond so many elements a diagnosis takes longer than anyone waits for a sheet. */
export const MOST_ELEMENTS = 60;

/** Whether readings as found are diagnosed at all. */
export const isDiagnosed = (record: ParsedRecord): boolean =>
  record.nameplate !== undefined && elementCount(record) <= MOST_ELEMENTS;

/**
 * The module element by element, from branch resistances. Terminal readings cannot see how a branch is shared among its elements:
 * equally, as far as anyone knows.
 */
export function elementPlan(record: ParsedRecord, branches: ReadonlyMap<string, number>): ModulePlan {
  const banks = record.wiring.banks.map(
    ({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }) => ({
      id,
      connection,
      elementsInParallel,
      elementsInSeries,
      elementResistance: 1 as Ohms,
    }),
  );
  const bankOf = new Map(banks.map((bank) => [bank.id, bank]));
  const plan = { banks, ...linksOf(record) };
  const elements = Object.fromEntries(
    buildModule(plan).elements.map(({ id, bank, branch }) => {
      const { elementsInParallel: p, elementsInSeries: s } = bankOf.get(bank) as (typeof banks)[number];
      return [id, (((branches.get(`${bank}-${branch}`) as number) * p) / s) as Ohms];
    }),
  );
  return { ...plan, elements };
}
