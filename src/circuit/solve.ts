/** The energised network in numbers: potentials, refined branch voltages, currents through ideal links. */
import { type ConductanceFactor, factorConductances, solveConductances } from "../numeric/index.ts";
import { checkMeasurableOrZero, checkOneOf, fail, type Ohms } from "../quantity/index.ts";
import {
  factorNetwork,
  type IndexedNetwork,
  indexNetwork,
  type MergedEnds,
  refuseUnattached,
} from "./indexed.ts";
import { zeros } from "./lists.ts";
import type { Branch, Network } from "./network.ts";
import { refinedPotentials } from "./refined.ts";
import { isBounded } from "./scale.ts";
import type { Supply, SupplyLine } from "./supply.ts";

/** Real and imaginary parts of one quantity over all nodes or branches. */
export interface Parts {
  readonly re: number[];
  readonly im: number[];
}

/** A network set up under a supply and factored: what all solves and fault studies start from. */
export interface Energisable {
  /** The network as solved: the given one, with the source resistances as further branches at its end. */
  readonly indexed: IndexedNetwork;
  /** Branch ends after merging ideal links. */
  readonly ends: MergedEnds;
  readonly supply: Supply;
  readonly factor: ConductanceFactor;
  /** Node held at each supply line's voltage, before merging: the line, or its source behind a resistance. */
  readonly source: readonly number[];
  /** The same after merging; −1 for a lost line. */
  readonly held: readonly number[];
}

/** Solved state: node potentials and branch voltages. */
export interface Solution {
  readonly potential: Parts;
  /** Voltage across each branch, from → to. */
  readonly across: Parts;
}

function checkLine(lines: readonly SupplyLine[], i: number): void {
  const line = lines[i] as SupplyLine;
  if (typeof line?.node !== "string" || line.node === "") {
    const received = line?.node;
    fail({ code: "missing", path: `supply.lines.${i}.node`, expected: "a node's name", received });
  }
  const { node, voltage, sourceResistance } = line;
  // A supply has a handful of lines: looking through them is quicker than keeping a set.
  for (let before = 0; before < i; before += 1) {
    if (lines[before]?.node === node) {
      fail({
        code: "duplicate",
        path: `supply.lines.${i}.node`,
        expected: "a node used once",
        received: node,
      });
    }
  }
  if (!isBounded(voltage)) {
    const { re, im } = voltage ?? {};
    fail({
      code: re === undefined || im === undefined ? "missing" : "not-a-number",
      path: `supply.lines.${i}.voltage`,
      expected: "a finite phasor, each part at most 1e30",
      received: Number.isFinite(re) ? im : re,
      unit: "V",
    });
  }
  if (sourceResistance !== undefined)
    checkMeasurableOrZero(`supply.lines.${i}.sourceResistance`, sourceResistance, "Ω");
}

function checkSupply(supply: Supply): void {
  if (!Array.isArray(supply?.lines) || supply.lines.length === 0) {
    fail({ code: "missing", path: "supply.lines", expected: "at least one line", received: supply?.lines });
  }
  for (let i = 0; i < supply.lines.length; i += 1) checkLine(supply.lines, i);
  if (supply.lost === undefined) return;
  const nodes = supply.lines.map((line) => line.node);
  for (const node of supply.lost) checkOneOf("supply.lost", node, nodes);
}

/** Source resistances become branches like any other; the voltage is then held behind them. */
function withSources(
  network: Network,
  supply: Supply,
): { readonly network: Network; readonly nodes: readonly string[] } {
  const extra: Branch[] = [];
  const nodes: string[] = [];
  for (const { node, sourceResistance = 0 as Ohms } of supply.lines) {
    const behind = sourceResistance === 0 ? node : `${node}|source`;
    nodes.push(behind);
    if (behind !== node)
      extra.push({ id: behind, from: behind, to: node, resistance: sourceResistance, role: "conductor" });
  }
  // A network without a list of branches goes on as it is, to be refused by name.
  if (extra.length === 0 || !Array.isArray(network?.branches)) return { network, nodes };
  return { network: { branches: [...network.branches, ...extra] }, nodes };
}

/** Sets a network up under a supply: numbers it, finds shorted supplies and loose parts, factors it. */
export function setUp(network: Network, supply: Supply): Energisable {
  checkSupply(supply);
  const sourced = withSources(network, supply);
  const indexed = indexNetwork(sourced.network, sourced.nodes);
  const source: number[] = [];
  const held: number[] = [];
  for (let i = 0; i < sourced.nodes.length; i += 1) {
    const node = indexed.nodeNumber.get(sourced.nodes[i] as string) as number;
    const lost = supply.lost?.includes((supply.lines[i] as SupplyLine).node) === true;
    source.push(node);
    held.push(lost ? -1 : (indexed.merged[node] as number));
  }
  refuseShortedSupply(indexed, supply, held);
  const { ends, factor } = factorNetwork(indexed, held);
  // What a current can reach is attached; a closer look only where it cannot reach everything.
  if (indexed.merged.some((node) => factor.floating[node] === 1)) refuseUnattached(indexed, source);
  return { indexed, ends, supply, factor, source, held };
}

