/**
 * Faults of which no reading of a question can tell: a lost line with the module dead, an earth fault in ohms between
 * terminals. They predict exactly what the module without them predicts, and keep the probability they had beforehand.
 */

import type { Model, Question } from "../likelihood/model.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import { LINES } from "../question/lines.ts";
import { RANGE } from "../question/settings.ts";
import type { FaultEstimate } from "../question/types.ts";
import { type Finding, renamed } from "../weighing/findings.ts";
import type { Named, Unseen } from "../weighing/names.ts";
import { terminalsOf } from "./earthPlaces.ts";

/** Whether anything among the readings shows an earth fault: neither ohms nor volts between lines do. */
export const showsEarth = ({ live, all }: Question): boolean =>
  live || all.some(({ kind }) => kind === "insulation");

type Known = Unseen["estimates"][number];

const even = (of: FaultEstimate["of"], [low, high]: readonly [number, number]): Known => {
  const at = (part: number): number => low + (high - low) * part;
  return { of, value: at(0.5), low: at(0.025), high: at(0.975), unit: "1" };
};

const POSITION = even("position", [0, 1]);
const UNBALANCE = even("unbalance", RANGE.unbalance);
const FAULT_RESISTANCE: Known = (() => {
  const [low, high] = RANGE.earth;
  const at = (part: number): number => low * (high / low) ** part;
  return { of: "fault resistance", value: at(0.5), low: at(0.025), high: at(0.975), unit: "Ω" };
})();

/** Faults that no reading shows, and what they add to the odds of a finding: one of them, or two. */
export interface AllUnseen {
  readonly faults: readonly Unseen[];
  readonly one: number;
  readonly two: number;
}

/** All faults that the readings of a model's question cannot show. */
export function unseenFaults({ question, wiring }: Model): AllUnseen {
  const { priors, live } = question;
  const faults: Unseen[] = [];
  const add = (fault: DiagnosedFault, prior: number, estimates: Unseen["estimates"]): void => {
    if (prior > 0) faults.push({ fault, logOdds: Math.log(prior / (1 - prior)), estimates });
  };
  if (!live) {
    for (const line of LINES) add({ kind: "lost line", line }, priors.lostLine, []);
    add({ kind: "supply unbalance" }, priors.supplyUnbalance, [UNBALANCE]);
  }
  if (!showsEarth(question)) {
    for (const { id } of wiring.module.elements) {
      add({ kind: "earth fault", element: id }, priors.earthFault, [POSITION, FAULT_RESISTANCE]);
    }
    for (const terminal of terminalsOf(wiring)) {
      add({ kind: "earthed terminal", terminal }, priors.earthedTerminal, [FAULT_RESISTANCE]);
    }
  }
  let [one, two] = [0, 0];
  faults.forEach((a, i) => {
    one += Math.exp(a.logOdds);
    for (const b of faults.slice(i + 1)) if (together(a, b)) two += Math.exp(a.logOdds + b.logOdds);
  });
  return { faults, one, two };
}

const EARTHED: ReadonlySet<DiagnosedFault["kind"]> = new Set(["earth fault", "earthed terminal"]);

/** Two earth faults meet in the frame: ohms between terminals do show them. */
const together = (a: Unseen, b: Unseen): boolean => !EARTHED.has(a.fault.kind) || !EARTHED.has(b.fault.kind);

/**
 * A finding under the names it has besides: with one unseen fault, or two, as far as the number of faults goes.
 * @param most - faults that an explanation may hold
 */
export function withUnseen(finding: Finding, { faults: unseen, one, two }: AllUnseen, most: number): Finding {
  const { names } = finding;
  const room = most - names.faults;
  if (unseen.length === 0 || room < 1) return finding;
  const beside = ({ faults, logOdds }: Named): Named[] => {
    const named = (hidden: readonly Unseen[]): Named => ({
      faults: [...faults, ...hidden.map(({ fault }) => fault)],
      logOdds: hidden.reduce((sum, each) => sum + each.logOdds, logOdds),
      unseen: hidden,
    });
    const ones = unseen.map((each) => named([each]));
    if (room < 2) return ones;
    const twos = unseen.flatMap((a, i) =>
      unseen.slice(i + 1).flatMap((b) => (together(a, b) ? [named([a, b])] : [])),
    );
    return [...ones, ...twos];
  };
  const list = (): readonly Named[] => {
    const before = names.list();
    return [...before, ...before.flatMap(beside)];
  };
  const logOdds = names.logOdds + Math.log1p(one + (room < 2 ? 0 : two));
  return renamed(finding, { faults: names.faults, logOdds, list }, finding.completed);
}
