/** Modules of every shape for the drawing tests, and the geometry that a reader's eye checks without knowing it. */
import type { BankPlan, HeatingModule, JointPlan, ModulePlan } from "electroheat/circuit";
import type { Box, DiagramLayout, DiagramState, Point } from "electroheat/drawing";
import { type Ohms, ohms } from "electroheat/quantity";
import * as fc from "fast-check";

const LINES = ["L1", "L2", "L3"] as const;
const bankOf = (id: string) =>
  fc.record({
    id: fc.constant(id),
    connection: fc.constantFrom("star" as const, "delta" as const),
    elementResistance: fc.constantFrom<Ohms>(ohms(7.68), ohms(123.456), ohms(0.51)),
    elementsInParallel: fc.integer({ min: 1, max: 4 }),
    elementsInSeries: fc.integer({ min: 1, max: 3 }),
  });

/** Names of elements as the builder documents them. */
export function elementNames(bank: BankPlan): string[] {
  const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bank;
  return (bank.connection === "star" ? LINES : ["L1L2", "L2L3", "L3L1"]).flatMap((branch) =>
    Array.from({ length: parallel * series }, (_, i) => {
      const p = parallel === 1 ? "" : `-${Math.floor(i / series) + 1}`;
      return `${bank.id}-${branch}${p}${series === 1 ? "" : `.${(i % series) + 1}`}`;
    }),
  );
}

/** Joints anywhere that the builder allows: whole lines, banks, branches, single strings, nested. */
function jointsOf(banks: readonly BankPlan[], neutral: boolean) {
  const one = fc.record({
    at: fc.constantFrom(...LINES, ...(neutral ? ["N"] : [])),
    picks: fc.array(fc.nat({ max: 1000 }), { maxLength: 4 }),
    role: fc.constantFrom("joint" as const, "jumper bar" as const, "conductor" as const),
    resistance: fc.constantFrom<Ohms | "open">(ohms(0.0047), ohms(0), "open"),
  });
  return fc.array(one, { maxLength: 4 }).map((some) =>
    some.map(({ at, picks, role, resistance }, i): JointPlan => {
      const ends = banks.flatMap((bank) => {
        const delta = bank.connection === "delta";
        if (at === "N") return delta ? [] : [bank.id, ...LINES.map((line) => `${bank.id}-${line}`)];
        const branches = delta ? ["L1L2", "L2L3", "L3L1"].filter((b) => b.includes(at)) : [at];
        return [bank.id, ...branches.map((branch) => `${bank.id}-${branch}`)];
      });
      const behind = [...new Set(picks.map((pick) => ends[pick % Math.max(1, ends.length)] as string))];
      const all = behind.length === 0 || ends.length === 0;
      return { id: `J${i}`, at, role, resistance, ...(all ? {} : { behind }) };
    }),
  );
}

const STATES: readonly DiagramState[] = ["within", "outside", "undecided", "open", "shorted"];

export interface Drawn {
  readonly plan: ModulePlan;
  readonly states: Record<string, DiagramState>;
  readonly width: number;
  readonly labels: Record<string, string>;
  readonly protectiveEarth: boolean;
}

/** One to six banks of both connections, with joints and states. Some joints do not fit together: the builder says so. */
export const drawnModule: fc.Arbitrary<Drawn> = fc
  .integer({ min: 1, max: 6 })
  .chain((count) => fc.tuple(...["A", "B", "C", "D", "E", "F"].slice(0, count).map(bankOf)))
  .chain((banks) =>
    fc.record({
      banks: fc.constant(banks),
      neutral: fc.boolean(),
      starPoints: fc.constantFrom("tied" as const, "separate" as const),
      width: fc.constantFrom(320, 390, 700, 960, 1280, 2000),
      labelled: fc.array(fc.nat({ max: 10_000 }), { maxLength: 5 }),
      protectiveEarth: fc.boolean(),
      picks: fc.array(fc.tuple(fc.nat({ max: 10_000 }), fc.constantFrom(...STATES)), { maxLength: 12 }),
    }),
  )
  .chain(({ banks, neutral, starPoints, width, picks, labelled, protectiveEarth }) => {
    const onNeutral = neutral && banks.some(({ connection }) => connection === "star");
    const names = banks.flatMap(elementNames);
    const states = Object.fromEntries(picks.map(([n, state]) => [names[n % names.length] as string, state]));
    const labels = Object.fromEntries(
      labelled.flatMap((n) => [
        [names[n % names.length] as string, "Coil nearest to the door, renewed in spring"],
        ...(n % 3 === 0
          ? [
              ["L2", "Line two (brown)"],
              [banks[0]?.id ?? "A", "Rear bank behind the fan"],
            ]
          : []),
      ]),
    );
    const shape = { banks, starPoints, ...(onNeutral ? { neutral: "connected" as const } : {}) };
    return jointsOf(banks, onNeutral).map(
      (joints): Drawn => ({ plan: { ...shape, joints }, states, width, labels, protectiveEarth }),
    );
  });

const grown = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});
const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export interface Piece {
  readonly net: string;
  readonly from: Point;
  readonly to: Point;
}

/** The straight pieces of all wires. */
export function pieces(layout: DiagramLayout): Piece[] {
  return layout.wires.flatMap(({ net, points }) =>
    points.slice(1).map((to, i) => ({ net, from: points[i] as Point, to })),
  );
}

const boxOf = ({ from, to }: Piece): Box => ({
  x: Math.min(from.x, to.x),
  y: Math.min(from.y, to.y),
  width: Math.abs(to.x - from.x),
  height: Math.abs(to.y - from.y),
});
const show = (box: Box): string => [box.x, box.y, box.width, box.height].map((n) => n.toFixed(1)).join(" ");

