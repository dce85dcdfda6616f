/**
 * The module in numbers, dead and energised: what every edge carries for each source and how it answers to a volt inserted
 * in each edge. A series resistance inserted anywhere, up to a full break, is a rank-one change of all of it.
 */
import { type Network, networkResponses } from "../../../circuit/index.ts";
import type { Ohms } from "../../../quantity/index.ts";
import { filled, filledWhole, floats } from "../numbers/room.ts";
import { LINES } from "../question/lines.ts";
import { admittances, numbered } from "./admittances.ts";
import { networkOf, type Wiring } from "./edges.ts";
import type { Cut, Row, Rows } from "./rows.ts";

/** A cut whose own conductance is below this part of its edges' sum has no way round: nothing can flow through it. */
const NO_WAY_ROUND = 1e-9;

/** Energised readings that are no drop across a joint, in {@link Frame.liveKind}. */
export const VOLTAGE = -1;
const CURRENT = -2;

/** Whether an energised row is a voltage: of readings those that are none of a current or a joint, and all nodes behind them. */
export const isVoltage = (kind: number | undefined): boolean => kind === undefined || kind === VOLTAGE;

/** One dead arrangement: edges × edges admittance, and for each of its readings the share of 1 A in each edge. */
export interface DeadState {
  readonly admittance: Float64Array;
  readonly share: Float64Array;
  /** What a perfect ohmmeter reads, Infinity for an open path. */
  readonly resistance: Float64Array;
}

/** The energised arrangement. */
export interface LiveState {
  readonly admittance: Float64Array;
  /** Current of each edge per volt on each line: 3 × edges. */
  readonly current: Float64Array;
  /** Value of each row per volt on each line: rows × 3. */
  readonly value: Float64Array;
  /** Value of each row per volt inserted in each edge: rows × edges. */
  readonly answer: Float64Array;
  /** Rows that nothing determines: a probe on a floating node. */
  readonly adrift: Uint8Array;
  /** Potential differences of rows per ampere into each node row: rows × node rows. */
  readonly impedance: Float64Array;
}

/** One dead arrangement of the sound module as a meter with one probe on the frame meets it. */
export interface Paths {
  /** The connected part each node lies in. */
  readonly part: ReadonlyMap<string, number>;
  /** Cold resistance between two nodes of one part. */
  readonly between: (a: string, b: string) => number;
}

/** Resistances of all edges with everything that readings follow from. */
export interface State {
  readonly dead: readonly DeadState[];
  readonly live: LiveState | null;
  /** Cold resistance of each edge; 1 for an open one, which carries nothing. */
  readonly resistance: Float64Array;
  readonly variance: Float64Array;
}

/** What stays the same for one wiring and one set of readings. */
export interface Frame {
  readonly wiring: Wiring;
  readonly rows: readonly Row[];
  readonly edges: number;
  /** Hot over cold of each edge: 1 for joints. */
  readonly hot: Float64Array;
  /** 1 for each edge that is a joint. */
  readonly joint: Uint8Array;
  /** For each dead arrangement, which rows it holds. */
  readonly deadRows: readonly (readonly number[])[];
  /** Rows of the energised arrangement: those of readings, then one for each node in `nodes`. */
  readonly liveRows: readonly number[];
  /** For each energised reading: the joint's edge of a drop, −1 for a voltage, −2 for a current. */
  readonly liveKind: Int32Array;
  /** Nodes whose potential is kept, for earth faults. */
  readonly nodes: readonly string[];
  /** Sign with which each live row touches the module side of each line: rows × 3. */
  readonly lineSign: Float64Array;
}

