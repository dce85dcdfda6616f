/** One wiring under one set of readings: its sound state, its faults, and the likelihood of any of them. */
import { buildModule, type HeatingModule } from "../../../circuit/index.ts";
import type { Atom } from "../faults/atom.ts";
import { logNoFault, seriesAtoms } from "../faults/faults.ts";
import { scratchOf } from "../network/change.ts";
import { type Wiring, wiringOf } from "../network/edges.ts";
import { type Landing, relanded } from "../network/landings.ts";
import { branchesLookedInto, rowsOf } from "../network/rows.ts";
import { type Frame, frameOf, type Paths, type State } from "../network/state.ts";
import { relinked, type Slip } from "../network/variants.ts";
import { filled } from "../numbers/room.ts";
import type { FieldMeasurement, FieldReading } from "../question/fieldReading.ts";
import { gainDeviation, INSTRUMENT_OF, leadsOf, ownVariance, readsOf } from "../question/instruments.ts";
import { isLine } from "../question/lines.ts";
import { type FaultPriors, type FullSpread, fullPriors, fullSpread } from "../question/settings.ts";
import type { DiagnosisInput, Instrument } from "../question/types.ts";
import { healthyTogether, type TakenInsulation } from "./insulation.ts";
import { type Evaluation, evaluate, evaluationFor, type Seen } from "./likelihood.ts";
import { type Nuisances, observe, type Prediction, predictionFor, supplyModel } from "./observe.ts";

/** The question with its defaults filled in. */
export interface Question {
  readonly input: DiagnosisInput;
  /** The module built, and its alternatives. */
  readonly modules: readonly HeatingModule[];
  readonly spread: FullSpread;
  readonly priors: Required<FaultPriors>;
  readonly seen: Seen;
  readonly by: Nuisances;
  readonly live: boolean;
  /** Middle of the common tolerance: elements are taken there. */
  readonly scale: number;
  /** Readings, then planned measurements. */
  readonly all: readonly (FieldReading | FieldMeasurement)[];
}

/** Ohms above a sound path from which joints burnt to more than the common 30 Ω are weighed: a good half of it, since others lie side by side. */
const WORST_COMMON = 10;

const LIVE: ReadonlySet<FieldReading["kind"]> = new Set(["current", "voltage", "drop"]);

/** Whether a reading is taken on the energised module. */
export function isLive({ kind }: { readonly kind: FieldReading["kind"] }): boolean {
  return LIVE.has(kind);
}

/** Whether some energised reading hangs on what a bank carries: volts between lines do not. */
export const showsBanks = ({ readings }: DiagnosisInput): boolean =>
  readings.some(
    (one) =>
      one.kind === "current" ||
      one.kind === "drop" ||
      (one.kind === "voltage" && !(isLine(one.from) && isLine(one.to))),
  );

/** Every plan of a question, built. */
const built = ({ module, alternatives = [] }: DiagnosisInput): readonly HeatingModule[] =>
  [module, ...alternatives].map((plan) => buildModule(plan));

/**
 * Fills in defaults and turns readings into numbers.
 * @param planned - measurements that come behind the readings without a value
 * @param modules - the plans of the question, if they have been built already
 */
export function questionOf(
  input: DiagnosisInput,
  planned: readonly FieldMeasurement[] = [],
  modules: readonly HeatingModule[] = built(input),
): Question {
  const spread = fullSpread(input.spread);
  const { low, high } = spread.common;
  const scale = 1 + (low + high) / 2;
  const { instruments } = input;
  const all = [...input.readings, ...planned];
  const live = all.some(isLive);
  const nominal = input.supply?.lineVoltage ?? null;
  const instrumentOf = (reading: { readonly kind: FieldReading["kind"] }): Instrument | undefined =>
    instruments[INSTRUMENT_OF[reading.kind]];
  const seen: Seen = {
    reads: filled(all.length, (r) => {
      const reads = readsOf(all[r] as FieldReading);
      return reads === null ? Number.NaN : reads === "open" ? Number.POSITIVE_INFINITY : reads;
    }),
    own: filled(all.length, (r) => {
      const reading = all[r] as FieldReading;
      const instrument = instrumentOf(reading);
      const reads = readsOf(reading);
      return instrument === undefined || reads === null || reads === "open"
        ? 0
        : ownVariance(instrument, reads);
    }),
    resolution: filled(all.length, (r) => instrumentOf(all[r] as FieldReading)?.resolution ?? 1),
    reach: filled(all.length, (r) => (all[r]?.kind === "insulation" ? 0 : (nominal ?? 1))),
  };
  const by: Nuisances = {
    common: (high - low) / Math.sqrt(12) / scale,
    individual: spread.individual,
    joint: spread.joint,
    ratio: spread.temperatureFactor.standardUncertainty / spread.temperatureFactor.value,
    leads: leadsOf(instruments.ohmmeter, spread.leadsUpTo),
    lineVoltage: spread.lineVoltage,
    // Never quite 0: the columns it scales also carry the fault of an unbalanced supply.
    unbalance: Math.max(spread.unbalance, 1e-6),
    gains: {
      ohmmeter: gainDeviation(instruments.ohmmeter),
      clamp: gainDeviation(instruments.clamp),
      voltmeter: gainDeviation(instruments.voltmeter),
      millivoltmeter: gainDeviation(instruments.millivoltmeter),
    },
    supply: live && nominal !== null ? supplyModel(nominal) : null,
  };
  return { input, modules, spread, priors: fullPriors(input.priors), seen, by, live, scale, all };
}

/** Whether some path between terminals was read longer than a sound one by more than a joint commonly has. */
function showsCharred({ seen }: Question, { deadRows }: Frame, { dead }: State): boolean {
  return deadRows.some((list, k) =>
    list.some((r, i) => {
      const more = (seen.reads[r] as number) - (dead[k]?.resistance[i] as number);
      return more > WORST_COMMON && more < Number.POSITIVE_INFINITY;
    }),
  );
}

