/** What a diagnosis, beyond what branches show by themselves, says of running meanwhile. */
import type { HeatingModule } from "../../circuit/index.ts";
import type { Explanation } from "../diagnosis/question/types.ts";
import { listed } from "../diagnosis/telling/words.ts";
import { branchesOf, type DiagnosisVerdict, isTelling } from "./diagnosisVerdict.ts";

/** Whether elements of another value are concluded from amps alone, and from fewer than the plate's: little conduction does the same. */
export const isFewAmps = ({ explanations: [first] }: DiagnosisVerdict, ohmsRead: boolean): boolean =>
  !ohmsRead &&
  first?.faults.length === 1 &&
  first.faults[0]?.kind === "other rating" &&
  first.estimates.some(({ of, value }) => of === "resistance ratio" && value > 1);

/** What a settled fault of an element or a line asks for before any voltage: the same as where a branch's own reading shows it. */
function settledBefore({ faults, estimates }: Explanation): string | null {
  const lines = faults.flatMap((fault) => (fault.kind === "lost line" ? [fault.line] : []));
  if (lines.length > 0)
    return `Not before ${listed(lines)} ${lines.length > 1 ? "are" : "is"} back and the module has been read on all three lines.`;
  const ratioOf = (i: number): number =>
    estimates.find((one) => one.of === "resistance ratio" && one.fault === i)?.value ?? 1;
  const low = faults.flatMap((fault, i) =>
    fault.kind === "shorted turns" || (fault.kind === "element off value" && ratioOf(i) < 1)
      ? [fault.element]
      : [],
  );
  if (low.length > 0)
    return `Not before ${listed(low)} ${low.length > 1 ? "are" : "is"} explained: touching turns or a path beside ${low.length > 1 ? "them overload" : "it overload"} what is left.`;
  const high = faults.flatMap((fault) => (fault.kind === "element off value" ? [fault.element] : []));
  return high.length === 0
    ? null
    : `Not before ${listed(high)} and the joints on the way to ${high.length > 1 ? "them" : "it"} are cleared: what looks high may be a joint, and a bad joint burns on.`;
}

/** Elements that an explanation holds to be open, where it holds nothing else. */
function openAlone({ faults }: Explanation): readonly string[] {
  const open = faults.flatMap((fault) => (fault.kind === "element open" ? [fault.element] : []));
  return open.length === faults.length ? open : [];
}

/**
 * Elements that are settled on as open, where nothing else is; or one of several alike in a branch that cannot be told apart, for what is
 * left is the same whichever of them it is.
 */
export function elementsOpen(
  { kind, explanations }: DiagnosisVerdict,
  module: HeatingModule,
): readonly string[] {
  const [first, ...others] = explanations;
  if (first === undefined || (kind !== "settled" && kind !== "not told apart")) return [];
  const open = openAlone(first);
  if (kind === "settled" || open.length === 0) return open;
  const placesOf = (one: Explanation): string =>
    JSON.stringify(one.faults.flatMap((fault) => branchesOf(fault, module)).sort());
  const alike = others.every((one) => openAlone(one).length > 0 && placesOf(one) === placesOf(first));
  return alike ? open : [];
}

/** What a diagnosis says of running on. */
export function diagnosedRunning(verdict: DiagnosisVerdict, ohmsRead: boolean): string | null {
  const { kind, explanations } = verdict;
  if (kind === "settled" && isFewAmps(verdict, ohmsRead)) return "Not known before the amps are explained.";
  if (kind === "nothing fits") return "Not known: no fault explains all these readings together.";
  if (!isTelling(verdict)) return null;
  if (kind !== "settled") return "Not known before that is settled; the electrician in charge decides.";
  const [fault, ...others] = (explanations[0] as Explanation).faults;
  const before = settledBefore(explanations[0] as Explanation);
  if (before !== null) return before;
  return fault?.kind === "mis-linked" && fault.as === "star" && others.length === 0
    ? `May run until it is linked as drawn, with less heat: the elements of bank ${fault.bank} carry a third of their power; the customer and the electrician in charge decide.`
    : "The electrician in charge and the customer decide whether it runs meanwhile.";
}
