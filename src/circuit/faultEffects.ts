/** The effect of named faults: what their kind leaves, told of the branches that were asked for. */
import { EQUAL_WITHIN } from "../numeric/index.ts";
import type { Volts } from "../quantity/index.ts";
import { type Model, type Outlook, outlookOf } from "./faultOutlook.ts";
import { type FaultStudy, NEGLIGIBLE } from "./faultStudy.ts";
import type { BranchFault, Fault, FaultEffect, SurvivorState } from "./faultTypes.ts";

/** Outlooks worked out so far in one scan, by what is broken; `null` for a shorted supply. */
export type Outlooks = Map<number, Outlook | null>;

/** A number for what is broken but for the names of twins. */
function keyOf(from: FaultStudy, faults: readonly BranchFault[]): number {
  const kinds = 2 * from.twins.members.length;
  let key = 0;
  for (const fault of faults) {
    const group = from.twins.groupOf[from.position.get(fault.id) as number] as number;
    key = key * (kinds + 1) + 2 * group + (fault.kind === "open" ? 1 : 2);
  }
  return key;
}

/** The outlook of one or two broken branches of a scan: twins share it. */
export function knownOutlook(
  from: FaultStudy,
  faults: readonly BranchFault[],
  known: Outlooks,
): Outlook | null {
  const key = keyOf(from, faults);
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = outlookOf(from, faults);
  known.set(key, made);
  return made;
}

/** Spelled out, which is several times faster than a spread; this runs for every survivor of every kind of fault. */
function named(from: FaultStudy, i: number, model: Model): SurvivorState {
  const { voltage, current, power, voltageRatio, currentRatio, powerRatio } = model;
  const id = from.network.branches[i]?.id as string;
  return { id, voltage, current, power, voltageRatio, currentRatio, powerRatio };
}

function worstOf(from: FaultStudy, outlook: Outlook, broken: readonly number[]): SurvivorState | null {
  if (!(outlook.worstRatio > NEGLIGIBLE)) return null;
  const least = outlook.worstRatio * (1 - EQUAL_WITHIN);
  for (const i of from.elements) {
    const model = outlook.models[from.twins.groupOf[i] as number] as Model | null;
    if (model !== null && (model.powerRatio ?? 0) >= least && !broken.includes(i))
      return named(from, i, model);
  }
  return null;
}

function survivorsOf(
  from: FaultStudy,
  outlook: Outlook,
  broken: readonly number[],
): readonly SurvivorState[] {
  outlook.named ??= from.elements.map((i) => {
    const model = outlook.models[from.twins.groupOf[i] as number] as Model | null;
    return model === null ? null : named(from, i, model);
  });
  // A copy without the broken ones costs a third of looking at each: a scan makes one for every set. A group without survivors is
  // broken to its last member.
  const survivors = outlook.named.slice();
  const slots: number[] = [];
  for (const branch of broken) slots.push(from.slotOf[branch] as number);
  slots.sort((a, b) => b - a);
  for (const slot of slots) if (slot >= 0) survivors.splice(slot, 1);
  return survivors as SurvivorState[];
}

/** The effect of faults that have been checked, by what they leave. */
export function effectOf(
  from: FaultStudy,
  faults: readonly Fault[],
  keep: "all" | "worst",
  outlook: Outlook | null,
): FaultEffect {
  if (outlook === null) return { faults, outcome: "supply shorted" };
  const broken: number[] = [];
  const gaps: { readonly id: string; readonly voltage: Volts | null }[] = [];
  for (let k = 0; k < faults.length; k += 1) {
    const fault = faults[k] as Fault;
    if (fault.kind === "lost line") continue;
    broken.push(from.position.get(fault.id) as number);
    if (fault.kind === "open") gaps.push({ id: fault.id, voltage: outlook.gaps[k] ?? null });
  }
  const worst = worstOf(from, outlook, broken);
  const { totalPower, lines } = outlook;
  return {
    faults,
    outcome: totalPower > NEGLIGIBLE * from.healthy.totalPower ? "runs" : "dead",
    totalPower,
    powerRatio: totalPower / from.healthy.totalPower,
    lines,
    survivors: keep === "all" ? survivorsOf(from, outlook, broken) : worst === null ? [] : [worst],
    worst,
    gaps,
  };
}
