/** Joints that are alike, compared by their millivolt drops. */
import { judge } from "../decision/index.ts";
import { measuredJoint } from "../joint/index.ts";
import { type Amperes, type Issue, issue, type Ohms, type Volts, type Watts } from "../quantity/index.ts";
import type { JointAssessment } from "./assessTypes.ts";
import { throwAll } from "./issues.ts";
import type { ParsedRecord } from "./recordParsed.ts";

/** A joint above this multiple of the lowest like joint is to be looked at. */
const COMPARISON_RATIO = 1.5;

const RULE =
  "More than 50 % above the lowest like joint: investigate (comparison rule of acceptance-testing practice; edition and table " +
  "not verified here, so treat it as common practice). It compares joints of one kind at their own currents and says nothing of a " +
  "set that is bad alike: look at the heat too. The maker's limit, the local code and a licensed electrician decide.";

interface Measured {
  readonly id: string;
  readonly resistance: Ohms;
  readonly power: Watts;
  /** Lowest and highest resistance that one unit of the last digit of drop and current allows, Ω. */
  readonly low: number;
  readonly high: number;
}

function measuredJoints({ joints = [] }: ParsedRecord): readonly Measured[] {
  return joints.map(({ id, drop, current }) => {
    const dDrop = drop.resolution ?? 0;
    const dCurrent = Math.min(current.resolution ?? 0, current.value / 2);
    const { resistance, halfWidth, power } = measuredJoint({
      drop: drop.value,
      current: current.value,
      dropHalfWidth: dDrop as Volts,
      currentHalfWidth: dCurrent as Amperes,
    });
    // The interval is wider upwards than downwards: a current read too high counts for more than one read too low.
    const low = Math.max(0, drop.value - dDrop) / (current.value + dCurrent);
    return { id, resistance, power, low, high: resistance + halfWidth };
  });
}

function comparisonOf(joint: Measured, best: Measured, count: number): JointAssessment["comparison"] {
  if (count === 1 || best.resistance === 0) return "nothing to compare with";
  if (joint.id === best.id) return "like the best";
  const ratio = joint.resistance / best.resistance;
  const widest = best.low > 0 ? joint.high / best.low : Number.MAX_VALUE;
  const narrowest = joint.low / best.high;
  const { verdict } = judge({
    value: ratio,
    halfWidth: Math.max(widest - ratio, ratio - narrowest),
    high: COMPARISON_RATIO,
    rule: RULE,
  });
  if (verdict === "within") return "like the best";
  // The interval is not symmetric: what its lower end still exceeds is settled.
  return verdict === "outside" || narrowest > COMPARISON_RATIO ? "investigate" : "undecided";
}

/** R = U/I, P = U·I, ratio to the best; worst first. */
export function assessJoints(record: ParsedRecord): readonly JointAssessment[] {
  const { joints = [] } = record;
  const seen = new Set<string>();
  const found: Issue[] = [];
  joints.forEach(({ id }, i) => {
    if (seen.has(id)) {
      found.push(
        issue({ code: "duplicate", path: `joints.${i}.id`, expected: "a name used once", received: id }),
      );
    }
    seen.add(id);
  });
  throwAll(found);
  const measured = measuredJoints(record);
  const best = measured.reduce<Measured | null>(
    (least, one) => (least === null || one.resistance < least.resistance ? one : least),
    null,
  );
  if (best === null) return [];
  return measured
    .map((joint) => ({
      id: joint.id,
      resistance: joint.resistance,
      power: joint.power,
      ratioToBest: best.resistance > 0 ? joint.resistance / best.resistance : null,
      comparison: comparisonOf(joint, best, measured.length),
      rule: RULE,
    }))
    .sort((a, b) => b.resistance - a.resistance || (a.id < b.id ? -1 : 1));
}
