/** Alternatives that a field tells apart: `basis` of an air flow. An error is then about the alternative that was meant. */
import { inside } from "./facts.ts";
import type { Shape } from "./shape.ts";

/** A field that each alternative has, with names of its own. */
interface Choice {
  readonly field: string;
  /** Name → the alternative it stands for. */
  readonly by: ReadonlyMap<string, Shape>;
}

const CHOICES = new WeakMap<readonly Shape[], Choice | null>();

function chosenBy(field: string, shapes: readonly Shape[]): Choice | undefined {
  const by = new Map<string, Shape>();
  for (const shape of shapes) {
    const tag = inside(shape, "record")?.[field];
    const names = tag && inside(tag, "names");
    if (names === undefined || names.some((name) => by.has(name))) return undefined;
    for (const name of names) by.set(name, shape);
  }
  return { field, by };
}

/** The field that tells these alternatives apart; undefined where there is none. */
export function choiceAmong(shapes: readonly Shape[]): Choice | undefined {
  const known = CHOICES.get(shapes);
  if (known !== undefined) return known ?? undefined;
  const found = Object.keys(inside(shapes[0] as Shape, "record") ?? {})
    .map((field) => chosenBy(field, shapes))
    .find((one) => one !== undefined);
  CHOICES.set(shapes, found ?? null);
  return found;
}
