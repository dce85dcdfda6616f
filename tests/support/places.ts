/** The numbers and names within the argument of a public function, with the units of its types (written by `npm run facts`). */
import { factsOf, resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";

/** A number, or a name of a closed list, within an argument: its path, and the unit of its type; undefined where its type has none. */
export interface Place {
  readonly path: string;
  readonly unit: string | undefined;
  /** What no field of the type takes; NaN where nothing else is said. */
  readonly wrong?: string;
}

export function placesIn(value: unknown, shape: Shape | undefined, path: string): Place[] {
  const inner = (key: string) => (path === "" ? key : `${path}.${key}`);
  const kinds = alternatives(shape);
  if (typeof value === "number") {
    // One of a few numbers is a name, and refused as one.
    if (kinds.some((kind) => typeof kind === "object" && "values" in kind)) return [];
    const units = kinds.flatMap((kind) =>
      typeof kind === "object" && "number" in kind ? [kind.number] : [],
    );
    return [{ path, unit: units.length === 1 ? units[0] || undefined : undefined }];
  }
  if (typeof value === "string") {
    const named = kinds.some((kind) => typeof kind === "object" && "names" in kind);
    const number = kinds.some((kind) => typeof kind === "object" && "number" in kind);
    // What a dataset is of is a word of its owner; nothing is looked up by it.
    return named && !number && !/^(?:datasets?|conductor)\./.test(path)
      ? [{ path, unit: undefined, wrong: "no such name" }]
      : [];
  }
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, part]) =>
    placesIn(
      part,
      kinds
        .filter((kind) => isMeant(kind, value))
        .map((kind) => partOf(kind, key))
        .find((kind) => kind !== undefined),
      inner(key),
    ),
  );
}

/** What a shape may be, names replaced by what they stand for. */
export function alternatives(shape: Shape | undefined): Shape[] {
  if (shape === undefined) return [];
  const known = resolved(shape);
  return typeof known === "object" && "either" in known ? known.either.flatMap(alternatives) : [known];
}

/** Whether a record may be this alternative: the names in it are among those that the alternative has. */
function isMeant(shape: Shape, value: object): boolean {
  if (typeof shape !== "object" || !("record" in shape)) return true;
  return Object.entries(shape.record).every(([key, field]) => {
    const name: unknown = (value as Record<string, unknown>)[key.replace("?", "")];
    const kinds = alternatives(field);
    const named = kinds.every((kind) => typeof kind === "object" && "names" in kind);
    return (
      name === undefined ||
      !named ||
      kinds.some((kind) => typeof kind === "object" && "names" in kind && kind.names.includes(name as string))
    );
  });
}

function partOf(shape: Shape, key: string): Shape | undefined {
  if (typeof shape !== "object") return undefined;
  if ("record" in shape) return shape.record[key] ?? shape.record[`${key}?`];
  if ("list" in shape) return shape.list;
  if ("tuple" in shape) return shape.tuple[Number(key)];
  return "map" in shape ? shape.map : undefined;
}

/** A part of an argument, or one that its type lets it have. */
export interface Part {
  readonly path: string;
  readonly kinds: readonly Shape[];
  /** Whether the argument has it. */
  readonly there: boolean;
}

/** Every part of an argument, and what it leaves out. */
export function partsIn(value: unknown, shape: Shape | undefined, path: string): Part[] {
  if (value === null || typeof value !== "object") return [];
  const kinds = alternatives(shape);
  const inner = (key: string) => (path === "" ? key : `${path}.${key}`);
  const left = kinds
    .flatMap((kind) => (typeof kind === "object" && "record" in kind ? Object.entries(kind.record) : []))
    .filter(([key]) => !(key.replace("?", "") in value));
  return [
    ...Object.entries(value).flatMap(([key, part]) => {
      const own = kinds.map((kind) => partOf(kind, key)).find((kind) => kind !== undefined);
      return [{ path: inner(key), kinds: alternatives(own), there: true }, ...partsIn(part, own, inner(key))];
    }),
    ...left.map(([key, own]) => ({
      path: inner(key.replace("?", "")),
      kinds: alternatives(own),
      there: false,
    })),
  ];
}

/** The field of a place, whatever the number in its list. */
export const fieldOf = (path: string): string => path.replace(/\.\d+(?=\.|$)/g, ".#");

/** Every path within an argument. */
export function pathsIn(value: unknown, path = ""): string[] {
  const own = path === "" ? [] : [path];
  if (value === null || typeof value !== "object") return own;
  return [
    ...own,
    ...Object.entries(value).flatMap(([key, part]) => pathsIn(part, path === "" ? key : `${path}.${key}`)),
  ];
}

/** Every unit that a type of these rooms has. */
export function unitsOfTypes(): ReadonlySet<string> {
  const facts = JSON.stringify(["joint", "material", "process", "wiring"].map(factsOf));
  return new Set([...facts.matchAll(/"number":"([^"]+)"/g)].map((found) => found[1] as string));
}