/** One wiring, ready to be asked. */
export interface Model {
  readonly question: Question;
  readonly wiring: Wiring;
  readonly frame: Frame;
  readonly sound: State;
  /** Work space for states that are looked at once: whoever writes it reads it before anyone else can. */
  readonly scratch: State;
  /** Its series faults, as far as its readings let them be seen, worked out when first asked for: of most slips only the sound module is weighed. */
  readonly atoms: () => readonly Atom[];
  /** The same where some path is charred, or none. */
  readonly series: (charred: boolean) => readonly Atom[];
  /** For each dead arrangement, what hangs together and by how many ohms. */
  readonly paths: readonly Paths[];
  /** Edges still connected in each dead arrangement. */
  readonly settings: readonly ReadonlySet<number>[];
  readonly prediction: Prediction;
  readonly evaluation: Evaluation;
  /** ln of the density of the insulation readings on a module without an earth fault. */
  readonly healthyInsulation: number;
  /** ln Π(1 − p) over all places of this wiring. */
  readonly logSound: number;
}

/** The edges of a module as drawn, apart where readings look inside. */
export function drawnWiring({ all, scale }: Question, module: HeatingModule): Wiring {
  const whole = wiringOf(module, new Set(), scale);
  const inside = branchesLookedInto(whole, all);
  return inside.size === 0 ? whole : wiringOf(module, inside, scale);
}

/**
 * Sets one plan up, with a slip in its links if there is one.
 * @param asDrawn - the plan's edges
 * @param drawn - the wiring whose names the readings use
 */
export function modelOf(question: Question, asDrawn: Wiring, drawn: Wiring, slip?: Slip | Landing): Model {
  const { all, spread, live } = question;
  const ratio = spread.temperatureFactor.value;
  const wiring =
    slip === undefined
      ? asDrawn
      : slip.kind === "mis-linked"
        ? relinked(asDrawn, slip)
        : relanded(asDrawn, slip);
  const rows = rowsOf(wiring, drawn, all);
  const { frame, state, paths } = frameOf(wiring, rows, ratio, live);
  // Drops that were read, not those still planned: a plan must not move what the readings say.
  const withDrop = new Set(
    rows.rows.slice(0, question.input.readings.length).map((row) => (row?.kind === "drop" ? row.edge : -1)),
  );
  withDrop.delete(-1);
  const charred = showsCharred(question, frame, state);
  const betweenLines = question.input.readings.some(
    (one) => one.kind === "voltage" && isLine(one.from) && isLine(one.to),
  );
  // Of a single bank it is the line itself that is lost, unless its volts were there.
  const bankLines = showsBanks(question.input) && (betweenLines || wiring.module.plan.banks.length > 1);
  const known: { [charred: string]: readonly Atom[] } = {};
  const series = (charred: boolean): readonly Atom[] => {
    const key = String(charred);
    known[key] ??= seriesAtoms(wiring, ratio, question.priors, { withDrop, charred, live, bankLines });
    return known[key];
  };
  return {
    question,
    wiring,
    frame,
    sound: state,
    scratch: scratchOf(state),
    atoms: () => series(charred),
    series,
    paths,
    settings: rows.settings,
    prediction: predictionFor(frame),
    evaluation: evaluationFor(all.length),
    healthyInsulation: healthyRows({ question, frame, paths }, () => true),
    logSound: logNoFault(wiring, question.priors, { live, bankLines }),
  };
}

/** ln density of some of the insulation readings on a module without an earth fault in their way; places that hang together share their damp. */
export function healthyRows(
  { question, frame, paths }: Pick<Model, "question" | "frame" | "paths">,
  picked: (row: number) => boolean,
): number {
  const { all, seen } = question;
  const together = new Map<string, TakenInsulation[]>();
  all.forEach((reading, r) => {
    const reads = readsOf(reading);
    if (reading.kind !== "insulation" || reads === null || !picked(r)) return;
    const row = frame.rows[r];
    const part = row?.kind === "insulation" ? paths[row.setting]?.part.get(row.node) : undefined;
    const key = row?.kind === "insulation" && part !== undefined ? `${row.setting} ${part}` : `alone ${r}`;
    const list = together.get(key) ?? [];
    together.set(key, list);
    list.push({ reads, resolution: seen.resolution[r] as number, own: seen.own[r] as number });
  });
  let log = 0;
  for (const list of together.values()) log += healthyTogether(list);
  return log;
}

/** The same wiring under another question: other readings in the same places, or another supply. */
export function under(model: Model, question: Question): Model {
  const { wiring, frame, sound, scratch, series, paths, settings } = model;
  const { prediction, evaluation, healthyInsulation, logSound } = model;
  const charred = showsCharred(question, frame, sound);
  return {
    question,
    wiring,
    frame,
    sound,
    scratch,
    series,
    atoms: () => series(charred),
    paths,
    settings,
    prediction,
    evaluation,
    healthyInsulation,
    logSound,
  };
}

/** The same model on another supply: line voltages more or less apart, or other phasors altogether. */
export function onSupply(model: Model, supply: Partial<Pick<Nuisances, "unbalance" | "supply">>): Model {
  const { question } = model;
  return under(model, { ...question, by: { ...question.by, ...supply } });
}

/** ln likelihood of the readings in a state; prediction and evaluation hold the particulars until the next call. */
export function logLikelihood(model: Model, state: State): number {
  const { frame, question, prediction, evaluation } = model;
  observe(frame, state, question.by, prediction);
  evaluate(question.seen, prediction, evaluation);
  return evaluation.logLikelihood + model.healthyInsulation;
}
