/** The module as ohm readings at its terminals see it: one resistance for each branch. */
import { buildModule, type HeatingModule } from "../circuit/index.ts";
import type { ColdOhms } from "../quantity/index.ts";
import type { ParsedRecord } from "./recordParsed.ts";

/** The module with one resistance for each branch: what ohm readings at the terminals can see. */
export interface BranchModule {
  readonly module: HeatingModule;
  /** Target of each branch, cold, Ω, by branch name. */
  readonly targets: ReadonlyMap<string, ColdOhms>;
  /** Parallel strings in each branch, by branch name. */
  readonly parallel: ReadonlyMap<string, number>;
}

/** Builds the module with each branch as one element at its target. */
export function branchModule(
  record: ParsedRecord,
  targetOfBank: ReadonlyMap<string, ColdOhms>,
): BranchModule {
  const { wiring } = record;
  const module = buildModule({
    banks: wiring.banks.map(({ id, connection }) => ({
      id,
      connection,
      elementResistance: targetOfBank.get(id) as ColdOhms,
    })),
    ...(wiring.starPoints === undefined ? {} : { starPoints: wiring.starPoints }),
    ...(wiring.neutral === undefined ? {} : { neutral: wiring.neutral }),
  });
  const bankOf = new Map(wiring.banks.map((bank) => [bank.id, bank]));
  return {
    module,
    targets: new Map(module.elements.map(({ id, bank }) => [id, targetOfBank.get(bank) as ColdOhms])),
    parallel: new Map(module.elements.map(({ id, bank }) => [id, bankOf.get(bank)?.elementsInParallel ?? 1])),
  };
}
