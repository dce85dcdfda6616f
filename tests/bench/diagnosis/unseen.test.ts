/** Faults that no reading at hand can show: they stay as probable as beforehand, and nothing is learnt of their size. */
import { type Diagnosis, diagnose, diagnosisText, type Explanation } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, pairs, reading, topOf } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const SOUND = pairs([24.6, 24.6, 24.6]);

const all = ({ groups }: Diagnosis): readonly Explanation[] =>
  groups.flatMap(({ explanations }) => explanations);
const only = (found: Diagnosis, fault: object): Explanation | undefined =>
  all(found).find(({ faults }) => JSON.stringify(faults) === JSON.stringify([fault]));
const LOST = { kind: "lost line", line: "L2" };
const EARTHED = { kind: "earth fault", element: "A-L3" };
const UNBALANCE = { kind: "supply unbalance" };

describe("a fault that ohms between terminals cannot show", () => {
  it("is named as unseen, and keeps its odds against the module without it", () => {
    const found = diagnose(asked(STAR, SOUND));
    const sound = all(found).find(({ faults }) => faults.length === 0) as Explanation;
    // Defaults of the priors: 0.01, 0.003 and 0.01.
    for (const [fault, p] of [
      [LOST, 0.01],
      [EARTHED, 0.003],
      [UNBALANCE, 0.01],
    ] as const) {
      const one = only(found, fault) as Explanation;
      expect(one.unseen).toEqual([fault]);
      expect(one.probability / sound.probability).toBeCloseTo(p / (1 - p), 9);
      expect(one.prior / sound.prior).toBeCloseTo(p / (1 - p), 9);
      expect(one.logLikelihood).toBe(sound.logLikelihood);
      // Not to be told from the sound module: in one group with it.
      expect(topOf(found)).toContainEqual(one);
    }
  });

  it("keeps its share whatever else the readings say, at depth pairs beside every other fault", () => {
    const found = diagnose(asked(STAR, pairs(["open", 24.6, "open"]), { depth: "pairs" }));
    const open = { kind: "element open", element: "A-L1" };
    const alone = only(found, open) as Explanation;
    const both = all(found).find(
      ({ faults }) => JSON.stringify(faults) === JSON.stringify([open, LOST]),
    ) as Explanation;
    expect(both.unseen).toEqual([LOST]);
    expect(both.probability / alone.probability).toBeCloseTo(0.01 / 0.99, 9);
  });

  it("has its parameters as assumed, not estimated: the same whatever is read", () => {
    for (const readings of [SOUND, pairs([23.9, 24.1, 24.4])]) {
      const { estimates } = only(diagnose(asked(STAR, readings)), EARTHED) as Explanation;
      expect(estimates.map(({ of }) => of)).toEqual(["position", "fault resistance"]);
      const [position, ohms] = estimates as [
        Explanation["estimates"][number],
        Explanation["estimates"][number],
      ];
      expect([position.low, position.value, position.high]).toEqual([0.025, 0.5, 0.975]);
      // 10 mΩ to 100 kΩ, even in the logarithm.
      for (const [value, part] of [
        [ohms.low, 0.025],
        [ohms.value, 0.5],
        [ohms.high, 0.975],
      ] as const)
        expect(Math.log10(value)).toBeCloseTo(7 * part - 2, 9);
    }
  });

  it("is unseen no longer once a reading could show it", () => {
    const insulation = reading({ kind: "insulation", from: "L1", reads: 5e7 });
    const found = diagnose(asked(STAR, [...SOUND, ...amps([22, 22, 22]), insulation]));
    expect(all(found).flatMap(({ unseen }) => unseen)).toEqual([]);
    expect(only(found, LOST)?.probability ?? 0).toBeLessThan(1e-6);
  });

  it("is told in words, and what is assumed of it is not sold as known", () => {
    const question = asked(STAR, SOUND);
    const text = diagnosisText({ asked: question, diagnosis: diagnose(question) });
    expect(text).toContain("a fault these readings cannot show");
    expect(text.replace(/\s+/g, " ")).toContain(
      "no supply on a line, line voltages that differ, an earthed element or an earthed terminal",
    );
    const likely = asked(STAR, SOUND, { priors: { earthFault: 0.6 } });
    const told = diagnosisText({ asked: likely, diagnosis: diagnose(likely) }).replace(/\s+/g, " ");
    expect(told).toContain("assumed beforehand, not shown by these readings");
    expect(told).not.toContain("95 % of it");
  });
});

const LOST_LINE = 0.02;

describe("with a prior that was given", () => {
  // Bayes' theorem: equal likelihood leaves the odds as they were beforehand.
  it.each([[[24, 24, 24]], [[24.4, 24.2, 24.3]]] as const)(
    "they keep it beside the sound module, %j",
    (reads) => {
      const found = diagnose(asked(STAR, pairs(reads), { priors: { lostLine: LOST_LINE } }));
      const sound = all(found).find(({ faults }) => faults.length === 0) as Explanation;
      const alone = all(found).filter(
        ({ faults, unseen }) => faults.length === 1 && unseen.length === 1 && unseen[0]?.kind === "lost line",
      );
      expect(alone).toHaveLength(3);
      for (const { probability } of alone) {
        expect(probability / sound.probability).toBeCloseTo(LOST_LINE / (1 - LOST_LINE), 9);
      }
    },
  );

  it("three places of an earth fault learn nothing of their parameters, whatever is read", () => {
    const parameters = (reads: readonly number[]): readonly Explanation["estimates"][] =>
      all(diagnose(asked(STAR, pairs(reads))))
        .filter(({ faults, unseen }) => faults.length === 1 && unseen[0]?.kind === "earth fault")
        .map(({ estimates }) => estimates);
    const before = parameters([24, 24, 24]);
    expect(before).toHaveLength(3);
    expect(parameters([24.4, 24.2, 24.3])).toEqual(before);
  });

  it("they are told of alone or besides", () => {
    const question = asked(STAR, pairs([24, 24, 24]), { priors: { lostLine: LOST_LINE } });
    expect(diagnosisText({ asked: question, diagnosis: diagnose(question) })).toMatch(/alone or besides/);
  });
});
