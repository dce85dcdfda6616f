/** Where some branch was read on its own studs: the links and joints round it drawn one by one, so that its reading can do without them. */
import { buildModule, type JointPlan, type ModulePlan } from "../../circuit/index.ts";
import type { Ohms } from "../../quantity/index.ts";
import type { ParsedRecord } from "../record/parsed.ts";

const LINES = ["L1", "L2", "L3"] as const;

/**
 * The plan with a joint at every place that a diagnosis knows: where a line enters, where a bank hangs on it, where a branch ends on a star
 * point. Places are named as the diagnosis names them. A node at which the record draws joints keeps those.
 */
export function withStudJoints(plan: ModulePlan, resistance: Ohms): ModulePlan {
  const { joints = [], ...bare } = plan;
  const { elements, starPoints } = buildModule(bare);
  const drawn = new Set(joints.map(({ at }) => at));
  const free = LINES.filter((line) => !drawn.has(line));
  const ofBanks = free.flatMap((at) =>
    plan.banks.map(({ id }): JointPlan => ({ id: `${at}>${id}`, at, behind: [id], resistance })),
  );
  const ofBranches = [
    ...new Set(elements.map(({ bank, branch }) => [bank, `${bank}-${branch}`].join("\n"))),
  ].flatMap((pair): JointPlan[] => {
    const [bank, branch] = pair.split("\n") as [string, string];
    const at = starPoints[bank];
    if (at === undefined || drawn.has(at)) return [];
    return [{ id: `${at}<${branch}`, at, behind: [branch], resistance }];
  });
  const ofLines = free.map((at): JointPlan => ({ id: at, at, resistance }));
  return { ...plan, joints: [...ofBanks, ...ofBranches, ...joints, ...ofLines] };
}

/** Nodes of a branch's own studs, by branch: behind every joint of the plan. */
export function studsOf(plan: ModulePlan): ReadonlyMap<string, readonly [from: string, to: string]> {
  const { network, elements } = buildModule(plan);
  const found = new Map<string, readonly [string, string]>();
  elements.forEach(({ bank, branch }, i) => {
    const { from, to } = network.branches[i] as (typeof network.branches)[number];
    const name = `${bank}-${branch}`;
    // Strings side by side share their ends; in a string the first begins and the last ends it.
    found.set(name, [found.get(name)?.[0] ?? from, to]);
  });
  return found;
}

/** Branches whose value stands on their own studs, as last read: no link, bar or joint is in it. What is read again through the links is not among them. */
export function readOnStuds({
  asFound,
  asLeft,
}: Pick<ParsedRecord, "asFound" | "asLeft">): ReadonlySet<string> {
  const ohms = (asLeft?.ohms ?? []).length > 0 ? asLeft?.ohms : asFound?.ohms;
  return new Set(
    (ohms ?? []).flatMap(({ alone, ownStuds }) => (ownStuds === true && alone !== undefined ? [alone] : [])),
  );
}
