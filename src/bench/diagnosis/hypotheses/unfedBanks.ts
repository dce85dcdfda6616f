/**
 * Banks without supply: a stage that was not called for, its contactor, its fuses; or all of them, the one cause of no amps anywhere. Dead
 * readings pass that place by, so only the energised state changes. Weighed where the module is not read as sound. A bank without
 * supply on one line only is a series fault like others: `faults.ts` has it.
 */

import { logLikelihood, type Model, showsBanks } from "../likelihood/model.ts";
import { type Edge, type Wiring, withEdges } from "../network/edges.ts";
import { frameOf, type LiveState, type State, VOLTAGE } from "../network/state.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import { LINES } from "../question/lines.ts";
import { type Finding, stateFinding } from "../weighing/findings.ts";
import type { Names } from "../weighing/names.ts";
import { type BankSet, bankSets } from "./bankSets.ts";

/**
 * What each further bank multiplies the odds of some without supply by, those counted that are fewer, without supply or with it: one
 * controller calls for them all. Our judgement.
 */
const FURTHER = 0.1;

/** Part by which amps at a clamp may be off what a set of banks leaves of the sound module's, before the network is asked. */
const FAR_OFF = 0.3;
/** Deviations of the clamp allowed besides. */
const DIGITS = 4;

/** The wiring with some banks carrying nothing. */
const without = (wiring: Wiring, banks: readonly string[]): Wiring =>
  withEdges(wiring, (edge): Edge => {
    const off = !edge.joint && banks.includes(edge.bank);
    return off ? { ...edge, resistance: Number.POSITIVE_INFINITY } : edge;
  });

/** The module with some banks without supply: energised without them, dead as it is. */
export function stateWithout({ wiring, frame, sound, question }: Model, banks: readonly string[]): State {
  const ratio = question.spread.temperatureFactor.value;
  const rows = { rows: frame.rows, settings: [] };
  return { ...sound, live: frameOf(without(wiring, banks), rows, ratio, true).state.live };
}

/** Whether the amps read, but for a few, are anywhere near what is left without some banks: what the others carry in the sound module. */
function plausibleOn(model: Model, spare: number): (banks: readonly string[]) => boolean {
  logLikelihood(model, model.sound);
  const { frame, prediction, question, wiring } = model;
  const re = prediction.edgeRe.slice();
  const im = prediction.edgeIm.slice();
  const clamped = question.input.readings.flatMap((reading, r) => {
    const row = frame.rows[r];
    const reads = question.seen.reads[r] as number;
    if (reading.kind !== "current" || row?.kind !== "current" || Number.isNaN(reads)) return [];
    return [{ reads, cut: row.cut, allowed: DIGITS * Math.sqrt(question.seen.own[r] as number) }];
  });
  return (banks) => {
    const off = clamped.filter(({ reads, cut, allowed }) => {
      let [x, y] = [0, 0];
      cut.index.forEach((edge, k) => {
        if (banks.includes(wiring.edges[edge]?.bank as string)) return;
        x += (cut.sign[k] as number) * (re[edge] as number);
        y += (cut.sign[k] as number) * (im[edge] as number);
      });
      const left = Math.hypot(x, y);
      return Math.abs(reads - left) > FAR_OFF * Math.max(reads, left) + allowed;
    });
    return off.length <= spare;
  };
}

/** Names of a set of banks and of all like it: one cause, however many banks. */
export function unfedNames({ banks, ways, list }: BankSet, all: number, p: number): Names {
  const fewer = Math.min(banks.length, all - banks.length);
  const each = Math.log(p / (1 - p)) + Math.max(0, fewer - 1) * Math.log(FURTHER);
  return {
    faults: banks.length,
    oneCause: true,
    logOdds: each + Math.log(ways),
    list: () =>
      list().map((set) => ({
        faults: set.map((bank): DiagnosedFault => ({ kind: "unfed bank", bank })),
        logOdds: each,
      })),
  };
}

/** No line has supply: nothing flows, and what is read on the lines floats. One cause, so as likely as one lost line. */
function deadFinding(model: Model): readonly Finding[] {
  const { question, wiring, frame } = model;
  const p = question.priors.lostLine;
  const live = stateWithout(
    model,
    wiring.module.plan.banks.map(({ id }) => id),
  ).live as LiveState;
  const adrift = live.adrift.slice();
  frame.liveKind.forEach((kind, k) => {
    if (kind === VOLTAGE) adrift[k] = 1;
  });
  const state = { ...model.sound, live: { ...live, adrift } };
  const faults = LINES.map((line): DiagnosedFault => ({ kind: "lost line", line }));
  const logOdds = Math.log(p / (1 - p));
  const names = { faults: faults.length, oneCause: true, logOdds, list: () => [{ faults, logOdds }] };
  return [stateFinding(model, state, names)];
}

/**
 * Weighs banks without supply, one, several or all; and no supply at all.
 * @param spare - amps that may be far from what is left
 */
export function unfedBankFindings(model: Model, spare: number): readonly Finding[] {
  const { question, wiring } = model;
  const { unfedBank: p, lostLine } = question.priors;
  if (!question.live || !showsBanks(question.input)) return [];
  const isPlausible = plausibleOn(model, spare);
  const banks = wiring.module.plan.banks.map(({ id }) => id);
  const sets = p === 0 ? [] : bankSets(model).filter((set) => isPlausible(set.banks));
  return [
    ...sets.map((set) => {
      const state = stateWithout(model, set.banks);
      return stateFinding(model, state, unfedNames(set, banks.length, p));
    }),
    ...(lostLine > 0 && isPlausible(banks) ? deadFinding(model) : []),
  ];
}
