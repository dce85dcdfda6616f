/** Banks without supply that another fault may stand beside: weighed where nothing simpler fits. */
import { largestFirst } from "../../../numeric/index.ts";
import { logLikelihood, type Model, showsBanks } from "../likelihood/model.ts";
import type { State } from "../network/state.ts";
import { applied, type Ground, groundOf } from "../weighing/findings.ts";
import { type Names, NO_FAULT, namesBeside } from "../weighing/names.ts";
import { DIGITS, stateWithout, unfedNames } from "./unfedBanks.ts";

/** Most banks or lines of banks without supply that are weighed beside another fault. */
const MOST_GROUNDS = 8;

/** How far all amps together lie from what a state predicts, as a logarithm; `null` where amps were read of which there can be none. */
function distance({ question, prediction }: Model): number | null {
  // What the clamp does not tell from nothing counts on both sides.
  let [read, expected] = [0, 0];
  let some = false;
  for (const [r, { kind }] of question.input.readings.entries()) {
    const reads = question.seen.reads[r] as number;
    if (kind !== "current" || Number.isNaN(reads)) continue;
    const mean = prediction.mean[r] as number;
    const allowed = DIGITS * Math.sqrt(question.seen.own[r] as number);
    if (mean < allowed && reads > mean + allowed) return null;
    read += reads + allowed;
    expected += mean + allowed;
    some = true;
  }
  return some ? Math.abs(Math.log(read / expected)) : null;
}

/** Banks without supply, one, all or one on one line, that bring all amps together nearer: what another fault beside them stands on. */
export function unfedGrounds(model: Model): readonly Ground[] {
  const { question, wiring, sound } = model;
  const p = question.priors.unfedBank;
  if (!question.live || !showsBanks(question.input)) return [];
  const banks = wiring.module.plan.banks.map(({ id }) => id);
  const sets = [banks, ...(banks.length > 1 ? banks.map((id) => [id]) : [])];
  const whole =
    p === 0
      ? []
      : sets.map((set): readonly [State, Names] => [
          stateWithout(model, set),
          unfedNames({ banks: set, ways: 1, list: () => [set] }, banks.length, p),
        ]);
  const ground = groundOf(model, sound, NO_FAULT);
  const lines = model
    .atoms()
    .filter(({ kind }) => kind === "unfed bank")
    .map((atom): readonly [State, Names] => [
      applied(model, ground, atom, atom.insertion(0)),
      namesBeside(NO_FAULT, atom.members),
    ]);
  const distanceOf = (state: State): number | null => {
    logLikelihood(model, state);
    return distance(model);
  };
  const now = distanceOf(sound) ?? Number.POSITIVE_INFINITY;
  const near = [...whole, ...lines].flatMap(([state, names]) => {
    const own = distanceOf(state);
    return own === null || own >= now ? [] : [{ state, names, own }];
  });
  return largestFirst(near, ({ own }) => Math.exp(-own))
    .slice(0, MOST_GROUNDS)
    .map(({ state, names }) => groundOf(model, state, names));
}
