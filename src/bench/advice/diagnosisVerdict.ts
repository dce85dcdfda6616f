/** What a diagnosis amounts to for someone who has to act on it: settled, not told apart, not settled; never a coin toss. */
import type { HeatingModule } from "../../circuit/index.ts";
import { largestFirst } from "../../numeric/index.ts";
import type { BranchAssessment, ResistanceAssessment } from "../assessTypes.ts";
import type { DiagnosedFault } from "../diagnosis/question/diagnosedFault.ts";
import type { Diagnosis, Explanation } from "../diagnosis/question/types.ts";
import { type LikeExplanations, likeExplanations, likeWords } from "../diagnosis/telling/likeElements.ts";
import { misreadFits } from "../diagnosis/telling/misreadWarnings.ts";
import { explanationWords, listed, probabilityWords } from "../diagnosis/telling/words.ts";

/** A diagnosis, summed up. */
export interface DiagnosisVerdict {
  /**
   * `"sound"`: nothing wrong leads by far. `"settled"`: one explanation leads by far. `"not told apart"`: several that these readings
   * cannot part. `"not settled"`: several that more readings could part. The other two as the diagnosis has them.
   */
  readonly kind:
    | "sound"
    | "settled"
    | "not told apart"
    | "not settled"
    | Exclude<Diagnosis["outcome"], "explained">;
  /** The explanations it is about, most probable first; faults that no reading can show left out. */
  readonly explanations: readonly Explanation[];
  /** In one sentence, without the full stop. */
  readonly words: string;
}

/** Probability of the first group from which on it counts as settled. */
const SETTLED = 0.9;
/** How many times as probable as the next one an explanation must be to be named alone. */
const LEADS = 2;
/** Explanations below this part of the first one are not told of. */
const WEIGHTY = 0.05;
/** At most so many are named. */
const NAMED = 5;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const withOdds = (one: LikeExplanations): string =>
  `${likeWords(one)} (${probabilityWords(one.probability)})`;

function named(explanations: readonly LikeExplanations[]): string {
  const more = explanations.length - NAMED;
  const words = explanations.slice(0, NAMED).map(withOdds);
  return more > 0 ? `${words.join(", ")} and ${more} more` : listed(words, "or");
}

/** Explanations of weight that do not rest on faults nobody can see. */
function weighty(all: readonly Explanation[]): readonly Explanation[] {
  const seen = all.filter(({ unseen }) => unseen.length === 0);
  const least = WEIGHTY * (seen[0]?.probability ?? 1);
  return seen.filter(({ probability }) => probability > least);
}

const TOO_FEW = "Too few readings to test any explanation";

/** Whether a verdict holds something to be wrong. */
export const isTelling = ({ kind }: DiagnosisVerdict): boolean =>
  kind === "settled" || kind === "not told apart" || kind === "not settled";

/** Sums a diagnosis up. */
export function diagnosisVerdict({ outcome, groups }: Diagnosis): DiagnosisVerdict {
  const [group] = groups;
  if (outcome !== "explained" || group === undefined) {
    const likeliest = group?.explanations[0];
    const words =
      likeliest !== undefined && misreadFits(likeliest)
        ? `No fault explains all these readings; likeliest: ${explanationWords(likeliest.faults)}`
        : outcome === "nothing fits"
          ? "No single fault, nor two open elements, explains all these readings: there are several, one reading is wrong, or the module is not wired as drawn"
          : TOO_FEW;
    return {
      kind: outcome === "explained" ? "too few readings" : outcome,
      explanations: [],
      words,
    };
  }
  const close = group.probability >= SETTLED;
  const explanations = weighty(
    close
      ? group.explanations
      : largestFirst(
          groups.flatMap((one) => one.explanations),
          ({ probability }) => probability,
        ),
  );
  const [first, ...others] = likeExplanations(explanations);
  if (first === undefined) return { kind: "too few readings", explanations: [], words: TOO_FEW };
  const next = others[0]?.probability ?? 0;
  if (first.first.faults.length === 0 && first.probability > LEADS * next) {
    return { kind: "sound", explanations: [first.first], words: "No fault shows in these readings" };
  }
  if (!close)
    return { kind: "not settled", explanations, words: `Not settled: ${named([first, ...others])}` };
  if (first.probability < LEADS * next) {
    return {
      kind: "not told apart",
      explanations,
      words: `Cannot be told apart: ${named([first, ...others])}`,
    };
  }
  const rest = others.length === 0 ? "" : `; these readings do not exclude ${named(others)}`;
  // Which of like elements it is, is not settled.
  const kind = first.elements.length > 1 ? "not told apart" : "settled";
  return { kind, explanations, words: `${capital(withOdds(first))}${rest}` };
}