/** Sets a wiring up for its readings: one factorisation for each arrangement. */
export function frameOf(
  wiring: Wiring,
  { rows, settings }: Rows,
  ratio: number,
  live: boolean,
): { readonly frame: Frame; readonly state: State; readonly paths: readonly Paths[] } {
  const edges = wiring.edges.length;
  const joint = new Uint8Array(edges);
  for (let e = 0; e < edges; e += 1) if (wiring.edges[e]?.joint === true) joint[e] = 1;
  const hot = filled(edges, (e) => (joint[e] === 1 ? 1 : ratio));
  const deadRows = settings.map((_, k) =>
    rows.flatMap((row, r) => (row?.kind === "resistance" && row.setting === k ? [r] : [])),
  );
  const liveRows = rows.flatMap((row, r) =>
    row !== null && row.kind !== "resistance" && row.kind !== "insulation" ? [r] : [],
  );
  const nodes = live
    ? [...new Set(wiring.edges.filter(({ joint }) => !joint).flatMap(({ from, to }) => [from, to]))]
    : [];
  const lineSign = floats((liveRows.length + nodes.length) * 3);
  const pairs = [
    ...liveRows.map((r) => {
      const row = rows[r] as Row;
      return row?.kind === "voltage" ? ([row.a, row.b] as const) : null;
    }),
    ...nodes.map((node) => [node, "N"] as const),
  ];
  pairs.forEach((pair, r) => {
    LINES.forEach((line, l) => {
      if (pair === null) return;
      lineSign[3 * r + l] = (pair[0] === line ? 1 : 0) - (pair[1] === line ? 1 : 0);
    });
  });
  const liveKind = filledWhole(liveRows.length, (k) => {
    const row = rows[liveRows[k] as number] as Row;
    return row?.kind === "drop" ? row.edge : row?.kind === "voltage" ? VOLTAGE : CURRENT;
  });
  const frame: Frame = { wiring, rows, edges, hot, joint, deadRows, liveRows, liveKind, nodes, lineSign };
  const paths: Paths[] = [];
  const dead = deadStates(frame, settings, Number.POSITIVE_INFINITY, paths);
  const resistance = filled(edges, (e) => {
    const ohms = wiring.edges[e]?.resistance as number;
    return ohms === Number.POSITIVE_INFINITY ? 1 : ohms;
  });
  const variance = filled(edges, (e) => wiring.edges[e]?.variance as number);
  return {
    frame,
    state: { dead, live: live ? liveState(frame, pairs, ratio) : null, resistance, variance },
    paths,
  };
}

/** What lies between every two lines outside the module. */
const between = (across: number): Network["branches"] =>
  LINES.map((from, l) => {
    return { id: `outside ${from}`, from, to: LINES[(l + 1) % 3] as string, resistance: across as Ohms };
  });

/**
 * A wiring in each of its dead arrangements.
 * @param across - ohms between every two lines outside the module while it was read; Infinity for nothing there
 * @param paths - takes what hangs together in each
 */
export const deadStates = (
  frame: Frame,
  settings: readonly ReadonlySet<number>[],
  across: number,
  paths: Paths[] = [],
): readonly DeadState[] =>
  settings.map((keep, k) => deadState(frame, keep, frame.deadRows[k] as readonly number[], across, paths));

function deadState(
  frame: Frame,
  keep: ReadonlySet<number>,
  rows: readonly number[],
  across: number,
  paths: Paths[],
): DeadState {
  const { branches } = networkOf(frame.wiring, 1, keep);
  const network =
    across === Number.POSITIVE_INFINITY ? { branches } : { branches: [...branches, ...between(across)] };
  const { nodes, part, impedance: z } = networkResponses({ network });
  const at = new Map(nodes.map((node, i) => [node, i]));
  paths.push({
    part: new Map(nodes.map((node, i) => [node, part[i] as number])),
    between: (a, b) => {
      const [i, k] = [at.get(a) as number, at.get(b) as number];
      const own = z[i] as readonly number[];
      return (own[i] as number) + (z[k]?.[k] as number) - 2 * (own[k] as number);
    },
  });
  const ends = numbered(frame.wiring, at, 1, keep);
  const share = floats(rows.length * frame.edges);
  const resistance = floats(rows.length);
  rows.forEach((r, k) => {
    const row = frame.rows[r] as Extract<Row, { kind: "resistance" }>;
    const a = at.get(row.a);
    const b = at.get(row.b);
    if (a === undefined || b === undefined || part[a] !== part[b]) {
      resistance[k] = Number.POSITIVE_INFINITY;
      return;
    }
    const [za, zb] = [z[a] as readonly number[], z[b] as readonly number[]];
    resistance[k] = (za[a] as number) + (zb[b] as number) - 2 * (za[b] as number);
    for (let e = 0; e < frame.edges; e += 1) {
      const [f, t] = [ends.from[e] as number, ends.to[e] as number];
      const across = (za[f] as number) - (za[t] as number) - (zb[f] as number) + (zb[t] as number);
      share[k * frame.edges + e] = across * (ends.conductance[e] as number);
    }
  });
  return { admittance: admittances(z, ends), share, resistance };
}

