/** What the branches of a record are judged against: its nameplate, or, without one, each other. */
import { type ColdOhms, fail, type Ohms, type Watts } from "../../quantity/index.ts";
import type { FittedBranch } from "../fit/types.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { type NameplateTargets, nameplateTargets } from "../targets.ts";
import type { BranchModule } from "./branchModule.ts";

/** Targets of one bank. */
export interface BankTargets {
  readonly bank: string;
  readonly targets: NameplateTargets;
}

/** Powers as stated are rounded figures: so far they may miss the plate's. Common practice. */
const ROUNDED = 0.02;

/** Power of each bank: as stated, else an equal share of what the others leave of the plate's. */
function bankPowers({ banks }: ParsedRecord["wiring"], plate: Watts): readonly Watts[] {
  const stated = banks.flatMap(({ power }) => (power === undefined ? [] : [power.value]));
  const sum = stated.reduce((total, one) => total + one, 0);
  const others = banks.length - stated.length;
  const fits = others > 0 ? sum < plate : Math.abs(sum - plate) <= ROUNDED * plate;
  if (!fits) {
    fail({
      code: "inconsistent",
      path: "wiring.banks",
      expected: `powers of the banks that ${others > 0 ? "leave some of" : "add up to"} the plate's ${plate} W`,
      received: sum,
      unit: "W",
    });
  }
  return banks.map(({ power }) => power?.value ?? (((plate - sum) / others) as Watts));
}

/** Targets of each bank by its part of the plate's power; none without a nameplate. */
export function bankTargets(record: ParsedRecord): readonly BankTargets[] {
  const { nameplate, wiring, temperatureFactor } = record;
  if (nameplate === undefined) return [];
  const powers = bankPowers(wiring, nameplate.power.value);
  return wiring.banks.map(({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }, i) => ({
    bank: id,
    targets: nameplateTargets({
      power: powers[i] as Watts,
      lineVoltage: nameplate.voltage.value,
      connection,
      banks: 1,
      elementsInParallel,
      elementsInSeries,
      ...(temperatureFactor === undefined ? {} : { temperatureFactor }),
    }),
  }));
}

/** Cold target of a branch of each bank, by bank. */
export const coldTargets = (targets: readonly BankTargets[]): ReadonlyMap<string, ColdOhms> =>
  new Map(
    targets.map(({ bank, targets: t }) => [
      bank,
      (t.branchResistanceCold ?? t.branchResistanceHot) as number as ColdOhms,
    ]),
  );

/** What a branch is held against. */
export interface Target {
  readonly resistance: ColdOhms;
  /** Standard uncertainty of it, where it was measured itself, Ω. */
  readonly standardUncertainty: Ohms;
  /** Whether there is enough behind it for a verdict. */
  readonly judges: boolean;
  /** What it is, in words. */
  readonly name: string;
}

/** Two values say how far they differ, not which of them is right. */
const ENOUGH = 3;

function middle<T>(sorted: readonly T[]): readonly [T, T] {
  const half = (sorted.length - 1) / 2;
  return [sorted[Math.floor(half)] as T, sorted[Math.ceil(half)] as T];
}

/**
 * Targets by branch: the plate's, or the median of the branches of one kind, from two values on.
 * @param before - values of an earlier day, for branches that were not read again
 */
export function branchTargets(
  drawn: BranchModule,
  fitted: readonly FittedBranch[],
  before: readonly FittedBranch[] = [],
): ReadonlyMap<string, Target> {
  if (drawn.targets.size > 0) {
    return new Map(
      [...drawn.targets].map(([id, resistance]) => [
        id,
        { resistance, standardUncertainty: 0 as Ohms, judges: true, name: "target" },
      ]),
    );
  }
  const again = new Set(fitted.filter(({ resistance }) => resistance !== null).map(({ id }) => id));
  const known = [...fitted, ...before.filter(({ id }) => !again.has(id))].flatMap(
    ({ id, resistance, standardUncertainty: u }) =>
      typeof resistance === "number" && resistance > 0 && u !== null
        ? [{ kind: drawn.kind.get(id), value: resistance as number, u: u as number }]
        : [],
  );
  const found = new Map<string, Target>();
  for (const [id, kind] of drawn.kind) {
    const like = known.filter((one) => one.kind === kind).sort((a, b) => a.value - b.value);
    if (like.length < 2) continue;
    const [low, high] = middle(like);
    found.set(id, {
      resistance: ((low.value + high.value) / 2) as ColdOhms,
      standardUncertainty: Math.max(low.u, high.u) as Ohms,
      judges: like.length >= ENOUGH,
      name: "median of the branches with as many elements",
    });
  }
  return found;
}
