/** Marks a diagnosis against what was really wrong, and adds the marks up. */
import type { DiagnosedFault, Diagnosis, Explanation } from "./contract.ts";
import type { Simulated } from "./simulate.ts";
import type { TrueFault } from "./world.ts";

export interface Mark {
  readonly index: number;
  readonly plan: string;
  readonly depth: "single" | "pairs";
  readonly kind: string;
  readonly outcome: Diagnosis["outcome"];
  /**
   * What the first group says most probably, exactly right; right but for which of equal elements of a branch; right in
   * kind. Members that come to the same count together: three twins of 0.2 say more than one joint of 0.3.
   */
  readonly first: boolean;
  readonly firstBranch: boolean;
  readonly firstKind: boolean;
  /** Rank of the group that holds the truth, from 0; −1 if none does. */
  readonly group: number;
  readonly sizeOfTop: number;
  /** Largest difference of log-likelihood inside the top group, and in favour of it over the truth. */
  readonly topSpread: number;
  readonly behind: number | null;
  /** Whether all probabilities are numbers that make up 1, and a group's is the sum of its members'. */
  readonly addsUp: boolean;
  /** Stated probabilities: of every group (best first) and of all explanations that amount to the truth. */
  readonly groups: readonly number[];
  readonly truthProbability: number | null;
  /** All sets of faults of 0.1 % or more, each stated once: stated, true. */
  readonly explanations: readonly (readonly [number, boolean])[];
  readonly topHasSound: boolean;
  readonly firstIsSound: boolean;
  readonly sound: number;
  readonly joints: number;
  readonly likeliestJoint: number;
  readonly covered: readonly Coverage[];
  /** Whether the first explanation is that the spoilt reading was misread; false where none was spoilt. */
  readonly blunderFound: boolean;
  readonly milliseconds: number;
  /** What the diagnosis threw instead of answering. */
  readonly refused?: string;
}

export interface Coverage {
  readonly of: string;
  readonly kind: string;
  readonly inside: boolean;
  /** Whether the interval's width is less than a quarter of its middle: a claim to know. */
  readonly narrow: boolean;
  readonly finite: boolean;
}

const nameOf = (fault: DiagnosedFault): string =>
  `${fault.kind} ${Object.entries(fault)
    .filter(([key]) => key !== "kind")
    .map(([, value]) => String(value))
    .join(" ")}`;

export const keyOf = (faults: readonly DiagnosedFault[]): string =>
  faults.map(nameOf).sort().join(" & ") || "sound";

/** Without the string and the seat of an element: `A-L1-2.1` is `A-L1`. */
export const branchKey = (faults: readonly DiagnosedFault[]): string =>
  faults
    .map((fault) => nameOf(fault).replace(/^((element|shorted|earth)[a-z ]*) (\S+?-L[0-9L]+)\S*$/, "$1 $3"))
    .sort()
    .join(" & ") || "sound";

export const kindOf = (faults: readonly DiagnosedFault[]): string =>
  faults
    .map(({ kind }) => kind)
    .sort()
    .join(" + ") || "sound";

function coverageOf(truth: readonly TrueFault[], explanation: Explanation): Coverage[] {
  return explanation.faults.flatMap((fault, place) => {
    const real = truth.find((one) => nameOf(one.fault) === nameOf(fault)) as TrueFault;
    return real.parameters.map(({ of, value }): Coverage => {
      const found = explanation.estimates.find((one) => one.of === of && one.fault === place);
      if (found === undefined) return { of, kind: fault.kind, inside: false, narrow: false, finite: false };
      const { low, high } = found;
      return {
        of,
        kind: fault.kind,
        inside: low <= value && value <= high,
        narrow: high - low < 0.25 * Math.abs(found.value),
        finite: Number.isFinite(low) && Number.isFinite(high) && low <= found.value && found.value <= high,
      };
    });
  });
}

function addsUp({ groups }: Diagnosis): boolean {
  const total = groups.reduce((sum, { probability }) => sum + probability, 0);
  const whole = groups.every(({ probability, explanations }) => {
    const members = explanations.reduce((sum, one) => sum + one.probability, 0);
    return probability >= 0 && Math.abs(members - probability) < 1e-6;
  });
  return whole && Math.abs(total - 1) < 1e-6;
}

/** Stated probabilities of explanations, those that `key` makes the same added up. */
export function summedBy(
  explanations: readonly Pick<Explanation, "faults" | "probability">[],
  key: (faults: readonly DiagnosedFault[]) => string,
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>();
  for (const { faults, probability } of explanations) {
    const own = key(faults);
    sums.set(own, (sums.get(own) ?? 0) + probability);
  }
  return sums;
}

/** The key of the largest sum, the first of equals; none of an empty list. */
export function likeliest(sums: ReadonlyMap<string, number>): string | undefined {
  let best: readonly [string, number] | undefined;
  // Sums of like twins differ in their last digit only: the order of listing decides there.
  for (const one of sums) if (best === undefined || one[1] > best[1] * (1 + 1e-9)) best = one;
  return best?.[0];
}

