/** Banks without supply that another fault may stand beside: weighed where nothing simpler fits. */
import { logLikelihood, type Model, showsBanks } from "../likelihood/model.ts";
import type { State } from "../network/state.ts";
import { applied, type Ground, groundOf } from "../weighing/findings.ts";
import { type Names, NO_FAULT, namesBeside } from "../weighing/names.ts";
import { stateWithout, unfedNames } from "./unfedBanks.ts";

/** Most banks or lines of banks without supply that are weighed beside another fault. */
const MOST_GROUNDS = 16;

/** Banks without supply, one, all or one on one line, the likeliest first: what another fault beside them stands on. */
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
  const near = [...whole, ...lines].map(([state, names]) => ({
    state,
    names,
    log: logLikelihood(model, state) + names.logOdds,
  }));
  return near
    .sort((a, b) => b.log - a.log)
    .slice(0, MOST_GROUNDS)
    .map(({ state, names }) => groundOf(model, state, names));
}
