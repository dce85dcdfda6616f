/** Sets of banks that may be without supply together; sets that no reading tells apart by symmetry are one. */

import type { Model } from "../likelihood/model.ts";
import { lineNumber } from "../question/lines.ts";

/** Some banks, and how many sets are like it. */
export interface BankSet {
  readonly banks: readonly string[];
  readonly ways: number;
  /** Those sets, itself among them. */
  readonly list: () => readonly (readonly string[])[];
}

/** Sets up to which all sizes are looked at; beyond, one or two banks, all but one, and all; of still more banks than this not two. */
const MOST_SETS = 128;
const MOST_FOR_TWO = 12;
/** Sets alike up to which one of another size is listed: a stage out of hundreds is not found by amps at the lines. */
const MOST_WAYS = 100;

/** Banks that some energised reading, taken or planned, is taken at. */
function banksReadAt({ frame, wiring }: Model): ReadonlySet<string> {
  const found = new Set<string>();
  for (const row of frame.rows) {
    if (row?.kind === "current" && row.whole === null) {
      for (const edge of row.cut.index) found.add(wiring.edges[edge]?.bank as string);
    } else if (row?.kind === "voltage" || row?.kind === "drop") {
      const nodes = row.kind === "drop" ? null : [row.a, row.b].filter((node) => lineNumber(node) < 0);
      for (const { bank, from, to, ends } of wiring.edges) {
        if (nodes === null || [from, to, ...ends].some((node) => nodes.includes(node))) found.add(bank);
      }
    }
  }
  return found;
}

/** Banks in classes of those that every energised reading sees alike. */
function classesOf(model: Model): readonly (readonly string[])[] {
  const { edges, module } = model.wiring;
  const { banks, joints = [] } = module.plan;
  const apart = banksReadAt(model);
  const classes = new Map<string, string[]>();
  for (const { id, connection } of banks) {
    const own = edges.filter(({ bank }) => bank === id);
    const drawn = joints.some(({ behind }) => behind !== undefined);
    const made = own.map(({ resistance, variance }) => [resistance, variance]);
    const key = apart.has(id) || drawn ? id : JSON.stringify([connection, made]);
    classes.set(key, [...(classes.get(key) ?? []), id]);
  }
  return [...classes.values()];
}

/** All choices of so many of a list. */
function choices(list: readonly string[], count: number): readonly (readonly string[])[] {
  if (count === 0) return [[]];
  if (list.length < count) return [];
  return list.flatMap((first, i) => choices(list.slice(i + 1), count - 1).map((rest) => [first, ...rest]));
}

/** How many choices there are. */
function waysOf(all: number, count: number): number {
  let ways = 1;
  for (let k = 0; k < count; k += 1) ways = (ways * (all - k)) / (k + 1);
  return Math.round(ways);
}

/** How many banks of each class, in every way that `taken` lets pass. */
function counts(
  classes: readonly (readonly string[])[],
  taken: (size: number) => boolean,
): readonly (readonly number[])[] {
  const all = classes.reduce((sum, { length }) => sum + length, 0);
  const found: number[][] = [];
  const go = (before: readonly number[], size: number, left: number): void => {
    const own = classes[before.length];
    if (own === undefined) {
      if (taken(size)) found.push([...before]);
      return;
    }
    const rest = left - own.length;
    for (let k = 0; k <= own.length; k += 1) {
      // Whether some size from here to with all that is left can still be taken.
      let some = false;
      for (let more = 0; more <= rest && !some; more += 1) some = taken(size + k + more);
      if (some) go([...before, k], size + k, rest);
    }
  };
  go([], 0, all);
  return found;
}

/** Every set of banks of a module worth looking at. */
export function bankSets(model: Model): readonly BankSet[] {
  const order = model.wiring.module.plan.banks.map(({ id }) => id);
  const all = order.length;
  const classes = classesOf(model);
  const few = classes.reduce((product, { length }) => product * (length + 1), 1) <= MOST_SETS;
  const usual = (size: number): boolean => size <= (all > MOST_FOR_TWO ? 1 : 2) || size >= all - 1;
  return counts(classes, (size) => size > 0 && (few || usual(size))).flatMap((each) => {
    const size = each.reduce((sum, k) => sum + k, 0);
    const ways = each.reduce((product, k, c) => product * waysOf(classes[c]?.length as number, k), 1);
    if (ways > MOST_WAYS && !usual(size)) return [];
    const inOrder = (set: readonly string[]): readonly string[] => order.filter((id) => set.includes(id));
    const list = (): readonly (readonly string[])[] =>
      each
        .reduce<readonly (readonly string[])[]>(
          (sets, k, c) =>
            sets.flatMap((set) =>
              choices(classes[c] as readonly string[], k).map((more) => [...set, ...more]),
            ),
          [[]],
        )
        .map(inOrder);
    return [{ banks: inOrder(classes.flatMap((own, c) => own.slice(0, each[c] as number))), ways, list }];
  });
}
