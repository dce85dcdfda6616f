/** What ideal instruments would show in a world: its network, dead or energised, and the quantities between its nodes. */
import type { BankPlan } from "electroheat/circuit";
import { betweenNodes, type Edge, type Phasor, potentials } from "./nodal.ts";
import { branchName, drawnStarPoint, type ElementSeat, LINES } from "./plan.ts";
import type { World } from "./world.ts";

/** Protective earth: the frame, and under voltage the earthed neutral of the supply. */
const FRAME = "PE";

interface Part extends Edge {
  /** Element whose line-side piece this is; its current is positive away from the line it starts on. */
  readonly element?: string;
  readonly joint?: string;
  /** Terminal whose path to the frame this is. */
  readonly terminal?: string;
}

export interface Inside {
  readonly parts: readonly Part[];
  /** Where each string starts and ends. */
  readonly landing: ReadonlyMap<
    string,
    { readonly start: string; readonly end: string; readonly seats: readonly ElementSeat[] }
  >;
  /** Joint name to its two nodes. */
  readonly joints: ReadonlyMap<string, { readonly outer: string; readonly inner: string }>;
}

const chosen = (seat: ElementSeat, only: readonly string[] | undefined): boolean =>
  only === undefined || only.includes(seat.id) || only.includes(seat.bank) || only.includes(seat.branch);

/** Node of a bank's star point as it really is. A bank in delta keeps its bare stud. */
function starNode(world: World, bank: string): string {
  const { plan } = world.drawn;
  const drawn = plan.banks.find(({ id }) => id === bank) as BankPlan;
  // Delta elements brought to a star have a star point of their own that no drawing names.
  if (drawn.connection === "delta") return `own star of ${bank}`;
  if (plan.neutral === "connected") return "N";
  const alone = plan.banks.filter(({ connection }) => connection === "star").length === 1;
  return alone || world.tied ? "S" : `S-${bank}`;
}

/** The node a probe lands on. With star points apart, "S" is that of the first star bank still connected. */
export function probe(world: World, name: string, only?: readonly string[]): string {
  const { plan } = world.drawn;
  if (name !== "S" && !name.startsWith("S-")) return name;
  const inIt = (bank: BankPlan): boolean =>
    only === undefined || world.drawn.elements.some((seat) => seat.bank === bank.id && chosen(seat, only));
  const meant = plan.banks.find(
    (bank) => bank.connection === "star" && drawnStarPoint(plan, bank.id) === name && inIt(bank),
  );
  return meant === undefined ? name : starNode(world, meant.id);
}

/** The network of a world, of everything or of what is still connected; cold or hot. */
export function insideOf(world: World, only?: readonly string[], hot = false): Inside {
  const { plan, elements, joints: seats } = world.drawn;
  const parts: Part[] = [];
  const joints = new Map<string, { outer: string; inner: string }>();
  const factor = hot ? world.temperatureFactor : 1;
  /** Steps through a joint from the outside; the same place is built once. */
  const through = (position: string, outer: string): string => {
    const ohms = world.joints.get(position);
    if (ohms === undefined) return outer;
    const inner = `inside ${position}`;
    const name = seats.find((seat) => seat.position === position)?.name as string;
    if (!joints.has(name)) {
      joints.set(name, { outer, inner });
      if (ohms !== Number.POSITIVE_INFINITY) parts.push({ from: outer, to: inner, ohms, joint: name });
    }
    return inner;
  };
  const onLine = (side: number, bank: string): string => {
    const line = LINES[side % 3] as string;
    // A stage's contactor lies before the terminals that are read dead.
    if (hot && world.unfed.has(`${line}>${bank}`)) return `unfed ${line}>${bank}`;
    return through(`${line}>${bank}`, through(line, line));
  };
  const landing = new Map<string, { start: string; end: string; seats: ElementSeat[] }>();
  for (const bank of plan.banks) {
    const linked = world.linked.get(bank.id);
    for (let side = 0; side < 3; side += 1) {
      const branch = branchName(bank, side);
      const start = onLine(side, bank.id);
      const far = linked === "delta" ? onLine(side + 1, bank.id) : starNode(world, bank.id);
      const end = bank.connection === "star" ? through(`*<${branch}`, far) : far;
      for (let string = 0; string < (bank.elementsInParallel ?? 1); string += 1) {
        const inString = elements.filter((seat) => seat.branch === branch && seat.string === string);
        if (!inString.some((seat) => chosen(seat, only))) continue;
        const place = bank.elementsInParallel === 1 ? branch : `${branch}-${string + 1}`;
        landing.set(place, { start, end, seats: inString });
        inString.forEach((seat, i) => {
          if (!chosen(seat, only)) return;
          const from = i === 0 ? start : `${place}|${i}`;
          const to = i === inString.length - 1 ? end : `${place}|${i + 1}`;
          const cold = world.cold.get(seat.id) as number | "open";
          if (cold === "open") return;
          const ohms = cold * factor;
          const earth = world.earthed.get(seat.id);
          if (earth === undefined) parts.push({ from, to, ohms, element: seat.id });
          else {
            // A position of exactly 0 or 1 would need an edge of 0 Ω.
            const at = Math.min(1 - 1e-9, Math.max(1e-9, earth.position));
            const spot = `earthed ${seat.id}`;
            parts.push({ from, to: spot, ohms: ohms * at, element: seat.id });
            parts.push({ from: spot, to, ohms: ohms * (1 - at) });
            parts.push({ from: spot, to: FRAME, ohms: earth.ohms });
          }
        });
      }
    }
  }
  for (const [terminal, ohms] of world.earthedTerminals) {
    const line = LINES.some((one) => one === terminal);
    const from = line ? through(terminal, terminal) : probe(world, terminal, only);
    parts.push({ from, to: FRAME, ohms, terminal });
  }
  return { parts, landing, joints };
}