export function mark(simulated: Simulated, diagnosis: Diagnosis, milliseconds: number): Mark {
  const faults = simulated.truth.map(({ fault }) => fault);
  const truth = keyOf(faults);
  const top = diagnosis.groups[0];
  const all = diagnosis.groups.flatMap(({ explanations }) => explanations);
  const own = all.find((one) => keyOf(one.faults) === truth);
  const first = top?.explanations[0];
  const likelihoods = top?.explanations.map(({ logLikelihood }) => logLikelihood) ?? [0];
  const said = (key: typeof keyOf): boolean =>
    top !== undefined && likeliest(summedBy(top.explanations, key)) === key(faults);
  const stated = summedBy(all, keyOf);
  const joints = all.filter((one) => one.faults.length === 1 && one.faults[0]?.kind === "joint");
  return {
    index: simulated.index,
    plan: simulated.plan,
    depth: simulated.input.depth ?? "single",
    kind: kindOf(faults),
    outcome: diagnosis.outcome,
    first: said(keyOf),
    firstBranch: said(branchKey),
    firstKind: said(kindOf),
    group: diagnosis.groups.findIndex(({ explanations }) =>
      explanations.some((one) => keyOf(one.faults) === truth),
    ),
    sizeOfTop: top?.explanations.length ?? 0,
    topSpread: Math.max(...likelihoods) - Math.min(...likelihoods),
    behind: own === undefined ? null : (first as Explanation).logLikelihood - own.logLikelihood,
    addsUp: addsUp(diagnosis),
    groups: diagnosis.groups.map(({ probability }) => probability),
    truthProbability: stated.get(truth) ?? null,
    explanations: [...stated]
      .filter(([, probability]) => probability >= 0.001)
      .map(([key, probability]) => [probability, key === truth] as const),
    topHasSound: top?.explanations.some((one) => one.faults.length === 0) ?? false,
    firstIsSound: first !== undefined && first.faults.length === 0,
    sound: all.find((one) => one.faults.length === 0)?.probability ?? 0,
    joints: joints.reduce((sum, { probability }) => sum + probability, 0),
    likeliestJoint: Math.max(0, ...joints.map(({ probability }) => probability)),
    blunderFound:
      first?.faults.length === 1 &&
      first.faults[0]?.kind === "misread" &&
      first.faults[0].reading === simulated.blunder?.reading,
    covered: own === undefined ? [] : coverageOf(simulated.truth, own),
    milliseconds,
  };
}

export interface Bin {
  readonly low: number;
  readonly high: number;
  readonly count: number;
  readonly stated: number;
  readonly observed: number;
}

const EDGES = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99, 1];

/** Stated probability against how often it came true, in fixed bins. */
export function reliability(pairs: readonly (readonly [number, boolean])[]): readonly Bin[] {
  return EDGES.slice(0, -1).flatMap((low, i) => {
    const high = EDGES[i + 1] as number;
    const inside = pairs.filter(([p]) => p >= low && (p < high || (high === 1 && p <= 1 + 1e-9)));
    if (inside.length === 0) return [];
    const stated = inside.reduce((sum, [p]) => sum + p, 0) / inside.length;
    const observed = inside.filter(([, right]) => right).length / inside.length;
    return [{ low, high, count: inside.length, stated, observed }];
  });
}

/** Expected calibration error: mean over all answers of the gap between a bin's stated and observed frequency. */
export function calibrationError(pairs: readonly (readonly [number, boolean])[]): number {
  return reliability(pairs).reduce(
    (sum, { count, stated, observed }) => sum + (count / pairs.length) * Math.abs(stated - observed),
    0,
  );
}

/** Mean calibration error that a perfectly calibrated judge shows in so many answers, by chance alone. */
export function calibrationNoise(pairs: readonly (readonly [number, boolean])[]): number {
  return reliability(pairs).reduce((sum, { low, high, count }) => {
    const inside = pairs.filter(([p]) => p >= low && (p < high || (high === 1 && p <= 1 + 1e-9)));
    const variance = inside.reduce((total, [p]) => total + Math.max(0, p * (1 - p)), 0) / count ** 2;
    return sum + (count / pairs.length) * Math.sqrt((2 / Math.PI) * variance);
  }, 0);
}

const answered = (marks: readonly Mark[]): readonly Mark[] =>
  marks.filter(({ outcome, groups }) => outcome !== "nothing fits" && groups.length > 0);

/** Top group: stated, and whether it held the truth. */
export const topAnswers = (marks: readonly Mark[]): (readonly [number, boolean])[] =>
  answered(marks).map(({ groups, group }) => [groups[0] as number, group === 0] as const);

/** Every group of every answer. */
export const allGroups = (marks: readonly Mark[]): (readonly [number, boolean])[] =>
  answered(marks).flatMap(({ groups, group }) => groups.map((p, i) => [p, i === group] as const));

export const allExplanations = (marks: readonly Mark[]): (readonly [number, boolean])[] =>
  answered(marks).flatMap(({ explanations }) => explanations);

export const share = (marks: readonly Mark[], test: (mark: Mark) => boolean): number =>
  marks.length === 0 ? Number.NaN : marks.filter(test).length / marks.length;

/** Standard error of a share, by the binomial law; never 0, so that margins stay honest at the ends. */
export const standardError = (p: number, count: number): number =>
  Math.sqrt(Math.max(p * (1 - p), 1 / count) / count);
