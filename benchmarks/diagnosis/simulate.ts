/** One simulated module after another: what was really wrong, and the input for the diagnosis. */
import { Chance } from "./chance.ts";
import type { DiagnosisInput, FieldReading } from "./contract.ts";
import { COARSE, Kit } from "./meters.ts";
import { drawModule } from "./plan.ts";
import { askedBy, PLAN_NAMES, readingsOf } from "./sheets.ts";
import {
  drawFaults,
  drawUnfed,
  FAULT_ODDS,
  makeWorld,
  possibleFaults,
  priorsFor,
  type TrueFault,
  withParameters,
} from "./world.ts";

export interface Simulated {
  readonly index: number;
  readonly plan: string;
  readonly truth: readonly TrueFault[];
  readonly input: DiagnosisInput;
  /** Which reading was spoilt, and how. */
  readonly blunder?: { readonly reading: number; readonly what: string };
}

/**
 * `main`: any fault by the stated mix; `unfed`: banks without supply in modules of several; `blunder`: sound, one reading spoilt; `invisible`: a joint of 50 mΩ and line
 * currents only; `referee`: one small bank and coarse meters, so that brute force has enough worlds that fit.
 */
export type Population = "main" | "unfed" | "blunder" | "invisible" | "referee";

/** Elements of the largest module on which all pairs of faults are drawn and asked for. */
const MOST_FOR_PAIRS = 12;

const MOST_FOR_REFEREE = 6;

/** One round of plans in this many is drawn from, and diagnosed for, all pairs of faults. */
const PAIRS_ONE_IN = 8;

const REDUNDANT = ["branches and lines", "everything"];
const ENERGISED = [
  "line currents",
  "bank currents",
  "branch currents",
  "volts and currents",
  "ohms and currents",
  "joint drops",
  "everything",
];
const FEW_READINGS = ["between lines", "to star points", "line currents", "ohms and currents"];
const PLANS_OF: Readonly<Record<Population, readonly string[]>> = {
  main: PLAN_NAMES,
  unfed: ENERGISED,
  blunder: REDUNDANT,
  invisible: ["line currents"],
  referee: FEW_READINGS,
};

export function simulate(
  seed: number,
  index: number,
  population: Population = "main",
  limits: { readonly mostElements?: number } = {},
): Simulated {
  const chance = new Chance(seed, index);
  const pairs = population === "main" && Math.floor(index / PLAN_NAMES.length) % PAIRS_ONE_IN === 0;
  const { mostElements = Number.POSITIVE_INFINITY } = limits;
  const most = population === "referee" ? MOST_FOR_REFEREE : pairs ? MOST_FOR_PAIRS : mostElements;
  let drawn = drawModule(chance, { mostElements: most });
  while (population === "unfed" && drawn.plan.banks.length < 2)
    drawn = drawModule(chance, { mostElements: most });
  const depth = pairs ? "pairs" : "single";
  const possible = possibleFaults(drawn);
  const priors = priorsFor(possible, FAULT_ODDS);
  const plans = PLANS_OF[population];
  const plan = plans[index % plans.length] as string;
  const faults =
    population === "blunder"
      ? []
      : population === "unfed"
        ? drawUnfed(chance, drawn, priors)
        : population === "invisible"
          ? [chance.pick(possible.filter(({ kind }) => kind === "joint"))]
          : drawFaults(chance, possible, priors, depth);
  const truth = faults.map((fault): TrueFault => {
    if (population !== "invisible") return withParameters(chance, fault);
    return { fault, parameters: [{ of: "joint resistance", value: 0.05 }] };
  });
  const world = makeWorld(chance, drawn, truth);
  const kit = population === "referee" ? new Kit(chance, COARSE) : new Kit(chance);
  const readings = readingsOf(world, askedBy(plan, drawn, chance), kit, chance);
  const lineVoltage = drawn.lineVoltage as NonNullable<DiagnosisInput["supply"]>["lineVoltage"];
  const input: DiagnosisInput = {
    module: drawn.plan,
    readings,
    instruments: kit.instruments,
    supply: { lineVoltage },
    priors,
    depth,
  };
  if (population !== "blunder") return { index, plan, truth, input };
  const spoilt = spoil(readings, chance);
  return { index, plan, truth, input: { ...input, readings: spoilt.readings }, blunder: spoilt.blunder };
}

/** A gross blunder: one ohm reading written down 1.5 to 4 times too high or too low. */
function spoil(
  readings: readonly FieldReading[],
  chance: Chance,
): { readonly readings: readonly FieldReading[]; readonly blunder: NonNullable<Simulated["blunder"]> } {
  const able = readings.flatMap(({ kind, reads }, i) =>
    kind === "resistance" && reads !== "open" && reads > 0 ? [i] : [],
  );
  const at = chance.pick(able);
  const factor = chance.happens(0.5) ? chance.logBetween(1.5, 4) : 1 / chance.logBetween(1.5, 4);
  const what = `reading ${at} times ${factor.toFixed(2)}`;
  return {
    blunder: { reading: at, what },
    readings: readings.map((reading, i) =>
      i === at && reading.kind === "resistance" && reading.reads !== "open"
        ? { ...reading, reads: Number((reading.reads * factor).toPrecision(3)) as typeof reading.reads }
        : reading,
    ),
  };
}
