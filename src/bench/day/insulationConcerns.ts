/** Insulation that speaks against a module whatever its ohms say: below the least, not clear of it, or short of what makers ask. */
import { formatQuantity, type Ohms } from "../../quantity/index.ts";
import type { Figure, ReadingsAssessment } from "../assessmentTypes.ts";
import type { NextStep } from "../assessTypes.ts";
import { listed } from "../diagnosis/telling/words.ts";

/** Limits below which equipment is not connected to a supply. */
const LEAST: readonly string[] = ["IEC 60364-6", "IEC 60204-1"];

/**
 * Limits that makers and the trade hold a module in service to. The rest ask for more of new elements or of other apparatus, and are
 * shown without words of their own.
 */
const IN_SERVICE: readonly string[] = ["1 MΩ per kV", "maker assembly", "maker element", "maker storage"];

/** Insulation at one node, in words. */
export interface InsulationConcern {
  readonly at: string;
  readonly words: string;
}

/** What is in doubt, and what would settle it. */
interface Doubt extends InsulationConcern {
  readonly by: "tester" | "test voltage" | "maker";
}

/** A label is what was read, then the rule. */
function splitAtLast(label: string): readonly [string, string] {
  const at = label.lastIndexOf(", ");
  return at < 0 ? [label, ""] : [label.slice(0, at), label.slice(at + 2)];
}

/** Figures of some rules by node, lowest reading first; what lies above the range of the tester is low by none. */
function byNode(
  { insulation }: ReadingsAssessment,
  rules: readonly string[],
  verdicts: readonly Figure["verdict"][],
): ReadonlyMap<string, readonly Figure[]> {
  const found = new Map<string, Figure[]>();
  for (const figure of insulation) {
    const [at, rule] = splitAtLast(figure.label);
    if (!rules.includes(rule) || !verdicts.includes(figure.verdict) || figure.value === "open") continue;
    found.set(at, [...(found.get(at) ?? []), figure]);
  }
  for (const list of found.values()) list.sort((a, b) => Number(a.value) - Number(b.value));
  return found;
}

const shown = (value: number): string =>
  formatQuantity(value as Ohms, { unit: "Ω", significantDigits: 3, engineering: true });
const ruleOf = ({ label }: Figure): string => splitAtLast(label)[1];
const rulesOf = (figures: readonly Figure[]): readonly string[] => [...new Set(figures.map(ruleOf))];
const nodeOf = (at: string): string => at.replace(/^insulation at /, "");
/** The lowest of a node's readings, of which there is always one. */
const reading = (at: string, [lowest]: readonly Figure[]): string =>
  `${at} ${shown(Number((lowest as Figure).value))}`;

/** Insulation readings below the least, and the rules that each of them misses. */
const poorNodes = (day: ReadingsAssessment): ReadonlyMap<string, readonly Figure[]> =>
  byNode(day, LEAST, ["outside"]);

/** Insulation readings below the least, together where they miss the same limits: one earthed coil shows at every terminal. */
export function poorInsulation(day: ReadingsAssessment): readonly string[] {
  const missing = new Map<string, string[]>();
  for (const [at, figures] of poorNodes(day)) {
    const rules = rulesOf(figures);
    const asked = `${listed(rules)} ${rules.length > 1 ? "ask" : "asks"} for`;
    const told = missing.get(asked) ?? [];
    told.push(reading(told.length === 0 ? at : nodeOf(at), figures));
    missing.set(asked, told);
  }
  return [...missing].map(([asked, told]) => `${listed(told)}, below the least that ${asked}`);
}

/** Whether the figure itself clears its limit, so that only the test voltage leaves it open. */
export const clearsLimit = ({ value, halfWidth, limit }: Figure): boolean =>
  Number(value) - (halfWidth ?? 0) >= (limit?.low ?? 0);

