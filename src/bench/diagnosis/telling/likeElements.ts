/** Explanations that differ only in which of the like elements of a branch it is: told as one, for what follows from them is the same. */
import { largestFirst } from "../../../numeric/index.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { Explanation } from "../question/types.ts";
import { explanationWords, listed } from "./words.ts";

/** One fault of one element. */
type ElementFault = Extract<DiagnosedFault, { readonly element: string }>;

/** An explanation with those like it, and what they are worth together. */
export interface LikeExplanations {
  readonly first: Explanation;
  /** Elements of which it is one; one where nothing is like it, none where it is about no element. */
  readonly elements: readonly string[];
  readonly probability: number;
}

/** Elements up to which each is named. */
const NAMED = 3;

/** Branch of an element: names are bank, branch and, where it is one of several, its number side by side and in its string. */
export const branchOf = (element: string): string => element.replace(/(?:-\d+)?(?:\.\d+)?$/, "");

/** The one element that an explanation is about; null where it is about more, or about none. */
function elementFault({ faults }: Explanation): ElementFault | null {
  const [fault, ...others] = faults;
  return others.length === 0 && fault !== undefined && "element" in fault ? fault : null;
}

/** Puts explanations together that name a like element of the same branch, most probable first. */
export function likeExplanations(all: readonly Explanation[]): readonly LikeExplanations[] {
  const found = new Map<unknown, Explanation[]>();
  for (const one of all) {
    const fault = elementFault(one);
    // What is about no single element is like nothing else.
    const key = fault === null ? one : `${fault.kind} ${branchOf(fault.element)} ${one.wiring}`;
    found.set(key, [...(found.get(key) ?? []), one]);
  }
  const together = [...found.values()].map((alike): LikeExplanations => {
    return {
      first: alike[0] as Explanation,
      elements: alike.flatMap((one) => elementFault(one)?.element ?? []),
      probability: alike.reduce((sum, one) => sum + one.probability, 0),
    };
  });
  return largestFirst(together, ({ probability }) => probability);
}

/** An explanation in words, with those like it. */
export function likeWords({ first, elements }: LikeExplanations): string {
  const words = explanationWords(first.faults, first.wiring);
  const [element] = elements;
  if (element === undefined || elements.length === 1) return words;
  const which =
    elements.length > NAMED
      ? `one of ${elements.length} elements of ${branchOf(element)}`
      : `one of elements ${listed(elements)}`;
  return words.replace(`element ${element}`, which);
}

/** A fault of one element of a branch for certain, whichever of them it is. */
export interface FaultWithin {
  readonly branch: string;
  readonly kind: ElementFault["kind"];
  readonly elements: readonly string[];
}

/** The branch that all explanations lie in with the same fault of one of its elements; null where they do not. */
export function faultWithin(explanations: readonly Explanation[]): FaultWithin | null {
  const [only, ...others] = likeExplanations(explanations);
  const fault = only === undefined ? null : elementFault(only.first);
  return only === undefined || fault === null || others.length > 0
    ? null
    : { branch: branchOf(fault.element), kind: fault.kind, elements: only.elements };
}
