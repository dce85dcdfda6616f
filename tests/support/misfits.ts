/** A value held against the type that `npm run facts` writes of it. */
import { resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";

/** What in a value is not as its shape says. */
export function misfits(value: unknown, shape: Shape, path: string): string[] {
  const known = resolved(shape);
  if (known === "opaque") return [];
  if (known === "text")
    return typeof value === "string" && (value.trim() !== "" || path.endsWith("unit"))
      ? []
      : [`${path}: ${JSON.stringify(value)} is no text`];
  if (known === "flag") return typeof value === "boolean" ? [] : [`${path} is no flag`];
  if (known === "null") return value === null ? [] : [`${path} is not null`];
  if ("number" in known) return Number.isFinite(value) ? [] : [`${path}: ${String(value)} is no number`];
  if ("names" in known || "values" in known) {
    const list: readonly unknown[] = "names" in known ? known.names : known.values;
    return list.includes(value) ? [] : [`${path}: ${JSON.stringify(value)} is not one of ${list.join(", ")}`];
  }
  if ("either" in known) {
    const all = known.either.map((one) => misfits(value, one, path));
    return all.find((one) => one.length === 0) ?? all.sort((a, b) => b.length - a.length)[0] ?? [];
  }
  if (value === null || typeof value !== "object") return [`${path}: ${String(value)} has no parts`];
  if ("list" in known)
    return Array.isArray(value)
      ? value.flatMap((one, i) => misfits(one, known.list, `${path}.${i}`))
      : [`${path} is no list`];
  if ("tuple" in known)
    return known.tuple.flatMap((one, i) => misfits((value as unknown[])[i], one, `${path}.${i}`));
  if ("map" in known)
    return Object.entries(value).flatMap(([key, one]) => misfits(one, known.map, `${path}.${key}`));
  const fields = new Map(
    Object.entries(known.record).map(([key, one]) => [
      key.replace("?", ""),
      [one, key.endsWith("?")] as const,
    ]),
  );
  const more = Object.keys(value).filter((key) => !fields.has(key));
  return [
    ...more.map((key) => `${path}.${key} is not in the type`),
    ...[...fields].flatMap(([key, [one, optional]]) =>
      key in value
        ? misfits((value as Record<string, unknown>)[key], one, `${path}.${key}`)
        : optional
          ? []
          : [`${path}.${key} is missing`],
    ),
  ];
}

/** Everything within a value, with its path. */
export function* within(value: unknown, path = ""): Generator<readonly [string, Record<string, unknown>]> {
  if (value === null || typeof value !== "object") return;
  if (!Array.isArray(value)) yield [path, value as Record<string, unknown>];
  for (const [key, part] of Object.entries(value)) yield* within(part, `${path}.${key}`);
}
