/** The same parts linked otherwise than drawn: a bank in the other connection, star points tied for separate. */
import { buildModule, type JointPlan, type ModulePlan, reconnected } from "../../circuit/index.ts";
import { isElectroheatError } from "../../quantity/index.ts";
import type { DiagnosedFault } from "./types.ts";

/** A plan that differs from the drawn one by one slip in the links. */
export interface Variant {
  readonly plan: ModulePlan;
  readonly fault: DiagnosedFault;
}

const STAR = ["L1", "L2", "L3"] as const;
const DELTA = ["L1L2", "L2L3", "L3L1"] as const;

const starsOf = (plan: ModulePlan): number =>
  plan.banks.filter(({ connection }) => connection === "star").length;

/** Elements that differ, under their names in the other connection. */
function renamed(plan: ModulePlan, bank: string, from: readonly string[], to: readonly string[]): ModulePlan {
  const { elements } = plan;
  if (elements === undefined) return plan;
  const rename = (name: string): string => {
    const k = from.findIndex((branch) => {
      const rest = name.slice(`${bank}-${branch}`.length);
      return name.startsWith(`${bank}-${branch}`) && (rest === "" || rest[0] === "-" || rest[0] === ".");
    });
    return k < 0 ? name : `${bank}-${to[k]}${name.slice(`${bank}-${from[k]}`.length)}`;
  };
  return {
    ...plan,
    elements: Object.fromEntries(Object.entries(elements).map(([name, r]) => [rename(name), r])),
  };
}

/** Joints that still have a place: at a line, behind the whole bank where they were behind one of its branches. */
function withJoints(plan: ModulePlan, joints: readonly JointPlan[], bank: string): ModulePlan {
  const kept: JointPlan[] = [];
  for (const joint of joints) {
    const behind = joint.behind?.map((name) => (name.startsWith(`${bank}-`) ? bank : name));
    const moved = behind === undefined ? joint : { ...joint, behind: [...new Set(behind)] };
    try {
      buildModule({ ...plan, joints: [...kept, moved] });
      kept.push(moved);
    } catch (error) {
      // A joint on a star point that is no longer there.
      if (!isElectroheatError(error)) throw error;
    }
  }
  return kept.length === 0 ? plan : { ...plan, joints: kept };
}

function relinked(plan: ModulePlan, bank: string, as: "star" | "delta"): ModulePlan {
  const { joints = [], ...bare } = plan;
  const named = as === "delta" ? renamed(bare, bank, STAR, DELTA) : renamed(bare, bank, DELTA, STAR);
  const { neutral, starPoints, ...rest } = reconnected({ plan: named, connection: as, bank });
  const stars = starsOf(rest);
  const next: ModulePlan = {
    ...rest,
    ...(stars > 0 && neutral !== undefined ? { neutral } : {}),
    // A bank left in star beside others was never meant to share their star point.
    ...(stars > 1 ? { starPoints: starPoints ?? "separate" } : {}),
  };
  return joints.length === 0 ? next : withJoints(next, joints, bank);
}

/** Every single slip in the links of a plan. */
export function variantsOf(plan: ModulePlan): readonly Variant[] {
  const variants: Variant[] = plan.banks.map(({ id, connection }) => {
    const as = connection === "star" ? "delta" : "star";
    return { plan: relinked(plan, id, as), fault: { kind: "mis-linked", bank: id, as } };
  });
  if (starsOf(plan) > 1 && plan.neutral !== "connected") {
    const as = plan.starPoints === "tied" ? "separate" : "tied";
    const { joints = [], ...bare } = plan;
    const other: ModulePlan = { ...bare, starPoints: as };
    const first = plan.banks.find(({ connection }) => connection === "star")?.id as string;
    const next =
      joints.length === 0
        ? other
        : withJoints(
            other,
            joints.filter(({ at }) => at.startsWith("L")),
            first,
          );
    variants.push({ plan: next, fault: { kind: "mis-linked", bank: null, as } });
  }
  return variants;
}
