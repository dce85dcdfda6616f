/** The ways of running on that a module allows, as networks. */
import {
  buildModule,
  type EnergisedNetwork,
  energise,
  type Fault,
  type HeatingModule,
  type ModulePlan,
  type Network,
  type Supply,
  withoutLines,
  withResistance,
} from "../../circuit/index.ts";
import { isElectroheatError, type Ohms, type Open, type Warning } from "../../quantity/index.ts";
import { ISOLATED, ISOLATED_TIED, UNTIED } from "./cautions.ts";
import type { DegradedOption } from "./types.ts";

/** One way before it is worked out. */
export interface Way {
  readonly name: string;
  readonly action: DegradedOption["action"];
  readonly bank: string | null;
  readonly network: Network;
  readonly faults: readonly Fault[];
  readonly cautions: readonly Warning[];
}

/** The elements of one bank all open: the same, to the rest of the module, as its lines and its star tie taken off. */
function withoutBank(module: HeatingModule, bank: string): Network {
  return module.elements
    .filter((element) => element.bank === bank)
    .reduce((network, { id }) => withResistance({ network, id, resistance: "open" as Open }), module.network);
}

function untied(plan: ModulePlan): { readonly network: Network; readonly cautions: readonly Warning[] } {
  // A joint on the tied star point has no place once the tie is gone.
  const joints = (plan.joints ?? []).filter(({ at }) => at !== "S");
  const dropped = (plan.joints ?? []).length - joints.length;
  const { network } = buildModule({ ...plan, starPoints: "separate", joints });
  const message = `${dropped} joint(s) on the tied star point are left out: they go with the tie.`;
  return {
    network,
    cautions: dropped === 0 ? [UNTIED] : [UNTIED, { code: "assumed", path: "module.joints", message }],
  };
}

/** The ways that this module allows with these faults: healthy, left as it is, and what can be done to it. */
export function waysOf(plan: ModulePlan, module: HeatingModule, faults: readonly Fault[]): readonly Way[] {
  const { network, elements } = module;
  const bankOf = new Map(elements.map(({ id, bank }) => [id, bank]));
  const hit = new Set(faults.flatMap((fault) => (fault.kind === "lost line" ? [] : [bankOf.get(fault.id)])));
  const damaged = plan.banks.filter(({ id }) => hit.has(id));
  const stars = plan.banks.filter(({ connection }) => connection === "star");
  const tied = stars.length > 1 && plan.starPoints === "tied" && plan.neutral !== "connected";
  const ways: Way[] = [
    { name: "healthy", action: "healthy", bank: null, network, faults: [], cautions: [] },
    { name: "leave as is", action: "leave as is", bank: null, network, faults, cautions: [] },
  ];
  if (tied && damaged.some(({ connection }) => connection === "star")) {
    ways.push({
      name: "untie star points",
      action: "untie star points",
      bank: null,
      faults,
      ...untied(plan),
    });
  }
  if (plan.banks.length < 2) return ways;
  for (const { id, connection } of damaged) {
    ways.push({
      name: `isolate bank ${id}`,
      action: "isolate bank",
      bank: id,
      network: withoutBank(module, id),
      faults: faults.filter((fault) => fault.kind === "lost line" || bankOf.get(fault.id) !== id),
      cautions: tied && connection === "star" ? [ISOLATED, ISOLATED_TIED] : [ISOLATED],
    });
  }
  return ways;
}

/** The way energised; `null` when its faults bolt supply lines together. */
export function energised({ network, faults }: Way, supply: Supply): EnergisedNetwork | null {
  let [faulted, fed] = [network, supply];
  for (const fault of faults) {
    if (fault.kind === "lost line") fed = withoutLines({ supply: fed, lines: [fault.line] });
    else {
      const resistance = fault.kind === "open" ? ("open" as Open) : (0 as Ohms);
      faulted = withResistance({ network: faulted, id: fault.id, resistance });
    }
  }
  try {
    return energise({ network: faulted, supply: fed });
  } catch (error) {
    if (isElectroheatError(error) && error.code === "short-circuit") return null;
    throw error;
  }
}
