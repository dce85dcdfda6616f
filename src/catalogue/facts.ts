/** The generated facts of the rooms, by room and by named shape. */
import { fail } from "../quantity/index.ts";
import bench from "./facts/bench.json" with { type: "json" };
import circuit from "./facts/circuit.json" with { type: "json" };
import decision from "./facts/decision.json" with { type: "json" };
import element from "./facts/element.json" with { type: "json" };
import joint from "./facts/joint.json" with { type: "json" };
import material from "./facts/material.json" with { type: "json" };
import numeric from "./facts/numeric.json" with { type: "json" };
import processRoom from "./facts/process.json" with { type: "json" };
import quantity from "./facts/quantity.json" with { type: "json" };
import wiring from "./facts/wiring.json" with { type: "json" };
import type { NumberShape, RoomFacts, Shape } from "./shape.ts";

const FACTS = {
  bench,
  circuit,
  decision,
  element,
  joint,
  material,
  numeric,
  process: processRoom,
  quantity,
  wiring,
} as unknown as Readonly<Record<string, RoomFacts>>;

/** Facts of a room. */
export function factsOf(room: string): RoomFacts {
  return (
    FACTS[room] ?? fail({ code: "unknown-name", path: "room", expected: "a described room", received: room })
  );
}

/** A shape that is not a name for another. */
export type NamelessShape = Exclude<Shape, { readonly ref: string }>;

/** The shape that a name stands for; a shape without a name is itself. */
export function resolved(shape: Shape): NamelessShape {
  if (typeof shape === "string" || !("ref" in shape)) return shape;
  const room = shape.ref.slice(0, shape.ref.indexOf("."));
  const found = FACTS[room]?.shapes[shape.ref];
  if (found === undefined) throw new Error(`no shape ${shape.ref}`);
  return resolved(found);
}

/** Kinds of shapes that have something inside. */
type Kind = NamelessShape extends infer S ? (S extends object ? Exclude<keyof S, "kind"> : never) : never;
type Inside<K extends Kind> = NamelessShape extends infer S
  ? S extends Readonly<Record<K, infer I>>
    ? I
    : never
  : never;

/** What is inside a shape of a kind: the names, the items of a list, the fields of a record; undefined for another kind of shape. */
export function inside<K extends Kind>(shape: Shape, kind: K): Inside<K> | undefined {
  const at = resolved(shape);
  return typeof at === "object" && kind in at ? (at as Readonly<Record<K, Inside<K>>>)[kind] : undefined;
}

/** The number that a shape takes, also one that a name or null may stand in for. */
export function numberIn(shape: Shape): NumberShape | undefined {
  const at = resolved(shape);
  if (typeof at === "object" && "number" in at) return at;
  return inside(at, "either")
    ?.map(numberIn)
    .find((one) => one !== undefined);
}

/** Names of all named shapes. */
export function shapeNames(): readonly string[] {
  return Object.values(FACTS).flatMap((room) => Object.keys(room.shapes));
}
