/** What to measure next: the one reading expected to settle most. */
import type { HeatingModule } from "../../circuit/index.ts";
import { given, type Ohms, type Open } from "../../quantity/index.ts";
import { defaultCandidates, withCommonInstruments } from "./candidates.ts";
import { checkQuestion } from "./check.ts";
import { posteriorOf, type Ranked } from "./inference/posterior.ts";
import { expectedInformation, type Outcome, outcomesOf, spanOf } from "./information.ts";
import { SOUND_INSULATION } from "./likelihood/insulation.ts";
import { isLive, questionOf } from "./likelihood/model.ts";
import type { FieldMeasurement } from "./question/fieldReading.ts";
import type { DiagnosisInput } from "./question/types.ts";
import { forbidsVoltage } from "./telling/forbidsVoltage.ts";
import { explanationWords, listed } from "./telling/words.ts";
import type { Named } from "./weighing/names.ts";

/**
 * A measurement worth taking next.
 * @since 0.1.0
 */
export interface MeasurementProposal {
  /** The reading to take, ready to be filled in. */
  readonly measurement: FieldMeasurement;
  /** Words to follow; a live one with its caution. */
  readonly instruction: string;
  /** Whether it is taken under voltage. */
  readonly live: boolean;
  /** Expected fall of the entropy over the explanations, bits. */
  readonly expectedInformation: number;
  /** Pairs of explanations that it tells apart. */
  readonly separates: readonly (readonly [string, string])[];
  /** What each explanation leads to expect, two standard deviations either way; `"open"` for OL. */
  readonly predictions: readonly {
    /** The explanation, in words. */
    readonly explanation: string;
    /** Lower end of what it predicts. */
    readonly low: number | Open;
    /** Upper end. */
    readonly high: number | Open;
  }[];
}

/** Explanations weighed in a proposal: those of at least this probability, and at most so many. */
const WEIGHTY = 2e-3;
const MOST = 16;

/** A live measurement must promise a quarter more than a dead one to come before it. */
const LIVE_DISCOUNT = 0.8;

/** Less than this promises nothing, bits. */
const NOTHING = 5e-3;

/** Standard deviations between two predictions that are told apart. */
const TOLD_APART = 3;

/** Probability of a fault that forbids voltage from which nothing is proposed under voltage any more. Our judgement. */
const RISKY = 0.05;

/** Whether the module may not be energised for a reading, by what was read to the frame or by what may be wrong with it. */
function keptDead({ readings }: DiagnosisInput, ranked: readonly Ranked[]): boolean {
  const low = readings.some(
    ({ kind, reads }) => kind === "insulation" && reads !== "open" && reads < SOUND_INSULATION[0],
  );
  const risk = ranked.reduce((sum, { finding, probability }) => {
    const [{ faults }] = finding.names.list() as [Named, ...Named[]];
    return faults.some(forbidsVoltage) ? sum + probability : sum;
  }, 0);
  return low || risk > RISKY;
}

const LIVE_CAUTION =
  "Live: only by a person qualified and equipped for it, where the local rules allow it; the dead check comes first wherever it can tell the same.";
const DEAD = "Isolated, locked out and proved dead:";

function lifting(only: readonly string[] | undefined): string {
  return only === undefined ? "links in," : `lift the links of everything but ${listed(only)},`;
}

/** A measurement as an order to a technician. */
function instructionFor(measurement: FieldMeasurement): string {
  switch (measurement.kind) {
    case "resistance":
      return `${DEAD} ${lifting(measurement.only)} measure ohms from ${measurement.from} to ${measurement.to}.`;
    case "insulation":
      return `${DEAD} ${lifting(measurement.only)} measure insulation from ${measurement.from} to the frame at the test voltage that the module allows.`;
    case "current":
      return `At full conduction, clamp the wire at ${measurement.at}${measurement.into === undefined ? "" : ` into ${measurement.into}`} and read amperes. ${LIVE_CAUTION}`;
    case "voltage":
      return `At full conduction, measure volts from ${measurement.from} to ${measurement.to}. ${LIVE_CAUTION}`;
    case "drop":
      return `At full conduction, measure millivolts across joint ${measurement.across}, lug to bar; begin on the volts range, an open joint has the supply across it. ${LIVE_CAUTION} A dead joint can be measured with a four-wire meter instead.`;
  }
}

const nameOf = ({ finding, wiring }: Ranked): string => {
  const [first, ...others] = finding.names.list() as [Named, ...Named[]];
  const words = explanationWords(first.faults, wiring);
  return others.length === 0 ? words : `${words} (or one of ${others.length} like it)`;
};

function toldApart(first: readonly Outcome[], second: readonly Outcome[]): boolean {
  return first.every((a) =>
    second.every((b) => {
      if (a.mean === "open" || b.mean === "open") return a.mean !== b.mean;
      return Math.abs(a.mean - b.mean) > TOLD_APART * Math.hypot(a.deviation, b.deviation);
    }),
  );
}

