/** Prints what the simulated bench found. */
import type { Refereed } from "./bench.ts";
import type { Mark } from "./score.ts";
import {
  allExplanations,
  allGroups,
  calibrationError,
  calibrationNoise,
  reliability,
  share,
  topAnswers,
} from "./score.ts";

const percent = (ratio: number): string => (Number.isNaN(ratio) ? "–" : `${(100 * ratio).toFixed(1)} %`);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const quantile = (values: readonly number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(q * values.length))] ?? Number.NaN;

function table(
  title: string,
  head: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): string {
  const cells = [head, ...rows.map((row) => row.map(String))];
  const widths = head.map((_, i) => Math.max(...cells.map((row) => (row[i] as string).length)));
  const lines = cells.map((row) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] as number) : cell.padStart(widths[i] as number)))
      .join("  "),
  );
  return [
    `\n${title}`,
    lines[0],
    widths.map((width) => "-".repeat(width)).join("  "),
    ...lines.slice(1),
  ].join("\n");
}

function groupedBy(
  marks: readonly Mark[],
  of: (mark: Mark) => string,
): readonly (readonly [string, Mark[]])[] {
  const found = new Map<string, Mark[]>();
  for (const one of marks) found.set(of(one), [...(found.get(of(one)) ?? []), one]);
  return [...found].sort((a, b) => b[1].length - a[1].length);
}

function accuracyRows(parts: readonly (readonly [string, readonly Mark[]])[]): (string | number)[][] {
  return parts.map(([name, marks]) => [
    name,
    marks.length,
    percent(share(marks, ({ first }) => first)),
    percent(share(marks, ({ firstBranch }) => firstBranch)),
    percent(share(marks, ({ firstKind }) => firstKind)),
    percent(share(marks, ({ group }) => group === 0)),
    percent(share(marks, ({ group }) => group >= 0 && group < 3)),
    percent(mean(marks.map(({ groups }) => groups[0] ?? 0))),
    mean(marks.map(({ sizeOfTop }) => sizeOfTop)).toFixed(1),
    percent(share(marks, ({ outcome }) => outcome === "nothing fits")),
  ]);
}

const ACCURACY = [
  "",
  "modules",
  "first exact",
  "first, branch",
  "first, kind",
  "top group",
  "top 3 groups",
  "stated",
  "group size",
  "nothing fits",
];

export interface Results {
  readonly main: readonly Mark[];
  readonly blunder: readonly Mark[];
  readonly invisible: readonly Mark[];
  readonly referee: readonly Refereed[];
}

function calibrationTables(main: readonly Mark[]): string[] {
  const kinds = [
    ["top group", topAnswers(main)],
    ["every group", allGroups(main)],
    ["every explanation of 0.1 % or more", allExplanations(main)],
  ] as const;
  return kinds.map(([name, pairs]) => {
    const rows = reliability(pairs).map(({ low, high, count, stated, observed }) => [
      `${low} to ${high}`,
      count,
      stated.toFixed(4),
      observed.toFixed(4),
      ((observed - stated) / Math.sqrt(Math.max(stated * (1 - stated), 1e-9) / count)).toFixed(1),
    ]);
    const error = `expected calibration error ${calibrationError(pairs).toFixed(4)} (by chance alone about ${calibrationNoise(pairs).toFixed(4)})`;
    const title = `Reliability, ${name}: ${error}`;
    return table(title, ["stated", "answers", "mean stated", "observed", "z"], rows);
  });
}

function alarms(main: readonly Mark[]): string {
  const healthy = main.filter(({ kind }) => kind === "sound");
  const faulty = main.filter(({ kind }) => kind !== "sound");
  const alarmed = healthy.filter(({ topHasSound }) => !topHasSound);
  const rows = [
    ["top group without 'sound'", percent(alarmed.length / healthy.length)],
    [
      "  and stated 0.5 or more",
      percent(alarmed.filter(({ groups }) => (groups[0] ?? 0) >= 0.5).length / healthy.length),
    ],
    [
      "  and stated 0.95 or more",
      percent(alarmed.filter(({ groups }) => (groups[0] ?? 0) >= 0.95).length / healthy.length),
    ],
    ["first explanation not 'sound'", percent(share(healthy, ({ firstIsSound }) => !firstIsSound))],
    ["'sound' below 0.05", percent(share(healthy, ({ sound }) => sound < 0.05))],
    ["nothing fits", percent(share(healthy, ({ outcome }) => outcome === "nothing fits"))],
    ["faulty modules called sound at 0.99", percent(share(faulty, ({ sound }) => sound >= 0.99))],
    ["faulty modules whose fault is in no group", percent(share(faulty, ({ group }) => group < 0))],
  ];
  return table(`False alarms on ${healthy.length} healthy modules, and their opposite`, ["", "share"], rows);
}