/** Insulation that is not below the least and not clear of trouble either, one for each node; what is poor is not among it. */
function doubts(day: ReadingsAssessment): readonly Doubt[] {
  const known = new Set(poorNodes(day).keys());
  const open = [...byNode(day, LEAST, ["undecided"])].flatMap(([at, figures]): Doubt[] => {
    if (known.has(at)) return [];
    known.add(at);
    const near = figures.filter((one) => !clearsLimit(one));
    const told = reading(at, near.length > 0 ? near : figures);
    return near.length > 0
      ? [
          {
            at,
            by: "tester",
            words: `${told}, which this tester cannot tell from the least that ${listed(rulesOf(near))} ${rulesOf(near).length > 1 ? "ask" : "asks"} for`,
          },
        ]
      : [
          {
            at,
            by: "test voltage",
            words: `${told}, read below the test voltage that ${listed(rulesOf(figures))} ${rulesOf(figures).length > 1 ? "are" : "is"} for`,
          },
        ];
  });
  const low = [...byNode(day, IN_SERVICE, ["outside", "undecided"])].flatMap(([at, figures]): Doubt[] => {
    const short = figures.filter((one) => !clearsLimit(one));
    if (known.has(at) || short.length === 0) return [];
    const limits = new Map(short.map((one) => [ruleOf(one), one.limit?.low ?? 0]));
    const asked = [...limits].map(([rule, least]) => `${rule} ${shown(least)}`);
    return [
      {
        at,
        by: "maker",
        words: `${reading(at, short)}, not clear of what is asked in service (${listed(asked)})`,
      },
    ];
  });
  return [...open, ...low];
}

/** Insulation in doubt, in words; what is poor is said elsewhere. */
export const doubtfulInsulation = (day: ReadingsAssessment): readonly InsulationConcern[] => doubts(day);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What insulation in doubt says of running, or null: the least is settled before, makers' figures by the maker. */
export function insulationRunning(day: ReadingsAssessment): string | null {
  const found = doubts(day);
  const open = found.filter(({ by }) => by !== "maker");
  const told = listed((open.length > 0 ? open : found).map(({ words }) => words));
  if (open.length > 0) return `Not before the insulation is settled: ${told}.`;
  if (found.length === 0) return null;
  return `Not before the maker of the elements, or who answers for them, has accepted their insulation: ${told}.`;
}

/** Damp magnesia and dirt leave thousands of ohms and more; below, metal or carbon lies on the frame. Common practice, no published source. */
const DAMP_FROM = 1000;

/** What to do about poor insulation. */
export function insulationSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  if (day === null) return [];
  const poor = poorNodes(day);
  if (poor.size === 0) return [];
  const least = Math.min(...[...poor.values()].flat().map(({ value }) => Number(value)));
  const damp = least >= DAMP_FROM;
  return [
    {
      action: `Do not energise. Isolate, part the banks and read each to the frame, then each element at both ends lifted: ${
        damp
          ? "dry what is damp as its maker allows, renew what stays low"
          : "find the coil, bar or lead that lies on the frame, and renew what has touched it"
      }.`,
      reason: `${capital(poorInsulation(day).join("; "))}. ${
        damp
          ? "Damp magnesia and dirt read low when cold, and so does a coil that touches."
          : "So few ohms are metal or carbon on the frame; damp and dirt leave thousands."
      }`,
      about: [...poor.keys()].map(nodeOf),
    },
  ];
}

const SETTLING: Readonly<Record<Doubt["by"], string>> = {
  tester:
    "Do not energise yet. Isolate and read it again with a tester of finer range; if it stays near the limit, part the banks, find which element is low, and dry it as its maker allows: damp magnesia and dirt read low when cold.",
  "test voltage":
    "Do not energise yet. Isolate and read it again at the test voltage that the limit is for, semiconductors, arresters and controls disconnected: a weak place may hold a lower voltage.",
  maker:
    "Ask the maker of the elements for its own limit, dry the module as the maker allows, and read it again, the temperature noted: damp magnesia and dirt read low when cold.",
};

/** What would settle insulation in doubt. */
export function doubtfulInsulationSteps(day: ReadingsAssessment | null): readonly NextStep[] {
  return (day === null ? [] : doubts(day)).map(({ at, by, words }) => ({
    action: SETTLING[by],
    reason: `${capital(words)}.`,
    about: [nodeOf(at)],
  }));
}