function refuseShortedSupply(indexed: IndexedNetwork, supply: Supply, held: readonly number[]): void {
  for (let i = 0; i < held.length; i += 1) {
    for (let j = i + 1; j < held.length; j += 1) {
      if (held[i] !== held[j] || held[i] === -1) continue;
      const [a, b] = [supply.lines[i] as SupplyLine, supply.lines[j] as SupplyLine];
      if (a.voltage.re === b.voltage.re && a.voltage.im === b.voltage.im) continue;
      const through = indexed.links
        .filter((link) => indexed.merged[indexed.from[link] as number] === held[i])
        .map((link) => indexed.network.branches[link]?.id);
      fail({
        code: "short-circuit",
        path: "network",
        expected: "some resistance between supply lines of different voltage",
        received: `${a.node} and ${b.node} bolted together through ${through.join(", ")}`,
      });
    }
  }
}

/** Potentials and branch voltages under the supply's voltages. */
export function solve(set: Energisable): Solution {
  const { factor, supply, held, ends, indexed } = set;
  const { conductance } = indexed;
  const given: Parts = { re: zeros(factor.nodeCount), im: zeros(factor.nodeCount) };
  for (let i = 0; i < held.length; i += 1) {
    const node = held[i] as number;
    if (node < 0) continue;
    const { voltage } = supply.lines[i] as SupplyLine;
    given.re[node] = voltage.re;
    given.im[node] = voltage.im;
  }
  const re = refinedPotentials({ factor, ends, conductance, held, potential: given.re });
  const im = refinedPotentials({ factor, ends, conductance, held, potential: given.im });
  return { potential: { re: re.potential, im: im.potential }, across: { re: re.across, im: im.across } };
}

/** Currents of resistive branches. + 0: an open branch under a negative voltage would carry −0, which JSON cannot say. */
export function timesConductance(across: readonly number[], conductance: readonly number[]): number[] {
  const current: number[] = [];
  for (let e = 0; e < across.length; e += 1) {
    current.push((across[e] as number) * (conductance[e] as number) + 0);
  }
  return current;
}

/** Currents of all branches, ideal links included. */
export function branchCurrents(set: Energisable, across: Parts): Parts {
  const { conductance, links } = set.indexed;
  const currents = {
    re: timesConductance(across.re, conductance),
    im: timesConductance(across.im, conductance),
  };
  if (links.length > 0) linkCurrents(set, currents);
  return currents;
}

/** Currents that the supply conductors send into the network, in the supply's order; 0 for a lost line. */
export function lineCurrents(set: Energisable, currents: Parts): Parts {
  const { from, to } = set.indexed;
  const lines: Parts = { re: [], im: [] };
  for (let k = 0; k < set.source.length; k += 1) {
    const source = set.source[k] as number;
    const count = set.held[k] === -1 ? 0 : from.length;
    let re = 0;
    let im = 0;
    for (let e = 0; e < count; e += 1) {
      const sign = from[e] === source ? 1 : to[e] === source ? -1 : 0;
      if (sign === 0) continue;
      re += sign * (currents.re[e] as number);
      im += sign * (currents.im[e] as number);
    }
    lines.re.push(re);
    lines.im.push(im);
  }
  return lines;
}

/**
 * Currents through ideal links follow from what enters and leaves at their ends. Where links form a loop the split is
 * not determined by Kirchhoff's laws alone; they are then taken as equal resistances, the limit of equal good bars.
 */
function linkCurrents(set: Energisable, currents: Parts): void {
  const { indexed, held, source } = set;
  const { links, from, to, merged } = indexed;
  const count = indexed.nodes.length;
  // Of each linked group the supply nodes stay put; a group without one is referred to the node that stands for it.
  const fixed = zeros(count);
  const supplied = new Set<number>(held);
  source.forEach((node, i) => {
    if ((held[i] as number) >= 0) fixed[node] = 1;
  });
  for (let node = 0; node < count; node += 1) {
    if (merged[node] === node && !supplied.has(node)) fixed[node] = 1;
  }
  const linkFrom = links.map((link) => from[link] as number);
  const linkTo = links.map((link) => to[link] as number);
  const factor = factorConductances({
    nodeCount: count,
    from: linkFrom,
    to: linkTo,
    conductance: links.map(() => 1),
    fixed,
  });
  for (const part of [currents.re, currents.im]) {
    const injected = zeros(count);
    for (let e = 0; e < part.length; e += 1) {
      // Merging hid which member of a group the branch lands on; its own ends still know.
      const [a, b] = [from[e] as number, to[e] as number];
      injected[a] = (injected[a] as number) - (part[e] as number);
      injected[b] = (injected[b] as number) + (part[e] as number);
    }
    const level = solveConductances({ factor, potential: zeros(count), injected });
    links.forEach((link, k) => {
      part[link] = (level[linkFrom[k] as number] as number) - (level[linkTo[k] as number] as number);
    });
  }
}
