/**
 * Whole assessments of invented records of many kinds, down to the last field: what their type says, texts that a person can read, verdicts
 * that follow from value and limit, and no name that is not in the record. Nothing is expected here but what the record and the rest of the
 * same assessment say.
 */
import {
  assessModule,
  assessmentText,
  type BenchRecord,
  type Figure,
  type ModuleAssessment,
} from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { factsOf } from "../../src/catalogue/facts.ts";
import { misfits, within } from "../support/misfits.ts";
import { POOL } from "./pool.ts";

/** What no text has: nothing in it, values that were not there, marks without words. */
const BLEMISHES: readonly (readonly [RegExp, string])[] = [
  [/^\s*$/, "blank"],
  [/^\s|\s$/, "space at an end"],
  [/\S {2,}\S/, "two spaces"],
  [/ [,.;:)]|\( /, "a space beside a mark"],
  [/\(\)|""|\[\]/, "empty brackets"],
  [/,,|;;|,\.|;\.|:\.|\.;|: ?;|, ?and and|\.\.(?!\.)/, "two marks"],
  [/undefined|null|NaN|Infinity|\[object|Stryker/, "no value"],
  [/\d\.\d{7,}/, "a figure without an end"],
  [/\b(?:of|and|the|than|from) ?[.;:,]/, "a word missing"],
];
const blemishesOf = (text: string): string[] =>
  BLEMISHES.flatMap(([pattern, name]) => (pattern.test(text) ? [`${name}: "${text}"`] : []));

/** Every text within a value, with its path. */
function* textsIn(value: unknown, path = ""): Generator<readonly [string, string]> {
  if (typeof value === "string") yield [path, value];
  else if (value !== null && typeof value === "object")
    for (const [key, part] of Object.entries(value)) yield* textsIn(part, `${path}.${key}`);
}

const isFigure = (one: Record<string, unknown>): boolean =>
  "halfWidth" in one && "verdict" in one && "basis" in one;

/** What value, half-width and limit say. */
function verdictOf({ value, halfWidth, limit }: Figure): Figure["verdict"] {
  if (limit === null) return null;
  const [low, high] = [limit.low ?? Number.NEGATIVE_INFINITY, limit.high ?? Number.POSITIVE_INFINITY];
  const half = halfWidth ?? 0;
  const room = 1e-9 * Math.abs(Number(value));
  if (Number(value) - half >= low - room && Number(value) + half <= high + room) return "within";
  return Number(value) + half < low || Number(value) - half > high ? "outside" : "undecided";
}

/** Sentences: where a text is one, it begins like one and ends like one. */
const SENTENCES =
  /^\.(?:answer|assumptions|cautions|nextSteps\.\d+\.(?:action|reason)|feed\.cautions|checklist\.\d+\.(?:text|evidence))\b/;

/** What in texts cannot be read. */
function roughTexts(found: object): string[] {
  // A ratio has no unit.
  const texts = [...textsIn(found)].filter(([path, text]) => text !== "" || !path.endsWith(".unit"));
  return texts.flatMap(([path, text]) => [
    ...blemishesOf(text).map((one) => `${path} ${one}`),
    ...(SENTENCES.test(path) && !/^[\p{Lu}\p{N}√].*[.!?]$/u.test(text.replace(/^[a-z ]+: /, "X "))
      ? [`${path} no sentence: ${text}`]
      : []),
  ]);
}

/** Figures whose verdict does not follow from the limits that stand beside them. */
function misjudged(found: object): string[] {
  return [...within(found)].flatMap(([path, one]): string[] => {
    if (!isFigure(one)) return [];
    const figure = one as unknown as Figure;
    const { verdict, limit, value, caution, label } = figure;
    const name = `${path} ${label}: ${verdict}`;
    if ((verdict !== null && limit === null) || (limit !== null && (limit.low ?? limit.high) === null))
      return [name];
    if (verdict === null || typeof value !== "number") return [];
    // Insulation read at too low a voltage is not passed by its figure.
    const low = verdict === "undecided" && /Read at less than that/.test(caution ?? "");
    return (low ? "within" : verdict) === verdictOf(figure) ? [] : [name];
  });
}

/** Names in an assessment that are not in its record. */
function unknownNames(record: BenchRecord, { nextSteps, draw, module }: ModuleAssessment): string[] {
  const names = namesOf(
    record,
    module.banks.map(({ id }) => id),
  );
  // Two nodes, or a place between a bank and a line.
  const about = nextSteps.flatMap((one) => one.about.flatMap((name) => name.split(/ to |[<>]/)));
  return [...about, ...(draw?.atTarget ?? [])].filter((name) => !names.has(name));
}

/** What is advised, and is not in the text of the sheet. */
function leftOut(found: ModuleAssessment): string[] {
  const { feed, commissioning, degraded, hardware, checklist, parts } = found;
  const text = assessmentText(found).replace(/\s+/g, " ");
  const wanted = [
    ...[found.answer, found.assumptions, found.notTested, found.cautions].flat(),
    ...found.nextSteps.flatMap(({ action, reason }) => [action, reason]),
    ...found.warnings.map(({ message }) => message),
    ...checklist.flatMap(({ text: one, evidence }) => [one, ...(evidence === null ? [] : [evidence])]),
    ...parts.map(({ part, reason }) => `${part}: ${reason}`),
    ...[feed, commissioning, degraded, ...hardware].flatMap((one) => one?.deferral ?? []),
    ...hardware.flatMap(({ notes }) => notes),
    ...(feed?.cautions ?? []),
  ];
  return wanted.filter((one) => !text.includes(one.replace(/\s+/g, " ")));
}

describe("an assessment, whole", () => {
  it.each(Object.entries(POOL))("of %s", (_, record) => {
    const found = assessModule(record);
    expect(misfits(found, factsOf("bench").functions["assessModule"]?.output ?? "opaque", "")).toEqual([]);
    expect(roughTexts(found).join("\n")).toBe("");
    expect(misjudged(found).join("\n")).toBe("");
    expect(unknownNames(record, found)).toEqual([]);
    expect(leftOut(found)).toEqual([]);
  });
});

/** Banks, branches, elements, nodes, joints, hardware and bars of a record, with the supply and the feed. */
function namesOf(record: BenchRecord, banks: readonly string[]): ReadonlySet<string> {
  const ends = ["L1", "L2", "L3", "L1L2", "L2L3", "L3L1"];
  const joints = [
    ...(record.asFound?.joints ?? []),
    ...(record.asLeft?.joints ?? []),
    ...(record.wiring.joints ?? []),
  ];
  return new Set([
    ...["supply", "feed", "S", "N", ...ends],
    ...banks.flatMap((id) => [id, `S-${id}`, ...ends.map((end) => `${id}-${end}`)]),
    ...[...joints, ...(record.hardware ?? []), ...(record.bars ?? [])].map(({ id }) => id),
  ]);
}
