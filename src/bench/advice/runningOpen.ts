/** Running on with open branches or open elements in them: what is left, what the survivors carry, what comes first. */
import {
  buildModule,
  energise,
  type Fault,
  faultEffect,
  type ModulePlan,
  type Supply,
} from "../../circuit/index.ts";
import type { Ohms } from "../../quantity/index.ts";
import type { BranchAssessment } from "../assessTypes.ts";
import { branchFaults } from "../day/branchFaults.ts";
import type { HotBranches } from "../day/hotBranches.ts";
import { loadedNeutral } from "../degraded/cautions.ts";
import { waysOf } from "../degraded/ways.ts";
import { branchOf } from "../diagnosis/telling/likeElements.ts";
import type { ParsedRecord } from "../record/parsed.ts";

/** A module with its elements sound, and its supply. */
export interface OpenModule {
  readonly record: ParsedRecord;
  /** Element by element, at working temperature. */
  readonly plan: ModulePlan;
  readonly supply: Supply;
}

/** Branches with every element sound: a value read with elements of it open is not the one it has when sound. */
export function soundValues(
  { repaired, atTarget }: HotBranches,
  elementsOpen: readonly string[],
  { wiring }: ParsedRecord,
): ReadonlyMap<string, Ohms> {
  const values = new Map(repaired);
  for (const branch of new Set(elementsOpen.map(branchOf))) {
    const { elementsInParallel = 1 } = wiring.banks.find(({ id }) => branch.startsWith(`${id}-L`)) ?? {};
    const open = elementsOpen.filter((element) => branchOf(element) === branch).length;
    const value = repaired.get(branch);
    // Where all of it is open there is no value to be read.
    if (value !== undefined && !atTarget.includes(branch) && open < elementsInParallel)
      values.set(branch, (value * (1 - open / elementsInParallel)) as Ohms);
  }
  return values;
}

/** A survivor above this part of its own sound load is over-stressed; below, it is the unbalance of supply and elements. */
const STRESSED = 1.03;
/** Above this it is not run at full power as it stands. */
const OVERLOADED = 1.1;

const WHO = "if protection, customer and the electrician in charge accept it";

const MAKER = ", which only its maker can allow";

/** What untying the star points leaves, where that relieves the survivors; the maker's word where it does not or nothing is tied. */
function relief(plan: ModulePlan, supply: Supply, faults: readonly Fault[]): string {
  const way = waysOf(plan, buildModule(plan), faults).find(({ action }) => action === "untie star points");
  if (way === undefined) return MAKER;
  const effect = faultEffect({ network: way.network, supply, faults });
  const most = effect.outcome === "runs" ? (effect.worst?.powerRatio ?? 1) : Number.POSITIVE_INFINITY;
  if (effect.outcome !== "runs" || most > STRESSED) return MAKER;
  return `; untying the star points gives ${(effect.powerRatio * 100).toFixed(0)} % at ${most.toFixed(2)} times (maker and electrician)`;
}

/** Open branches and strings as read, in faults of the elements. */
export const openFaults = (
  { record, plan }: OpenModule,
  branches: readonly BranchAssessment[],
): readonly Fault[] => branchFaults(record, branches, buildModule(plan).elements);

/** A survivor beside an open element in its own branch goes by the branch: which of the two is open, ohms and amps do not tell. */
function survivorName(id: string, faults: readonly Fault[]): string {
  const branch = branchOf(id);
  const shared = faults.some((fault) => fault.kind === "open" && branchOf(fault.id) === branch);
  return shared ? `what is left of ${branch}` : id;
}

/** The sentence for open elements: never a bare "may", for the break is found and the insulation read before. */
export function openWords(input: {
  readonly sound: OpenModule;
  readonly faults: readonly Fault[];
  readonly insulationRead: boolean;
}): string {
  const { sound, faults, insulationRead } = input;
  const { plan, supply } = sound;
  const { network } = buildModule(plan);
  const effect = faultEffect({ network, supply, faults });
  if (effect.outcome !== "runs") return "It does not heat; its open ends stand live all the same.";
  const { worst, powerRatio } = effect;
  const stress = worst?.powerRatio ?? 0;
  const name = worst === null ? "" : survivorName(worst.id, faults);
  const first = insulationRead ? "" : "Not before the insulation is read; then ";
  const only =
    "only once the break is found and its loose ends are clear of the frame; the open ends stay live.";
  const healthy = energise({ network, supply }).lines;
  const neutral = loadedNeutral(effect.lines, healthy);
  const after =
    neutral === null
      ? ""
      : ` N then carries ${neutral.toFixed(1)} A: only if its conductor and links are fit for that.`;
  const begin = (words: string): string =>
    `${first === "" ? words.charAt(0).toUpperCase() + words.slice(1) : `${first}${words}`}${after}`;
  if (stress > OVERLOADED) {
    return begin(
      `not at full power as it is: ${name} would carry ${stress.toFixed(2)} times its sound power${relief(plan, supply, faults)}; it heats again ${only}`,
    );
  }
  const survivors =
    stress > STRESSED
      ? `${name} then carries ${stress.toFixed(2)} times its sound power, which shortens its life: the maker decides`
      : "no survivor carries more than when sound";
  const most = Math.max(...effect.lines.map(({ current }) => current));
  const least = Math.min(...effect.lines.filter(({ node }) => node !== "N").map(({ current }) => current));
  const uneven = most - least > 0.05 * Math.max(...healthy.map(({ current }) => current));
  return begin(
    `${first === "" ? "" : "it "}may run until parts come at ${(powerRatio * 100).toFixed(0)} % of its power${uneven ? " with unequal lines" : ""}, ${WHO}: ${survivors}; ${only}`,
  );
}
