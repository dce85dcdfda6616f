/**
 * Faults of which no reading of a question can tell: a lost line with the module dead, an earth fault in ohms between
 * terminals. They predict exactly what the module without them predicts, and keep the probability they had beforehand.
 */
import type { Finding, Named } from "./findings.ts";
import type { Model, Question } from "./model.ts";
import { RANGE } from "./settings.ts";
import type { DiagnosedFault, FaultEstimate } from "./types.ts";

/** A fault that cannot be seen, its prior odds, and what is known of its parameters all the same: their prior. */
export interface Unseen {
  readonly fault: DiagnosedFault;
  readonly logOdds: number;
  readonly estimates: readonly Omit<FaultEstimate, "fault">[];
}

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

/** All faults that the readings of a model's question cannot show. */
export function unseenFaults({ question, wiring }: Model): readonly Unseen[] {
  const { priors, live } = question;
  const found: Unseen[] = [];
  const add = (fault: DiagnosedFault, prior: number, estimates: Unseen["estimates"]): void => {
    if (prior > 0) found.push({ fault, logOdds: Math.log(prior / (1 - prior)), estimates });
  };
  if (!live) {
    for (const line of ["L1", "L2", "L3"]) add({ kind: "lost line", line }, priors.lostLine, []);
    add({ kind: "supply unbalance" }, priors.supplyUnbalance, [UNBALANCE]);
  }
  if (!showsEarth(question)) {
    for (const { id } of wiring.module.elements) {
      add({ kind: "earth fault", element: id }, priors.earthFault, [POSITION, FAULT_RESISTANCE]);
    }
  }
  return found;
}

/** Two earth faults meet in the frame: ohms between terminals do show them. */
const together = (a: Unseen, b: Unseen): boolean =>
  a.fault.kind !== "earth fault" || b.fault.kind !== "earth fault";

/**
 * A finding under the names it has besides: with one unseen fault, or two, as far as the number of faults goes.
 * @param most - faults that an explanation may hold
 */
export function withUnseen(finding: Finding, unseen: readonly Unseen[], most: number): Finding {
  if (unseen.length === 0) return finding;
  const more = finding.names.flatMap(({ faults, logOdds }): Named[] => {
    const named = (hidden: readonly Unseen[]): Named => ({
      faults: [...faults, ...hidden.map(({ fault }) => fault)],
      logOdds: hidden.reduce((sum, one) => sum + one.logOdds, logOdds),
      unseen: hidden,
    });
    const ones = faults.length + 1 > most ? [] : unseen.map((one) => named([one]));
    if (faults.length + 2 > most) return ones;
    const twos = unseen.flatMap((a, i) =>
      unseen.slice(i + 1).flatMap((b) => (together(a, b) ? [named([a, b])] : [])),
    );
    return [...ones, ...twos];
  });
  return more.length === 0 ? finding : { ...finding, names: [...finding.names, ...more] };
}