function coverage(main: readonly Mark[]): string {
  const found = new Map<
    string,
    { n: number; inside: number; narrow: number; narrowInside: number; odd: number }
  >();
  for (const { covered } of main)
    for (const { of, inside, narrow, finite } of covered) {
      const sum = found.get(of) ?? { n: 0, inside: 0, narrow: 0, narrowInside: 0, odd: 0 };
      sum.n += 1;
      if (inside) sum.inside += 1;
      if (narrow) sum.narrow += 1;
      if (narrow && inside) sum.narrowInside += 1;
      if (!finite) sum.odd += 1;
      found.set(of, sum);
    }
  const rows = [...found].map(([of, { n, inside, narrow, narrowInside, odd }]) => [
    of,
    n,
    percent(inside / n),
    narrow,
    percent(narrowInside / narrow),
    odd,
  ]);
  return table(
    "95 % intervals of the true explanation's parameters: how often they hold the truth",
    ["parameter", "intervals", "hold it", "narrow ones", "hold it", "malformed"],
    rows,
  );
}

function humility(invisible: readonly Mark[]): string {
  const rows = [
    ["'sound' at 0.99 or more", percent(share(invisible, ({ sound }) => sound >= 0.99))],
    ["some joint at 0.99 or more", percent(share(invisible, ({ joints }) => joints >= 0.99))],
    ["mean probability of all joints", mean(invisible.map(({ joints }) => joints)).toFixed(3)],
    ["mean of the likeliest joint", mean(invisible.map(({ likeliestJoint }) => likeliestJoint)).toFixed(3)],
    ["mean of 'sound'", mean(invisible.map(({ sound }) => sound)).toFixed(3)],
    ["truth in the top group", percent(share(invisible, ({ group }) => group === 0))],
  ];
  return table(`A joint of 50 mΩ and a clamp meter only, ${invisible.length} modules`, ["", ""], rows);
}

/** Where the two judges of small modules differ by more than brute force's own uncertainty. */
function judges(referee: readonly Refereed[]): string {
  const apart = referee.map((one) => ({ ...one, gap: Math.abs(one.stated - one.referee) }));
  const beyond = apart.filter(({ gap, standardError }) => gap > 0.03 + 4 * standardError);
  const rows = beyond
    .slice(0, 20)
    .map(({ index, faults, stated, referee: other, standardError }) => [
      `${index}: ${faults}`,
      stated.toFixed(3),
      other.toFixed(3),
      standardError.toFixed(3),
    ]);
  const cases = new Set(referee.map(({ index }) => index)).size;
  const title = `Against brute force: ${cases} small modules, ${referee.length} sets of faults, ${beyond.length} apart by more than 0.03 and four standard errors`;
  return table(title, ["", "stated", "brute force", "its standard error"], rows);
}

/** All tables as text. */
export function tables(results: Results): string {
  const everyone = [...results.main, ...results.blunder, ...results.invisible];
  const answeredOnly = (marks: readonly Mark[]): readonly Mark[] =>
    marks.filter((one) => one.refused === undefined);
  const main = answeredOnly(results.main);
  const blunder = answeredOnly(results.blunder);
  const invisible = answeredOnly(results.invisible);
  const kindName = ({ kind }: Mark): string =>
    kind.includes("+") && kind !== "element open + element open" ? "other pairs of faults" : kind;
  const sure = topAnswers(main).filter(([p]) => p >= 0.95);
  const times = main.map(({ milliseconds }) => milliseconds);
  const pairTimes = main.filter(({ depth }) => depth === "pairs").map(({ milliseconds }) => milliseconds);
  const spreads = main.map(({ topSpread }) => topSpread);
  const reached = blunder.filter(({ outcome }) => outcome === "nothing fits");
  const refused = everyone.filter((one) => one.refused !== undefined);
  return [
    `Questions refused (left out below): ${refused.length}${refused.length === 0 ? "" : `, first ${refused[0]?.index}: ${refused[0]?.refused}`}`,
    `Answers whose probabilities do not make up 1: ${[...main, ...blunder, ...invisible].filter((one) => !one.addsUp).length}`,
    table("Accuracy by fault", ACCURACY, accuracyRows([["all", main], ...groupedBy(main, kindName)])),
    table("Accuracy by reading plan", ACCURACY, accuracyRows(groupedBy(main, ({ plan }) => plan))),
    table("Accuracy by depth", ACCURACY, accuracyRows(groupedBy(main, ({ depth }) => depth))),
    ...calibrationTables(main),
    `\nTop groups stated at 0.95 or more: ${sure.length}, right ${percent(sure.filter(([, right]) => right).length / sure.length)}`,
    `Spread of log-likelihood inside the top group: median ${quantile(spreads, 0.5).toFixed(2)}, 95 % ${quantile(spreads, 0.95).toFixed(2)}, largest ${quantile(spreads, 1).toFixed(2)}`,
    alarms(main),
    coverage(main),
    humility(invisible),
    judges(results.referee),
    `\nA blunder in one reading of a sound module: "nothing fits" in ${percent(reached.length / blunder.length)} of ${blunder.length}, that reading named first in ${percent(share(blunder, ({ blunderFound }) => blunderFound))}; listed faults and sound modules: ${percent(share(main, ({ outcome }) => outcome === "nothing fits"))} of ${main.length}`,
    `Time per diagnosis: median ${quantile(times, 0.5).toFixed(1)} ms, 95 % ${quantile(times, 0.95).toFixed(1)} ms, largest ${quantile(times, 1).toFixed(0)} ms; pairs median ${quantile(pairTimes, 0.5).toFixed(1)} ms`,
  ].join("\n");
}
