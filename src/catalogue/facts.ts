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
import type { RoomFacts, Shape } from "./shape.ts";

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

/** Names of all named shapes. */
export function shapeNames(): readonly string[] {
  return Object.values(FACTS).flatMap((room) => Object.keys(room.shapes));
}
