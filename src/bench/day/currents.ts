/** Clamp readings beside what the module as drawn, sound, would take at the supply measured. */
import {
  type BranchState,
  buildModule,
  type EnergisedNetwork,
  energise,
  type HeatingModule,
  type Network,
  unbalanceByDefinition,
} from "../../circuit/index.ts";
import { judge } from "../../decision/index.ts";
import { modulus } from "../../numeric/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import type { ParsedReadings, ParsedRecord, ParsedSupply } from "../record/parsed.ts";
import { figure } from "../site/figure.ts";
import { elementPlan } from "./branchModule.ts";
import { errorLimit } from "./instrumentLimits.ts";
import type { SupplyState } from "./supplyState.ts";
import { FAR, farOff } from "./wideLimits.ts";

type Amps = NonNullable<ParsedReadings["currents"]>[number];

/** The lines of a supply. */
export const LINES = ["L1", "L2", "L3"] as const;

/** A figure with nothing but its value and where it comes from. */
const bareFigure = (label: string, value: number | null, unit: string, basis: string): Figure =>
  figure({ label, value, unit, basis });

/** A sound module under voltage. */
interface Sound {
  readonly module: HeatingModule;
  readonly state: EnergisedNetwork;
}

/** Current at a node into a bank, branch or element of the sound module, or into all that a line feeds, A. */
function soundCurrent({ module, state }: Sound, { at, into }: Amps): number {
  const line = state.lines.find(({ node }) => node === at);
  if (into === undefined && line !== undefined) return line.current;
  const current = { re: 0, im: 0 };
  module.elements.forEach(({ id, bank, branch }, i) => {
    if (into !== undefined && ![id, bank, `${bank}-${branch}`].includes(into)) return;
    // Elements come first among the network's branches, in the same order.
    const { from, to } = module.network.branches[i] as Network["branches"][number];
    const { currentPhasor } = state.branches[i] as BranchState;
    const sign = from === at ? 1 : to === at ? -1 : 0;
    current.re += sign * currentPhasor.re;
    current.im += sign * currentPhasor.im;
  });
  return modulus(current);
}

const labelOf = ({ at, into }: Amps): string =>
  into === undefined ? `line current ${at}` : `current ${at} into ${into}`;

/** Below this part of the largest current of the sound module there is nothing to hold a reading against. */
const NOTHING = 1e-6;

/** Amps that nobody judges, judged where they are far off. */
function unlessFar(measured: Figure, expected: number, name: string, voltage: number): Figure {
  const halfWidth = (measured.halfWidth ?? 0) + expected * voltage;
  const far = farOff({ value: Number(measured.value), halfWidth, expected, name });
  if (far === null) return measured;
  const { low, high, rule } = far;
  return {
    ...measured,
    limit: { low, high },
    verdict: "outside",
    basis: `${measured.basis}; limits: ${rule}`,
  };
}

function currentFigures(
  one: Amps,
  record: ParsedRecord,
  sound: Sound | null,
  /** Largest relative error of the voltage measured. */
  voltage: number,
  /** Whether the diagnosis weighs the amps. */
  weighed: boolean,
  /** The middle one of the three line currents, where nothing else is known of a sound module's. */
  peers: number | null,
): Figure[] {
  const { tolerance, instruments } = record;
  const value = one.reads.value;
  const limit = errorLimit(one.reads, instruments?.clamp);
  const label = labelOf(one);
  const measured = bareFigure(label, value, "A", "clamp, as read");
  const read = { ...measured, halfWidth: limit };
  if (sound === null) return [peers === null ? read : unlessFar(read, peers, "median of the lines", 0)];
  const expected = soundCurrent(sound, one);
  const largest = Math.max(...sound.state.lines.map(({ current }) => current));
  const beside = bareFigure(
    `${label}, sound module`,
    expected,
    "A",
    "every branch at its target, at working temperature, on the supply of that day",
  );
  if (!(expected > NOTHING * largest)) return [read, beside];
  if (tolerance === undefined) {
    return [weighed ? read : unlessFar(read, expected, "sound module", voltage), beside];
  }
  // A line current lies between those with all branches at either end of the tolerance: star and delta are monotone in each
  // conductance. A branch of tied stars may stray beyond in second order.
  const low = expected / (1 + tolerance.high);
  const high = 1 + tolerance.low > 0 ? expected / (1 + tolerance.low) : null;
  const basis =
    "clamp, as read; limits: a sound module with branches at either end of the tolerance given in the record";
  const judged = judge({
    value,
    // No clamp that nobody named is off by more.
    halfWidth: (limit ?? expected * FAR) + expected * voltage,
    low,
    ...(high === null ? {} : { high }),
    rule: basis,
  }).verdict;
  const verdict = limit === null && judged !== "outside" ? null : judged;
  const caution = verdict === null ? "not judged: the record does not name the clamp's accuracy" : null;
  return [{ ...measured, halfWidth: limit, limit: { low, high }, verdict, basis, caution }, beside];
}

/** The three line currents of a day, each read once; null otherwise, or where a neutral makes them no closed sum. */
function lineReadings(currents: readonly Amps[], record: ParsedRecord): readonly Amps[] | null {
  const whole = currents.filter(({ into }) => into === undefined);
  const three = LINES.flatMap((line) => whole.filter(({ at }) => at === line));
  if (three.length !== 3 || new Set(three.map(({ at }) => at)).size !== 3) return null;
  return record.wiring.neutral === "connected" ? null : three;
}

/** The middle of three: a sound module, star or delta or both, takes equal amps from each line. */
const middleOf = (three: readonly Amps[]): number =>
  three.map(({ reads }) => reads.value as number).sort((a, b) => a - b)[1] as number;