/** Branches that a fault lies on; none for what concerns a bank, a line's supply or the supply as a whole. */
export function branchesOf(fault: DiagnosedFault, { elements, plan }: HeatingModule): readonly string[] {
  const on = (holds: (bank: string, branch: string, id: string) => boolean): string[] => [
    ...new Set(
      elements.flatMap(({ id, bank, branch }) => (holds(bank, branch, id) ? [`${bank}-${branch}`] : [])),
    ),
  ];
  switch (fault.kind) {
    case "element open":
    case "shorted turns":
    case "element off value":
    case "earth fault":
      return on((_bank, _branch, id) => id === fault.element);
    case "joint":
    case "open joint": {
      const { place } = fault;
      const drawn = plan.joints?.find(({ id }) => id === place);
      const atStar = /^.+<(.+)$/.exec(place)?.[1];
      if (atStar !== undefined) return on((bank, branch) => `${bank}-${branch}` === atStar);
      const ofBank = /^(L[123])>(.+)$/.exec(place);
      const at = drawn?.at ?? ofBank?.[1] ?? place;
      const behind = drawn?.behind ?? (ofBank?.[2] === undefined ? undefined : [ofBank[2]]);
      return on(
        (bank, branch, id) =>
          (/^L[123]$/.test(at) ? branch.includes(at) : true) &&
          (behind === undefined || [bank, `${bank}-${branch}`, id].some((name) => behind.includes(name))),
      );
    }
    default:
      return [];
  }
}

/** Faults of the explanation that a verdict settles on; none without one. */
const settledFaults = (verdict: DiagnosisVerdict | null): readonly DiagnosedFault[] =>
  verdict?.kind === "settled" ? (verdict.explanations[0] as Explanation).faults : [];

/** The one explanation that is settled on, or all that cannot be told apart: what they share holds, whichever of them it is. */
export function held(verdict: DiagnosisVerdict | null): readonly Explanation[] {
  if (verdict?.kind === "settled") return verdict.explanations.slice(0, 1);
  return verdict?.kind === "not told apart" ? verdict.explanations : [];
}

/** What every explanation that is held names; nothing without one. */
function inAll(
  verdict: DiagnosisVerdict | null,
  names: (faults: readonly DiagnosedFault[]) => readonly string[],
): ReadonlySet<string> {
  const [first = [], ...others] = held(verdict).map(({ faults }) => names(faults));
  return new Set(first.filter((name) => others.every((other) => other.includes(name))));
}

const isJoint = (
  fault: DiagnosedFault,
): fault is Extract<DiagnosedFault, { readonly kind: "joint" | "open joint" }> =>
  fault.kind === "joint" || fault.kind === "open joint";

/** Joints that cannot be told apart where it is one of them for certain; none where one is settled on, or something else may be wrong. */
export function jointsAmong(verdict: DiagnosisVerdict | null): readonly string[] {
  if (verdict?.kind !== "not told apart") return [];
  const { explanations } = verdict;
  if (!explanations.every(({ faults }) => faults.length > 0 && faults.every(isJoint))) return [];
  return [...new Set(explanations.flatMap(({ faults }) => faults.filter(isJoint).map(({ place }) => place)))];
}

/** Faults by which the network that was read is not the one drawn. */
const AGAINST_DRAWING: ReadonlySet<DiagnosedFault["kind"]> = new Set([
  "mis-linked",
  "mis-landed",
  "feed connected",
]);

/** Whether it is certain that the network is not as drawn: values worked out on the drawing are void where the readings clash on it. */
export function drawingVoid(verdict: DiagnosisVerdict | null): boolean {
  const all = held(verdict);
  return all.length > 0 && all.every(({ faults }) => faults.some(({ kind }) => AGAINST_DRAWING.has(kind)));
}

