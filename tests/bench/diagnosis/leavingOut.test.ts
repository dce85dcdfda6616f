/**
 * A reading left out of all hypotheses at once comes to what weighing each without it comes to: the density of one reading given the
 * others is that of its residual in the precision matrix (identity of the multivariate normal distribution, from memory), and the
 * likelihood with that reading not counted is the referee.
 */
import type { FieldReading } from "electroheat/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Inference, inference, type Weighed } from "../../../src/bench/diagnosis/inference/infer.ts";
import { fixedWithout, type Without, withoutRow } from "../../../src/bench/diagnosis/inference/leavingOut.ts";
import { wiringsOf, wiringsUnder } from "../../../src/bench/diagnosis/inference/prepared.ts";
import { type Question, questionOf } from "../../../src/bench/diagnosis/likelihood/model.ts";
import { amps, asked, bank, pairs, volts3 } from "./sheets.ts";

const MODULE = {
  banks: [
    bank("A", "star", 12),
    bank("B", "delta", 30, { elementsInParallel: 2 }),
    bank("C", "delta", 30, { elementsInParallel: 2 }),
  ],
};
const INSULATION = { kind: "insulation", from: "L1", reads: 2e8 } as FieldReading;
const READINGS = [
  ...pairs([5.9, 7.1, 6.1]),
  ...amps([78, 62, 79]),
  ...volts3([480, 479, 481]),
  INSULATION,
] as readonly FieldReading[];

const keyOf = ({ finding, logPrior }: Weighed): string =>
  JSON.stringify([finding.names.list().map(({ faults }) => faults), logPrior]);

/** Everything without a parameter, and banks without supply, by what it is called. */
function fixedOf(question: Question, plain: boolean): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const weigh: Inference = inference(question, (one) => found.set(keyOf(one), one.finding.log));
  if (plain) weigh.plain();
  else weigh.fixed();
  weigh.unfed(READINGS.length);
  return found;
}

/** What is handed on for each reading left out. `best`: what is far below it is not weighed again. */
function leftOut(
  question: Question,
  plain: boolean,
  best: number,
): readonly [Without, Map<string, number>][] {
  const all = READINGS.flatMap(({ kind }, row): Without[] =>
    kind === "insulation" ? [] : [{ row, rest: withoutRow(question, row), shift: 0 }],
  );
  const found = all.map((one) => [one, new Map<string, number>()] as const);
  fixedWithout({ question, wirings: wiringsOf(question), plain }, all, best, (one, without) => {
    found.find(([each]) => each === without)?.[1].set(keyOf(one), one.finding.log);
  });
  return found.map(([one, logs]) => [one, logs]);
}

describe("a reading left out", () => {
  it.each([
    ["weighed again", Number.NEGATIVE_INFINITY],
    ["as near as all readings tell", 1e9],
  ])("comes to what weighing without it comes to, %s", (_, best) => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.8, max: 1.25, noNaN: true }), { minLength: 9, maxLength: 9 }),
        fc.constantFrom("open", "as read"),
        fc.boolean(),
        (by, first, plain) => {
          const readings = READINGS.map((one, r) => {
            const reads = (one.reads as number) * (by[r] ?? 1);
            return { ...one, reads: r === 0 && first === "open" ? "open" : reads };
          }) as readonly FieldReading[];
          const question = questionOf(asked(MODULE, readings));
          let compared = 0;
          for (const [{ rest, row }, logs] of leftOut(question, plain, best)) {
            const afresh = fixedOf(rest, plain);
            for (const [key, log] of logs) {
              const own = afresh.get(key);
              // A bank without supply is looked at only where the amps do not speak against it.
              if (own === undefined) continue;
              compared += 1;
              expect(Math.abs(log - own), `${row} ${key}`).toBeLessThan(1e-6 * Math.max(1, Math.abs(own)));
            }
          }
          expect(compared).toBeGreaterThan(plain ? 80 : 150);
        },
      ),
      { numRuns: 12, seed: 5 },
    );
  });

  it("finds the same wirings under the rest as setting them up afresh", () => {
    const question = questionOf(asked(MODULE, READINGS));
    const rest = withoutRow(question, 1);
    const shared: Weighed[] = [];
    const afresh: Weighed[] = [];
    inference(rest, (one) => shared.push(one), wiringsUnder(wiringsOf(question), rest)).usual();
    inference(rest, (one) => afresh.push(one)).usual();
    expect(shared.map(keyOf)).toEqual(afresh.map(keyOf));
    expect(shared.length).toBeGreaterThan(40);
    shared.forEach(({ finding }, i) => {
      expect(finding.log).toBe((afresh[i] as Weighed).finding.log);
    });
  });
});