export function trueResistance(
  world: World,
  from: string,
  to: string,
  only?: readonly string[],
): number | "open" {
  const { parts } = insideOf(world, only);
  return betweenNodes(parts, probe(world, from, only), probe(world, to, only));
}

/** Through the fault and the healthy insulation side by side. */
export function trueInsulation(
  world: World,
  from: string,
  healthy: number,
  only?: readonly string[],
): number {
  const { parts } = insideOf(world, only);
  const fault = betweenNodes(parts, probe(world, from, only), FRAME);
  return fault === "open" ? healthy : 1 / (1 / fault + 1 / healthy);
}

export interface Live {
  readonly inside: Inside;
  readonly at: ReadonlyMap<string, Phasor>;
}

/** The energised module; a lost line floats. */
export function energised(world: World): Live {
  const inside = insideOf(world, undefined, true);
  const zero = { re: 0, im: 0 };
  const fixed = new Map<string, Phasor>([
    ["N", zero],
    [FRAME, zero],
  ]);
  for (const line of LINES) if (!world.lost.has(line)) fixed.set(line, world.supply.get(line) as Phasor);
  return { inside, at: potentials(inside.parts, fixed) };
}

const minus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re - b.re, im: a.im - b.im });
export const size = ({ re, im }: Phasor): number => Math.hypot(re, im);

/** A voltmeter's own path to a floating part carries no current, so it shows 0 there. */
export function trueVoltage(world: World, live: Live, from: string, to: string): number {
  const a = live.at.get(probe(world, from));
  const b = live.at.get(probe(world, to));
  return a === undefined || b === undefined ? 0 : size(minus(a, b));
}

export function trueDrop(live: Live, joint: string): number {
  const place = live.inside.joints.get(joint);
  if (place === undefined) return 0;
  const outer = live.at.get(place.outer);
  const inner = live.at.get(place.inner);
  return outer === undefined || inner === undefined ? 0 : size(minus(outer, inner));
}

/** Current from a line into what `into` names (all that the line feeds if left out). */
export function trueCurrent(world: World, live: Live, at: string, into?: string): Phasor {
  const sum = { re: 0, im: 0 };
  const add = (from: string, to: string, ohms: number): void => {
    const a = live.at.get(from);
    const b = live.at.get(to);
    if (a === undefined || b === undefined) return;
    sum.re += (a.re - b.re) / ohms;
    sum.im += (a.im - b.im) / ohms;
  };
  // What leaves at the terminal itself has come through the line's wire, and through no bank's.
  for (const part of live.inside.parts) {
    if (part.terminal === at && into === undefined) add(part.from, part.to, part.ohms);
  }
  for (const bank of world.drawn.plan.banks) {
    // A string lands on the line itself, behind the line's or the bank's joint there, or on what the bank has of a line that is off.
    const node = (joined: string): boolean =>
      [at, `inside ${at}`, `inside ${at}>${bank.id}`, `unfed ${at}>${bank.id}`].includes(joined);
    for (const { start, end, seats } of live.inside.landing.values()) {
      const [first, last] = [seats[0] as ElementSeat, seats[seats.length - 1] as ElementSeat];
      if (first.bank !== bank.id) continue;
      const taken = (seat: ElementSeat): boolean => into === undefined || chosen(seat, [into]);
      const atStart = node(start) && taken(first);
      const atEnd = node(joinOuter(live, end)) && taken(last);
      for (const part of live.inside.parts) {
        if (atStart && part.element === first.id) add(part.from, part.to, part.ohms);
        if (atEnd && endsString(part, last, end)) add(part.to, part.from, part.ohms);
      }
    }
  }
  return sum;
}

/** The last piece of a string, whole or cut by an earth fault. */
function endsString(part: Part, last: ElementSeat, end: string): boolean {
  if (part.to !== end) return false;
  return part.element === last.id || part.from === `earthed ${last.id}`;
}

/** A star bank's end joint stays on the branch end when the branch is brought to a line. */
function joinOuter(live: Live, end: string): string {
  for (const { outer, inner } of live.inside.joints.values())
    if (inner === end && inner.startsWith("inside *<")) return outer;
  return end;
}

/** Power taken from the lines and power turned into heat, for the balance. */
export function powers(world: World, live: Live): { readonly taken: number; readonly heat: number } {
  const heat = live.inside.parts.reduce((sum, { from, to, ohms }) => {
    const a = live.at.get(from);
    const b = live.at.get(to);
    return a && b ? sum + size(minus(a, b)) ** 2 / ohms : sum;
  }, 0);
  const taken = LINES.reduce((sum, line) => {
    const v = live.at.get(line);
    const i = trueCurrent(world, live, line);
    return v && !world.lost.has(line) ? sum + v.re * i.re + v.im * i.im : sum;
  }, 0);
  return { taken, heat };
}
