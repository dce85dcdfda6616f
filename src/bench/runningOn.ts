/** Whether a module may run meanwhile, in one sentence; the people on site decide. */
import { energise, faultEffect, type HeatingModule, type Supply, withResistance } from "../circuit/index.ts";
import type { Ohms } from "../quantity/index.ts";
import { isBadJoint } from "./assessJoints.ts";
import type { ReadingsAssessment } from "./assessmentTypes.ts";
import { listed } from "./diagnosis/words.ts";

/** A survivor above this part of its own sound load is over-stressed; below, it is the unbalance of supply and elements. */
const STRESSED = 1.03;

const NOTHING_READ = "Not known: nothing was read.";
const WHO = "if protection, customer and the electrician in charge accept it";

/** Open branches in the module as it stands: what is left, and what the survivors carry. */
function openWords(
  open: readonly string[],
  module: HeatingModule,
  repaired: ReadonlyMap<string, Ohms>,
  supply: Supply,
): string {
  let { network } = module;
  for (const [id, resistance] of repaired) network = withResistance({ network, id, resistance });
  const effect = faultEffect({ network, supply, faults: open.map((id) => ({ kind: "open" as const, id })) });
  if (effect.outcome !== "runs") return "It does not heat; its open ends stand live all the same.";
  const { worst, powerRatio } = effect;
  const stress = worst?.powerRatio ?? 0;
  const survivors =
    worst !== null && stress > STRESSED
      ? `${worst.id} then carries ${stress.toFixed(2)} times its sound power, which shortens its life: the maker decides`
      : "no survivor carries more than when sound";
  const healthy = energise({ network, supply }).lines;
  const most = Math.max(...effect.lines.map(({ current }) => current));
  const least = Math.min(...effect.lines.filter(({ node }) => node !== "N").map(({ current }) => current));
  const uneven = most - least > 0.05 * Math.max(...healthy.map(({ current }) => current));
  return `May run until parts come at ${(powerRatio * 100).toFixed(0)} % of its power${uneven ? " with unequal lines" : ""}, ${WHO}: ${survivors}; the open ends stay live.`;
}

/** The sentence. */
export function runningWords(input: {
  /** The module as it stands; null where nothing was read. */
  readonly present: ReadingsAssessment | null;
  readonly lostLine: string | null;
  /** Faults that forbid voltage, in words. */
  readonly forbidding: readonly string[];
  /** What the diagnosis says of it, beyond branches and joints. */
  readonly diagnosed: string | null;
  readonly anythingRead: boolean;
  readonly module: HeatingModule;
  readonly repaired: ReadonlyMap<string, Ohms> | null;
  readonly supply: Supply | null;
}): string {
  const { present, lostLine, forbidding, module, repaired, supply } = input;
  if (present === null) return NOTHING_READ;
  const { resistances, joints } = present;
  const { branches } = resistances;
  const found = (...kinds: readonly string[]): string[] =>
    branches.filter(({ finding }) => kinds.includes(finding)).map(({ id }) => id);
  const shorted = found("shorted");
  if (shorted.length > 0) return `Do not energise it: ${listed(shorted)} is as good as bolted.`;
  if (forbidding.length > 0) return `Do not energise it: ${listed(forbidding)}.`;
  const bad = joints.filter(isBadJoint).map(({ id }) => id);
  if (bad.length > 0) {
    return `Not on ${bad.length > 1 ? "joints" : "joint"} ${listed(bad)}: a hot joint feeds on its own heat until it burns open. Remake it first.`;
  }
  if (lostLine !== null)
    return `Not before ${lostLine} is back and the module has been read on all three lines.`;
  if (resistances.consistency === "inconsistent" || resistances.outcome === "contradictory") {
    return "Not known: the readings contradict each other.";
  }
  const open = found("open");
  if (open.length > 0) {
    return repaired === null || supply === null
      ? `Not known: neither nameplate nor voltages say what is left with ${listed(open)} open. The open ends are live under voltage.`
      : openWords(open, module, repaired, supply);
  }
  const off = found("outside", "high");
  if (off.length > 0)
    return `${listed(off)} off its value: the maker and the customer decide whether it runs meanwhile.`;
  if (input.diagnosed !== null) return input.diagnosed;
  const unjudged = present.insulation.filter(({ verdict }) => verdict === null);
  if (unjudged.length > 0)
    return `Not known: ${listed(unjudged.map(({ label }) => label))} is not judged by every limit without the voltage of the supply.`;
  return input.anythingRead
    ? "Nothing read here speaks against running it; what is not tested has not passed."
    : NOTHING_READ;
}
