/**
 * One reading that does not belong to the others: a slip of the pen, probes on another stud, a clamp on another wire. Everything usual is
 * weighed once more without it, so this is asked only where nothing explains all readings taken at their word.
 */

import { readApart, skewedSupply } from "../hypotheses/skewedSupply.ts";
import type { Question } from "../likelihood/model.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FieldReading } from "../question/fieldReading.ts";
import { measurementOf } from "../question/instruments.ts";
import { type Finding, renamed } from "../weighing/findings.ts";
import type { Named } from "../weighing/names.ts";
import { checkedByOthers } from "./checkedByOthers.ts";
import { inference, type Weighed } from "./infer.ts";
import { type Asked, fixedWithout, type Without, withoutRow } from "./leavingOut.ts";
import { wiringsUnder } from "./prepared.ts";

type Misread = Extract<DiagnosedFault, { readonly kind: "misread" }>;

/** Decades over which a misread value may lie, each as likely; and how often it is an open path. Our judgement. */
const DECADES = 4;
const OPEN = 0.1;

/** ln of the density of a value that has nothing to do with what was measured. */
function astray({ seen }: Question, r: number): number {
  const reads = seen.reads[r] as number;
  if (reads === Number.POSITIVE_INFINITY) return Math.log(OPEN);
  return -Math.log(Math.max(reads, seen.resolution[r] as number) * DECADES * Math.LN10);
}

/** A finding among the other readings, with the misread one before the faults that no reading shows. */
function beside(finding: Finding, fault: Misread, logOdds: number, shift: number): Finding {
  const { names } = finding;
  const named = (one: Named): Named => {
    const { faults, unseen = [] } = one;
    const shown = faults.length - unseen.length;
    return {
      ...one,
      faults: [...faults.slice(0, shown), fault, ...faults.slice(shown)],
      logOdds: one.logOdds + logOdds,
    };
  };
  const all = {
    faults: names.faults + 1,
    logOdds: names.logOdds + logOdds,
    list: () => names.list().map(named),
  };
  return { ...renamed(finding, all, finding.completed), log: finding.log + shift };
}

/**
 * Readings that can be said not to belong to the others: those that the others determine, line voltages far out of balance, which are held
 * against what supplies usually are, and one that looks like a voltage to neutral.
 * @param sound - the module as drawn and sound
 */
export function misreadRows(question: Question, sound: Weighed, slip: number | null): readonly number[] {
  const checked = checkedByOthers(sound);
  const apart = readApart(question);
  return question.input.readings.flatMap(({ kind }, r) =>
    checked[r] === true || r === slip || (apart && kind === "voltage") ? [r] : [],
  );
}

/** What the readings are weighed with, one of them left out. */
interface Leaving extends Asked {
  /** Readings to leave out, one after the other. */
  readonly rows: readonly number[];
  readonly taken: (one: Weighed) => void;
  /** Best log posterior so far: what is hopeless beside it is only estimated. */
  readonly most: number;
}

/** Weighs everything usual, and banks without supply, without each of some readings in turn. */
export function weighMisread({ question, wirings, plain, rows, taken, most }: Leaving): void {
  const { misread } = question.priors;
  if (misread === 0) return;
  const logOdds = Math.log(misread / (1 - misread));
  let best = most;
  const keep = ({ finding, wiring, logPrior }: Weighed, { row, shift }: Without): void => {
    const of = measurementOf(question.input.readings[row] as FieldReading);
    const found = beside(finding, { kind: "misread", reading: row, of }, logOdds, shift);
    best = Math.max(best, found.log + found.names.logOdds + logPrior);
    taken({ finding: found, wiring, logPrior });
  };
  const all = rows.map(
    (row): Without => ({ row, rest: withoutRow(question, row), shift: astray(question, row) }),
  );
  // Volts far apart bring hypotheses of their own, which hang on every one of them.
  const apart = skewedSupply(question) !== null;
  const skewed = new Set(all.filter(({ rest }) => apart || skewedSupply(rest) !== null));
  const together = all.filter((one) => !skewed.has(one));
  fixedWithout({ question, wirings, plain }, together, best - logOdds, keep);
  // What is weighed without one reading must not hang on which was left out before it.
  const known = best - logOdds;
  for (const without of all) {
    const { rest, shift } = without;
    const own = wiringsUnder(wirings, rest);
    const weigh = inference(rest, (one) => keep(one, without), own, known - shift);
    if (!skewed.has(without)) {
      if (!plain) weigh.free();
      continue;
    }
    if (plain) weigh.plain();
    else weigh.usual();
    weigh.unfed();
  }
}
