/** Branches as read, in faults of their elements. */
import type { buildModule, Fault } from "../../circuit/index.ts";
import type { BranchAssessment } from "../assessTypes.ts";
import type { ParsedRecord } from "../record/parsed.ts";

type Bank = ParsedRecord["wiring"]["banks"][number];

/** How many of the parallel strings of a branch are open: all, as many as its reading says, or none. */
function openStrings({ finding, openElements }: BranchAssessment, parallel: number): number {
  return finding === "open" ? parallel : finding === "outside" ? (openElements ?? 0) : 0;
}

/**
 * Faults as the readings show them. One broken element opens its string; a branch is shorted only if all of its elements in series
 * are. Which string it is makes no difference: they are alike.
 */
export function branchFaults(
  record: ParsedRecord,
  branches: readonly BranchAssessment[],
  elements: ReturnType<typeof buildModule>["elements"],
): readonly Fault[] {
  const bankOf = new Map(record.wiring.banks.map((bank) => [bank.id, bank]));
  return branches.flatMap((branch): readonly Fault[] => {
    const own = elements.filter((element) => `${element.bank}-${element.branch}` === branch.id);
    const { bank } = own[0] as (typeof own)[number];
    const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bankOf.get(bank) as Bank;
    const strings = Array.from({ length: parallel }, (_, n) => own.slice(n * series, (n + 1) * series));
    const broken = strings.slice(0, openStrings(branch, parallel));
    const bridged = branch.finding === "shorted" ? strings.slice(0, 1).flat() : [];
    return [
      ...broken.map((string): Fault => ({ kind: "open", id: (string[0] as (typeof own)[number]).id })),
      ...bridged.map(({ id }): Fault => ({ kind: "short", id })),
    ];
  });
}