function liveState(
  frame: Frame,
  pairs: readonly (readonly [string, string] | null)[],
  ratio: number,
): LiveState {
  const { edges, nodes: kept, liveRows } = frame;
  const held = [...LINES, "N"];
  const network = networkOf(frame.wiring, ratio);
  const { nodes, part, impedance: z, transfer } = networkResponses({ network, held });
  const at = new Map(nodes.map((node, i) => [node, i]));
  const fed = new Set(held.map((node) => part[at.get(node) as number]));
  const ends = numbered(frame.wiring, at, ratio);
  const { conductance: g, from, to } = ends;
  const admittance = admittances(z, ends);
  const current = floats(3 * edges);
  for (let l = 0; l < 3; l += 1) {
    const v = transfer[l] as readonly number[];
    for (let e = 0; e < edges; e += 1) {
      current[l * edges + e] =
        ((v[from[e] as number] as number) - (v[to[e] as number] as number)) * (g[e] as number);
    }
  }
  const value = floats(pairs.length * 3);
  const answer = floats(pairs.length * edges);
  const adrift = new Uint8Array(pairs.length);
  const impedance = floats(pairs.length * kept.length);
  pairs.forEach((pair, r) => {
    if (pair === null) {
      const row = frame.rows[liveRows[r] as number] as Row;
      const cut: Cut =
        row?.kind === "current"
          ? row.cut
          : { index: Int32Array.of((row as { edge: number }).edge), sign: Float64Array.of(1) };
      cut.index.forEach((edge, k) => {
        const sign = cut.sign[k] as number;
        for (let l = 0; l < 3; l += 1) {
          value[3 * r + l] = (value[3 * r + l] as number) + sign * (current[l * edges + edge] as number);
        }
        for (let e = 0; e < edges; e += 1) {
          answer[r * edges + e] =
            (answer[r * edges + e] as number) + sign * (admittance[edge * edges + e] as number);
        }
      });
      return;
    }
    const [a, b] = [at.get(pair[0]), at.get(pair[1])];
    if (a === undefined || b === undefined) {
      adrift[r] = 1;
      return;
    }
    if (!fed.has(part[a] as number) || !fed.has(part[b] as number)) adrift[r] = part[a] === part[b] ? 0 : 1;
    for (let l = 0; l < 3; l += 1) {
      const v = transfer[l] as readonly number[];
      value[3 * r + l] = (v[a] as number) - (v[b] as number);
    }
    const [za, zb] = [z[a] as readonly number[], z[b] as readonly number[]];
    for (let e = 0; e < edges; e += 1) {
      const [f, t] = [from[e] as number, to[e] as number];
      const toward = (za[t] as number) - (za[f] as number) - (zb[t] as number) + (zb[f] as number);
      answer[r * edges + e] = toward * (g[e] as number);
    }
    kept.forEach((node, q) => {
      const n = at.get(node) as number;
      impedance[r * kept.length + q] = (za[n] as number) - (zb[n] as number);
    });
  });
  return { admittance, current, value, answer, adrift, impedance };
}

/** Whether a cut with this own conductance lets anything round. */
export function hasWayRound(own: number, scale: number): boolean {
  return own > NO_WAY_ROUND * scale;
}
