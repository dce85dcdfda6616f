/**
 * Banks without supply while the others run: a stage that was not called for, its contactor, its fuses. Dead readings pass that place by, so
 * only the energised state changes. Weighed where the readings refute the sound module, one bank or two at a time.
 */
import type { DiagnosedFault } from "./diagnosedFault.ts";
import { type Edge, type Wiring, withEdges } from "./edges.ts";
import { type Finding, findingOf, onePoint } from "./findings.ts";
import { logLikelihood, type Model } from "./model.ts";
import { oneName } from "./names.ts";
import { frameOf } from "./state.ts";

/** The wiring with some banks carrying nothing. */
const without = (wiring: Wiring, banks: readonly string[]): Wiring =>
  withEdges(wiring, (edge): Edge => {
    const off = !edge.joint && banks.includes(edge.bank);
    return off ? { ...edge, resistance: Number.POSITIVE_INFINITY } : edge;
  });

/** One bank, or two, of those there are; never all of them, which no current shows. */
function setsOf(banks: readonly string[]): readonly (readonly string[])[] {
  const ones = banks.map((one) => [one]);
  const twos = banks.flatMap((one, i) => banks.slice(i + 1).map((other) => [one, other]));
  return [...ones, ...twos].filter((set) => set.length < banks.length);
}

/** Weighs banks without supply. */
export function unfedBankFindings(model: Model): readonly Finding[] {
  const { question, wiring, frame, sound, settings } = model;
  const p = question.priors.unfedBank;
  if (!question.live || p === 0) return [];
  const ratio = question.spread.temperatureFactor.value;
  return setsOf(wiring.module.plan.banks.map(({ id }) => id)).map((banks) => {
    const off = frameOf(without(wiring, banks), { rows: frame.rows, settings }, ratio, true).state;
    const state = { ...sound, live: off.live };
    const faults = banks.map((bank): DiagnosedFault => ({ kind: "unfed bank", bank }));
    const names = oneName(faults, banks.length * Math.log(p / (1 - p)));
    const visit = (): number => logLikelihood(model, state);
    return findingOf(model, names, [], onePoint(visit()), visit);
  });
}
