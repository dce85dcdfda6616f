/** Joints that are alike, compared by their millivolt drops. */
import { compareQuoted, decimalProduct } from "../decision/index.ts";
import { type Issue, issue, type Ohms, type Watts } from "../quantity/index.ts";
import type { JointAssessment } from "./assessTypes.ts";
import { throwAll } from "./issues.ts";
import type { ParsedRecord } from "./recordSchema.ts";

/**
 * A joint above this multiple of the lowest like joint is to be looked at. A trigger, not a verdict: a uniform set of bad joints
 * passes it.
 */
const COMPARISON_RATIO = 1.5;

const RULE =
  "More than 50 % above the lowest like joint: investigate (comparison rule of acceptance-testing practice; edition and table " +
  "not verified here, so treat it as common practice). The maker's limit, the local code and a licensed electrician decide.";

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
  const measured = joints.map(({ id, drop, current }) => ({
    id,
    resistance: (drop.value / current.value) as Ohms,
    power: (drop.value * current.value) as Watts,
  }));
  const best = Math.min(...measured.map((joint) => joint.resistance));
  const limit = decimalProduct({ value: Number.isFinite(best) ? best : 0, factor: COMPARISON_RATIO });
  return measured
    .map((joint) => ({
      ...joint,
      ratioToBest: best > 0 ? joint.resistance / best : null,
      investigate: measured.length > 1 && compareQuoted({ left: joint.resistance, right: limit }) > 0,
      rule: RULE,
    }))
    .sort((a, b) => b.resistance - a.resistance || (a.id < b.id ? -1 : 1));
}