/** Unbalance up to which the product of the means gives the power: it counts only in second order. */
const NEARLY_BALANCED = 0.05;

const volts = (supply: ParsedSupply): readonly [number, number, number] => [
  supply.v12.value,
  supply.v23.value,
  supply.v31.value,
];
const mean = (three: readonly number[]): number => three.reduce((sum, one) => sum + one, 0) / three.length;

/** Largest error of any of three readings over their mean. */
function relativeLimit(limits: readonly (number | null)[], values: readonly number[]): number | null {
  const known = limits.filter((one) => one !== null);
  return known.length === limits.length && mean(values) > 0 ? Math.max(...known) / mean(values) : null;
}

const voltageLimit = (supply: ParsedSupply, { instruments }: ParsedRecord): number | null =>
  relativeLimit(
    [supply.v12, supply.v23, supply.v31].map((one) => errorLimit(one, instruments?.voltmeter)),
    volts(supply),
  );

/** Below this an unbalance is what floating point leaves of equal readings. */
const FLOAT_NOISE = 1e-12;

/** What three line currents amount to together: against a sound module, and as power. */
function togetherFigures(
  three: readonly Amps[],
  record: ParsedRecord,
  sound: Sound | null,
  supply: ParsedSupply | undefined,
): Figure[] {
  const values = three.map(({ reads }) => reads.value as number);
  const amps = relativeLimit(
    three.map(({ reads }) => errorLimit(reads, record.instruments?.clamp)),
    values,
  );
  const figures: Figure[] = [];
  if (sound !== null) {
    const expected = mean(three.map((one) => soundCurrent(sound, one)));
    if (expected > 0) {
      const ratio = mean(values) / expected;
      figures.push({
        ...bareFigure("mean line current over that of a sound module", ratio, "1", "mean of L1, L2, L3"),
        halfWidth: amps === null ? null : ratio * amps,
      });
    }
  }
  const current = mean(values);
  const uneven = Math.max(...values.map((one) => Math.abs(one - current)));
  if (supply !== undefined && current > 0 && uneven <= NEARLY_BALANCED * current) {
    const power = Math.sqrt(3) * mean(volts(supply)) * current;
    const volt = voltageLimit(supply, record);
    figures.push({
      ...bareFigure(
        "power from line currents",
        power,
        "W",
        "√3·V·I of the means: resistive module at full conduction, lines nearly balanced",
      ),
      halfWidth: amps === null || volt === null ? null : power * (amps + volt),
    });
  }
  return figures;
}

/**
 * The clamp readings of a day, each beside the sound module's.
 * @param soundBranches - every branch at its target at working temperature, Ω; null where a target is missing
 * @param supply - the voltages measured on that day, if they were
 * @param state - the supply that they amount to
 * @param weighed - whether the diagnosis weighs the amps
 */
export function assessCurrents(input: {
  readonly record: ParsedRecord;
  readonly readings: ParsedReadings;
  readonly soundBranches: ReadonlyMap<string, number> | null;
  readonly supply: ParsedSupply | undefined;
  readonly state: SupplyState | null;
  readonly weighed: boolean;
}): readonly Figure[] {
  const { record, readings, soundBranches, supply, state, weighed } = input;
  const { currents = [] } = readings;
  if (currents.length === 0) return [];
  let sound: Sound | null = null;
  if (soundBranches !== null && state !== null) {
    const module = buildModule(elementPlan(record, soundBranches));
    sound = { module, state: energise({ network: module.network, supply: state.present }) };
  }
  const voltage = supply === undefined ? 0 : (voltageLimit(supply, record) ?? 0);
  const three = lineReadings(currents, record);
  const peers = three === null ? null : middleOf(three);
  return [
    ...currents.flatMap((one) =>
      currentFigures(one, record, sound, voltage, weighed, one.into === undefined ? peers : null),
    ),
    ...(three === null ? [] : togetherFigures(three, record, sound, supply)),
  ];
}

const NO_CRITERION =
  "a criterion of motors and supplies: a resistance heater feels the power of each branch, not this";

function definitions(
  what: string,
  values: readonly [number, number, number],
  measured: "line voltages" | "line currents",
  limit: number | null,
): Figure[] {
  if (values.filter((one) => one === 0).length > 1) return [];
  const [l1, l2, l3] = values;
  return unbalanceByDefinition({ l1, l2, l3, measured }).map(
    ({ definition, formula, source, value, reason }, i) => ({
      // Equal readings leave the last bits of a sum: no unbalance, not a small one.
      ...bareFigure(
        `${what}: ${definition}`,
        value !== null && value < FLOAT_NOISE ? 0 : value,
        "1",
        value === null ? reason : `${formula}; ${source}`,
      ),
      // Worst case of a deviation from the mean: 2/3 of the own error and 1/3 of each of the others.
      halfWidth: i === 0 && limit !== null ? (4 / 3) * limit : null,
      caution: NO_CRITERION,
    }),
  );
}

/** Unbalance of the supply and of the line currents of a day, by each definition that fits. */
export function assessUnbalance(
  record: ParsedRecord,
  readings: ParsedReadings,
  supply: ParsedSupply | undefined,
): readonly Figure[] {
  const three = lineReadings(readings.currents ?? [], record);
  const amps = three?.map(({ reads }) => reads.value as number) as [number, number, number] | undefined;
  return [
    ...(supply === undefined
      ? []
      : definitions(
          "supply",
          volts(supply) as [number, number, number],
          "line voltages",
          voltageLimit(supply, record),
        )),
    ...(amps === undefined || three === null
      ? []
      : definitions(
          "line currents",
          amps,
          "line currents",
          relativeLimit(
            three.map(({ reads }) => errorLimit(reads, record.instruments?.clamp)),
            amps,
          ),
        )),
  ];
}
