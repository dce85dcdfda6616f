/**
 * Random modules, by seed: stars, deltas, strings, star points tied, separate or on the neutral, joints from 1 µΩ to
 * 1 Ω, cross links, opens, unbalanced supplies with source resistances and lost lines. Plain data, no code of ours.
 */
import type { Branch, Network, Supply, SupplyLine } from "electroheat/circuit";
import type { Ohms } from "electroheat/quantity";
import fc from "fast-check";

/** Small seeded generator (mulberry32): the same networks on every machine. */
export class Chance {
  private state: number;
  constructor(seed: number) {
    this.state = seed | 0;
  }
  /** 0 up to but not including 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }
  /** Even on a logarithmic scale. */
  spread(low: number, high: number): number {
    return Math.exp(this.between(Math.log(low), Math.log(high)));
  }
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }
  happens(probability: number): boolean {
    return this.next() < probability;
  }
  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.next() * items.length)] as T;
  }
}

export interface RandomCase {
  readonly network: Network;
  readonly supply: Supply;
}

export interface RandomOptions {
  /** Probability that an element is open. */
  readonly opens?: number;
  /** Smallest joint, Ω. */
  readonly smallestJoint?: number;
  /** Whether lines may be lost. */
  readonly lostLines?: boolean;
  /** Whether some joints may be ideal links (0 Ω). */
  readonly links?: boolean;
  /** Most banks. */
  readonly banks?: number;
}

const LINES = ["L1", "L2", "L3"] as const;

function bank(chance: Chance, id: string, starPoint: string, opens: number): Branch[] {
  const star = chance.happens(0.6);
  const nominal = chance.spread(0.5, 500);
  const parallel = chance.whole(1, 3);
  const series = chance.happens(0.2) ? 2 : 1;
  const branches: Branch[] = [];
  LINES.forEach((line, i) => {
    const [from, to] = [line, star ? starPoint : (LINES[(i + 1) % 3] as string)];
    for (let p = 0; p < parallel; p += 1) {
      for (let s = 0; s < series; s += 1) {
        const name = `${id}-${i + 1}-${p}`;
        const resistance = chance.happens(opens) ? "open" : (chance.spread(nominal / 2, nominal * 2) as Ohms);
        branches.push({
          id: `${name}.${s}`,
          from: s === 0 ? from : `${name}|m`,
          to: s === series - 1 ? to : `${name}|m`,
          resistance: resistance === "open" ? resistance : (Math.min(500, Math.max(0.5, resistance)) as Ohms),
        });
      }
    }
  });
  return branches;
}

/** Puts a joint in series with one end of a branch. */
function withRandomJoint(
  chance: Chance,
  branches: readonly Branch[],
  id: string,
  resistance: number,
): Branch[] {
  const at = chance.whole(0, branches.length - 1);
  const inner = `${id}|inner`;
  const end = chance.happens(0.5) ? "from" : "to";
  const node = (branches[at] as Branch)[end];
  // Sometimes the joint carries every branch on that node (a lug), sometimes just the one.
  const lug = chance.happens(0.3) && !node.includes("|");
  const moved = branches.map((branch, i) => {
    if (i !== at && !(lug && (branch.from === node || branch.to === node))) return branch;
    if (lug)
      return {
        ...branch,
        from: branch.from === node ? inner : branch.from,
        to: branch.to === node ? inner : branch.to,
      };
    return { ...branch, [end]: inner };
  });
  return [...moved, { id, from: node, to: inner, resistance: resistance as Ohms, role: "joint" }];
}

function randomSupply(chance: Chance, neutral: boolean, lostLines: boolean): Supply {
  const lineVoltage = chance.pick([208, 230, 400, 415, 480, 600]);
  const unbalanced = chance.happens(0.7);
  const sourced = chance.happens(0.4);
  const lines: SupplyLine[] = LINES.map((node, i) => {
    const magnitude = (lineVoltage / Math.sqrt(3)) * (unbalanced ? chance.between(0.85, 1.15) : 1);
    const degrees = -120 * i + (unbalanced ? chance.between(-8, 8) : 0);
    const angle = (degrees * Math.PI) / 180;
    return {
      node,
      voltage: { re: magnitude * Math.cos(angle), im: magnitude * Math.sin(angle) },
      ...(sourced ? { sourceResistance: chance.spread(1e-4, 1) as Ohms } : {}),
    };
  });
  if (neutral) {
    lines.push({
      node: "N",
      voltage: { re: 0, im: 0 },
      ...(sourced && chance.happens(0.5) ? { sourceResistance: chance.spread(1e-4, 1) as Ohms } : {}),
    });
  }
  return { lines, ...(lostLines && chance.happens(0.12) ? { lost: [chance.pick(LINES)] } : {}) };
}

export function randomCase(seed: number, options: RandomOptions = {}): RandomCase {
  const { opens = 0.08, smallestJoint = 1e-6, lostLines = true, links = false, banks = 4 } = options;
  const chance = new Chance(seed);
  const neutral = chance.happens(0.4);
  const tied = chance.happens(0.5);
  const onNeutral = neutral && chance.happens(0.7);
  let branches: Branch[] = [];
  const count = chance.whole(1, banks);
  for (let b = 0; b < count; b += 1) {
    const id = "ABCDEFGH".charAt(b);
    branches.push(...bank(chance, id, onNeutral ? "N" : tied ? "S" : `S-${id}`, opens));
  }
  const joints = chance.whole(0, 4);
  for (let j = 0; j < joints; j += 1) {
    const ideal = links && chance.happens(0.4);
    branches = withRandomJoint(chance, branches, `J${j}`, ideal ? 0 : chance.spread(smallestJoint, 1));
  }
  // Cross links make meshes that no series and parallel reduction can undo.
  const nodes = [...new Set(branches.flatMap(({ from, to }) => [from, to]))];
  const crosses = chance.whole(0, 5);
  for (let x = 0; x < crosses; x += 1) {
    const [from, to] = [chance.pick(nodes), chance.pick(nodes)];
    if (from !== to) branches.push({ id: `X${x}`, from, to, resistance: chance.spread(0.5, 500) as Ohms });
  }
  return { network: { branches }, supply: randomSupply(chance, neutral, lostLines) };
}

/** A random case for a property; a failure prints the seed, from which `randomCase` makes it again. */
export function anySeed(): fc.Arbitrary<number> {
  return fc.integer({ min: 1, max: 2 ** 31 - 1 });
}
