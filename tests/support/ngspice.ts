/** Runs networks through the circuit simulator ngspice (Debian package `ngspice`) as one deck, one process. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { RandomCase } from "./networks.ts";
import { tiedNodes } from "./nodal.ts";

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

export interface SimulatedState {
  readonly voltage: ReadonlyMap<string, Phasor>;
  /** Current out of each live supply line, by node. */
  readonly lines: ReadonlyMap<string, Phasor>;
}

/** Whether the simulator is on this machine. */
export function hasNgspice(): boolean {
  return spawnSync("ngspice", ["--version"], { encoding: "utf8" }).status === 0;
}

function deckOf(cases: readonly RandomCase[]): {
  readonly deck: string;
  readonly names: readonly Map<string, string>[];
} {
  // The first line of a deck is its title; node 0 is the supply neutral.
  const lines = ["* random networks"];
  const prints: string[] = [];
  const names = cases.map(({ network, supply }, c) => {
    const tied = tiedNodes(network, supply);
    const name = new Map([...tied].map((node, i) => [node, `n${c}x${i}`]));
    const at = (node: string): string => name.get(node) as string;
    network.branches.forEach(({ from, to, resistance }, i) => {
      // A node without a path to ground makes the simulator's matrix singular, so floating parts stay out.
      if (resistance === "open" || !tied.has(from)) return;
      lines.push(`r${c}x${i} ${at(from)} ${at(to)} ${resistance}`);
    });
    supply.lines.forEach(({ node, voltage, sourceResistance = 0 }, k) => {
      if (supply.lost?.includes(node)) return;
      const behind = sourceResistance === 0 ? at(node) : `s${c}x${k}`;
      if (sourceResistance !== 0) lines.push(`rs${c}x${k} ${behind} ${at(node)} ${sourceResistance}`);
      const degrees = (Math.atan2(voltage.im, voltage.re) * 180) / Math.PI;
      lines.push(`v${c}x${k} ${behind} 0 dc 0 ac ${Math.hypot(voltage.re, voltage.im)} ${degrees}`);
      prints.push(`print i(v${c}x${k})`);
    });
    for (const node of tied) prints.push(`print v(${at(node)})`);
    return name;
  });
  const control = [".control", "set numdgt=15", "run", ...prints, "quit", ".endc", ".end", ""];
  return { deck: [...lines, ".ac lin 1 60 60", ...control].join("\n"), names };
}

export function simulate(cases: readonly RandomCase[]): readonly SimulatedState[] {
  const { deck, names } = deckOf(cases);
  const folder = mkdtempSync(join(tmpdir(), "electroheat-"));
  try {
    const path = join(folder, "networks.cir");
    writeFileSync(path, deck);
    const run = spawnSync("ngspice", ["-b", path], { encoding: "utf8", maxBuffer: 1 << 26 });
    const printed = new Map<string, Phasor>();
    for (const [, key, re, im] of run.stdout.matchAll(/^(\S+\(\S+\)) = ([-+.\de]+),\s*([-+.\de]+)/gm)) {
      printed.set(key as string, { re: Number(re), im: Number(im) });
    }
    const value = (key: string): Phasor => {
      const found = printed.get(key);
      if (found === undefined) throw new Error(`ngspice printed no ${key}: ${run.stderr.slice(0, 500)}`);
      return found;
    };
    return cases.map(({ supply }, c) => ({
      voltage: new Map([...(names[c] as Map<string, string>)].map(([node, n]) => [node, value(`v(${n})`)])),
      lines: new Map(
        supply.lines.flatMap(({ node }, k) => {
          if (supply.lost?.includes(node)) return [];
          // The simulator counts a source's current as flowing into it.
          const { re, im } = value(`i(v${c}x${k})`);
          return [[node, { re: -re, im: -im }] as const];
        }),
      ),
    }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