/** Everything that lies on something else in a layout, in words; empty when the picture is clean. */
export function collisions(layout: DiagramLayout): string[] {
  const found: string[] = [];
  const { texts, symbols, marks, panels, width, height } = layout;
  const things = [
    ...texts.map(({ text, box }) => ({ what: `text ${text}`, box })),
    ...symbols.map(({ kind, about, box }) => ({ what: `${kind} ${about}`, box })),
    ...marks.map(({ state, box }) => ({ what: `mark ${state}`, box })),
  ];
  const byX = things.sort((a, b) => a.box.x - b.box.x);
  byX.forEach(({ what, box }, i) => {
    for (let j = i + 1; j < byX.length && (byX[j]?.box.x ?? 0) < box.x + box.width; j += 1) {
      const other = byX[j] as (typeof byX)[number];
      if (meet(box, other.box)) found.push(`${what} (${show(box)}) on ${other.what} (${show(other.box)})`);
    }
    const inside = box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
    if (!inside) found.push(`${what} leaves the picture`);
  });
  const wires = pieces(layout);
  // Half a stroke and a hair of air around every wire.
  for (const piece of wires) {
    const line = grown(boxOf(piece), 1);
    for (const { text, box } of texts)
      if (meet(line, box))
        found.push(`wire ${piece.net} (${show(line)}) through text ${text} (${show(box)})`);
    for (const { state, box } of marks)
      if (meet(line, box)) found.push(`wire ${piece.net} through mark ${state}`);
    for (const { kind, about, box } of symbols) {
      if (kind !== "terminal" && meet(boxOf(piece), grown(box, -0.5)))
        found.push(`wire ${piece.net} through ${kind} ${about}`);
    }
  }
  const lines = wires
    .map((piece) => ({ net: piece.net, upright: piece.from.x === piece.to.x, box: grown(boxOf(piece), 1.5) }))
    .sort((a, b) => a.box.x - b.box.x);
  lines.forEach((a, i) => {
    for (let j = i + 1; j < lines.length; j += 1) {
      const b = lines[j] as (typeof lines)[number];
      if (b.box.x >= a.box.x + a.box.width) break;
      if (a.net !== b.net && a.upright === b.upright && meet(a.box, b.box)) {
        found.push(`wires ${a.net} and ${b.net} run on each other at ${show(a.box)}`);
      }
    }
  });
  for (const { box } of panels) {
    for (const other of panels) if (other.box !== box && meet(box, other.box)) found.push("panels overlap");
    for (const { text, box: own } of texts) {
      const within =
        own.x >= box.x &&
        own.y >= box.y &&
        own.x + own.width <= box.x + box.width &&
        own.y + own.height <= box.y + box.height;
      if (meet(own, box) && !within) found.push(`text ${text} lies across the edge of a panel`);
    }
  }
  return found;
}

/** Whether a point lies on a piece. */
export function lies(p: Point, { from, to }: Piece): boolean {
  const hair = 0.01;
  return (
    p.x >= Math.min(from.x, to.x) - hair &&
    p.x <= Math.max(from.x, to.x) + hair &&
    p.y >= Math.min(from.y, to.y) - hair &&
    p.y <= Math.max(from.y, to.y) + hair
  );
}

/** Pins that the wires join, as groups of "node" names; each group must be one node, each node one group. */
export function netProblems(layout: DiagramLayout, module: HeatingModule): string[] {
  const wires = pieces(layout);
  const group = wires.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i] as number));
  for (let i = 0; i < wires.length; i += 1) {
    const a = wires[i] as Piece;
    for (let j = i + 1; j < wires.length; j += 1) {
      const b = wires[j] as Piece;
      // Wires join where an end of one lies on the other; a crossing is no joint.
      if (lies(a.from, b) || lies(a.to, b) || lies(b.from, a) || lies(b.to, a)) group[root(j)] = root(i);
    }
  }
  const problems: string[] = [];
  const nets = new Map<number, Set<string>>();
  wires.forEach(({ net }, i) => {
    const own = nets.get(root(i)) ?? new Set();
    nets.set(root(i), own.add(net));
  });
  for (const set of nets.values()) if (set.size > 1) problems.push(`joined: ${[...set].join(", ")}`);
  const seen = [...nets.values()].flatMap((set) => [...set]);
  for (const net of new Set(seen)) {
    if (seen.filter((one) => one === net).length > 1) problems.push(`${net} is in pieces`);
  }
  const drawn = new Map(
    layout.symbols.filter(({ pins }) => pins.length === 2).map((one) => [one.about, one]),
  );
  for (const { id, from, to } of module.network.branches) {
    const symbol = drawn.get(id);
    if (symbol === undefined) problems.push(`${id} is not drawn`);
    const ends = symbol?.pins.map(({ net }) => net).sort() ?? [];
    if (ends.join() !== [from, to].sort().join()) problems.push(`${id} lies between ${ends.join(" and ")}`);
    for (const pin of symbol?.pins ?? []) {
      const touching = wires.filter((piece) => lies(pin, piece));
      if (!touching.some(({ net }) => net === pin.net))
        problems.push(`${id}: no wire of ${pin.net} at its end`);
      if (touching.some(({ net }) => net !== pin.net)) problems.push(`${id}: a foreign wire at its end`);
    }
  }
  if (drawn.size !== module.network.branches.length) problems.push("more symbols than branches");
  return problems;
}