/** Faults of the whole: no branch's own reading then speaks of its elements. */
const WHOLE: ReadonlySet<DiagnosedFault["kind"]> = new Set(["other rating", "feed connected"]);

/** Whether ohm readings exclude each other on the wiring as drawn. */
export const clashing = ({
  consistency,
  outcome,
}: Pick<ResistanceAssessment, "consistency" | "outcome">): boolean =>
  consistency === "inconsistent" || outcome === "contradictory";

/**
 * Branches whose readings, as drawn, say nothing of their elements. Linked or landed against the drawing: all of the bank; star points tied or
 * separate against it concern the branches of all stars, where the readings clash on the drawing. A joint where a line feeds a delta, open
 * or bad: all of that delta, for the two sides behind it then lie in series beside the third.
 */
export function misreadBranches(
  verdict: DiagnosisVerdict | null,
  module: HeatingModule,
  clash: boolean,
): ReadonlySet<string> {
  const { elements, starPoints } = module;
  const bankOf = (name: string): string[] =>
    elements.flatMap(({ bank, branch }) => (`${bank}-${branch}` === name ? [bank] : []));
  const stars = clash ? Object.keys(starPoints) : [];
  const banks = inAll(verdict, (faults) =>
    faults.flatMap((fault) => {
      if (fault.kind === "mis-landed") return bankOf(fault.branch);
      if (WHOLE.has(fault.kind)) return elements.map(({ bank }) => bank);
      if (isJoint(fault))
        return branchesOf(fault, module)
          .flatMap(bankOf)
          .filter((bank) => !(bank in starPoints));
      return fault.kind === "mis-linked" ? (fault.bank ?? stars) : [];
    }),
  );
  return new Set(elements.flatMap(({ bank, branch }) => (banks.has(bank) ? [`${bank}-${branch}`] : [])));
}

/** Part of the least target below which a reading is that of a bolted path. */
const BOLTED = 0.1;

/** Whether some reading is itself as good as nothing: worked out on another wiring a branch may come to that without any such path. */
function readsNothing({ branches, readings, leads }: Worked): boolean {
  const least = Math.min(...branches.map(({ target }) => target ?? Number.POSITIVE_INFINITY));
  return readings.some(({ reads }) => reads !== "open" && reads - (leads ?? 0) < BOLTED * least);
}

/** Branches as worked out, and what they were worked out from. */
type Worked = Pick<ResistanceAssessment, "branches" | "readings" | "leads">;

/**
 * The branches that still speak of their elements: all but those misread. A bolted path that was read shows whatever the links; all branches
 * bolted at once are what lies beside them.
 */
export function tellingBranches(
  resistances: Worked,
  misread: ReadonlySet<string>,
): readonly BranchAssessment[] {
  const { branches } = resistances;
  const all = branches.every(({ id, finding }) => finding === "shorted" && misread.has(id));
  const bolted = !all && readsNothing(resistances);
  return branches.filter(({ id, finding }) => !misread.has(id) || (finding === "shorted" && bolted));
}

/** Branches whose open elements a verdict settles on. */
export function openNamed(verdict: DiagnosisVerdict | null, module: HeatingModule): ReadonlySet<string> {
  const faults = settledFaults(verdict);
  return new Set(faults.flatMap((fault) => (fault.kind === "element open" ? branchesOf(fault, module) : [])));
}

/** Joints that a verdict names. */
export interface JointsNamed {
  /** Those it settles on. */
  readonly places: readonly string[];
  /** Branches behind them, or behind all that cannot be told apart: what they read says nothing of their elements before the joint is remade. */
  readonly behind: ReadonlySet<string>;
}

export const NO_JOINTS: JointsNamed = { places: [], behind: new Set() };

/** The joints of the one explanation that is settled on, and what lies behind every joint that it can be. */
export const jointsNamed = (verdict: DiagnosisVerdict | null, module: HeatingModule): JointsNamed => ({
  places: settledFaults(verdict)
    .filter(isJoint)
    .map(({ place }) => place),
  behind: inAll(verdict, (faults) => faults.filter(isJoint).flatMap((fault) => branchesOf(fault, module))),
});