function predictionOf(
  one: Ranked,
  outcomes: readonly Outcome[],
  insulation: boolean,
): MeasurementProposal["predictions"][number] {
  const explanation = nameOf(one);
  const span = spanOf(outcomes);
  const some = outcomes.some(({ mean }) => mean === "open");
  if (span === null) return { explanation, low: "open", high: "open" };
  const value = (y: number): Ohms => (insulation ? 10 ** y : Math.max(0, y)) as Ohms;
  return { explanation, low: value(span.low), high: some ? "open" : value(span.high) };
}

/**
 * Which single further reading is expected to settle most, best first.
 *
 * For each candidate the reading is predicted under every explanation that matters, from the posterior of its parameters
 * and of the nuisances; the expected information is that between explanation and reading (Shannon), Σ p·∫ p(y|g)·log₂(p(y|g)/p(y)) dy.
 * A reading under voltage comes before a dead one only if it promises a quarter more, and is not proposed at all where less
 * than 1 MΩ was read to the frame, or a fault that forbids voltage has a probability above 0.05.
 * @param input - as for {@link diagnose}; instruments not named are taken as common ones
 * @param input.candidates - the readings considered; left out: those that someone at the module can take: line pairs, banks and
 *   suspected elements with links lifted, star points, amps, volts, drops across drawn joints, insulation
 * @returns proposals that promise anything, best first
 * @throws ElectroheatError as {@link diagnose}
 * @source expected information: D. V. Lindley, On a measure of the information provided by an experiment, Annals of
 *   Mathematical Statistics 27 (1956) 986-1005 (from memory)
 * @example
 * ```ts
 * const [best] = nextMeasurements({
 *   module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.4) }] },
 *   instruments: { clamp: { ofReading: 0.02, digits: 5, resolution: 0.1 } },
 *   supply: { lineVoltage: volts(480) },
 *   readings: [
 *     { kind: "current", at: "L1", reads: amperes(0) },
 *     { kind: "current", at: "L2", reads: amperes(31.2) },
 *     { kind: "current", at: "L3", reads: amperes(31.2) },
 *   ],
 * });
 * [best?.measurement, best?.live] // => [{ kind: "resistance", from: "L1", to: "L2" }, false]
 * ```
 * @since 0.1.0
 */
export function nextMeasurements(
  input: DiagnosisInput & { readonly candidates?: readonly FieldMeasurement[] },
): readonly MeasurementProposal[] {
  const { candidates, ...asked } = given(input);
  const modules = checkQuestion(asked, candidates ?? []);
  const now = posteriorOf(questionOf(asked, [], modules));
  const faults = now.ranked
    .filter(({ probability }, i) => probability > WEIGHTY || i < 2)
    .flatMap(({ finding }) =>
      finding.names.list().flatMap((one) => (one.unseen === undefined ? one.faults : [])),
    );
  const all = candidates ?? defaultCandidates(asked, modules[0] as HeatingModule, faults);
  const planned = keptDead(asked, now.ranked) ? all.filter((one) => !isLive(one)) : all;
  if (planned.length === 0) return [];
  const instruments = withCommonInstruments(asked.instruments);
  const question = questionOf({ ...asked, instruments }, planned, modules);
  const ranked = posteriorOf(question)
    .ranked.filter(({ probability }, i) => probability > WEIGHTY || i < 2)
    .slice(0, MOST);
  const rows = planned.map((_, k) => asked.readings.length + k);
  const outcomes = ranked.map(({ finding }) => outcomesOf(finding, rows));
  const probabilities = ranked.map(({ probability }) => probability);
  return planned
    .map((measurement, k): MeasurementProposal => {
      const own = outcomes.map((list) => list[k] as readonly Outcome[]);
      const separates: [string, string][] = [];
      ranked.forEach((first, i) => {
        ranked.slice(i + 1).forEach((second, j) => {
          if (toldApart(own[i] as readonly Outcome[], own[i + 1 + j] as readonly Outcome[])) {
            separates.push([nameOf(first), nameOf(second)]);
          }
        });
      });
      return {
        measurement,
        instruction: instructionFor(measurement),
        live: isLive(measurement),
        expectedInformation: expectedInformation(probabilities, own),
        separates,
        predictions: ranked.map((one, i) =>
          predictionOf(one, own[i] as readonly Outcome[], measurement.kind === "insulation"),
        ),
      };
    })
    .filter(({ expectedInformation: bits }) => bits > NOTHING)
    .sort((a, b) => worth(b) - worth(a));
}

const worth = ({ live, expectedInformation: bits }: MeasurementProposal): number =>
  Math.round(bits * (live ? LIVE_DISCOUNT : 1) * 1e6);
