/** Alternatives that a field tells apart: `basis` of an air flow. An error is then about the alternative that was meant. */
import { resolved } from "./facts.ts";
import type { Shape } from "./shape.ts";

/** A field that each alternative has, with names of its own. */
interface Choice {
  readonly field: string;
  /** Name → the alternative it stands for. */
  readonly by: ReadonlyMap<string, Shape>;
}

const CHOICES = new WeakMap<readonly Shape[], Choice | null>();

function fieldsOfRecord(shape: Shape): Readonly<Record<string, Shape>> | undefined {
  const at = resolved(shape);
  return typeof at === "object" && "record" in at ? at.record : undefined;
}

function chosenBy(field: string, shapes: readonly Shape[]): Choice | undefined {
  const by = new Map<string, Shape>();
  for (const shape of shapes) {
    const tag = fieldsOfRecord(shape)?.[field];
    const at = tag === undefined ? undefined : resolved(tag);
    if (typeof at !== "object" || !("names" in at) || at.names.some((name) => by.has(name))) return undefined;
    for (const name of at.names) by.set(name, shape);
  }
  return { field, by };
}

/** The field that tells these alternatives apart; undefined where there is none. */
export function choiceAmong(shapes: readonly Shape[]): Choice | undefined {
  const known = CHOICES.get(shapes);
  if (known !== undefined) return known ?? undefined;
  const fields = fieldsOfRecord(shapes[0] as Shape);
  const found = Object.keys(fields ?? {})
    .map((field) => chosenBy(field, shapes))
    .find((one) => one !== undefined);
  CHOICES.set(shapes, found ?? null);
  return found;
}
