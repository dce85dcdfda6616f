// A network solved by ours and by a general-purpose matrix library, by the circuit simulator as a process, in growing sizes, and
// all its single faults against one solve for each.
//   node benchmarks/rows/network.mjs     (after npm run build)
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { balancedSupply, buildModule, energise, faultScan } from "electroheat/circuit";
import { ohms, volts } from "electroheat/quantity";
import { complex, lusolve } from "mathjs";
import { Matrix, solve } from "ml-matrix";
import { atMost, faster, paired, shown, tell } from "../measure.mjs";

const supply = balancedSupply({ lineVoltage: volts(480) });
/** Two star banks, so that there are star points to solve for. @param {number} perBank elements in a bank, a multiple of 3 */
const twoBanks = (perBank) =>
  buildModule({
    starPoints: "separate",
    banks: ["A", "B"].map((id) => ({
      id,
      connection: "star",
      elementResistance: ohms(12),
      elementsInParallel: perBank / 3,
    })),
  }).network;

const network = twoBanks(6);
if (network.branches.length !== 12) throw new Error(`${network.branches.length} elements, not 12`);

// The same network as any matrix library takes it: every node an unknown, every line current too.
const nodes = [
  ...new Set([
    ...network.branches.flatMap(({ from, to }) => [from, to]),
    ...supply.lines.map(({ node }) => node),
  ]),
];
const size = nodes.length + supply.lines.length;
const stamped = Array.from({ length: size }, () => new Array(size).fill(0));
for (const { from, to, resistance } of network.branches) {
  const [i, j] = [nodes.indexOf(from), nodes.indexOf(to)];
  const g = 1 / resistance;
  stamped[i][i] += g;
  stamped[j][j] += g;
  stamped[i][j] -= g;
  stamped[j][i] -= g;
}
supply.lines.forEach(({ node }, k) => {
  const unknown = nodes.length + k;
  stamped[nodes.indexOf(node)][unknown] -= 1;
  stamped[unknown][nodes.indexOf(node)] += 1;
});
const right = Array.from({ length: size }, (_, i) => {
  const line = supply.lines[i - nodes.length];
  return [line === undefined ? complex(0, 0) : complex(line.voltage.re, line.voltage.im)];
});
const complexMatrix = stamped.map((row) => row.map((value) => complex(value, 0)));
/** A real matrix of twice the size: the only way for a library without complex numbers. */
const realMatrix = new Matrix(2 * size, 2 * size);
const realRight = new Matrix(2 * size, 1);
for (let i = 0; i < size; i += 1) {
  for (let j = 0; j < size; j += 1) {
    realMatrix.set(i, j, stamped[i][j]);
    realMatrix.set(size + i, size + j, stamped[i][j]);
  }
  const { re, im } = right[i][0];
  realRight.set(i, 0, re);
  realRight.set(size + i, 0, im);
}

const ours = energise({ network, supply });
const theirs = lusolve(complexMatrix, right);
for (const { node, voltagePhasor } of ours.nodes) {
  const value = theirs[nodes.indexOf(node)][0];
  const other = typeof value === "number" ? complex(value, 0) : value;
  const off = Math.hypot(
    (voltagePhasor?.re ?? Number.NaN) - other.re,
    (voltagePhasor?.im ?? Number.NaN) - other.im,
  );
  if (!(off < 1e-9)) throw new Error(`${node} is ${off} V apart`);
}

const what = "energise 12 elements in two star banks, all branch states";
const rows = [
  faster(
    what,
    `complex LU solve of the same matrix (${size} unknowns) by mathjs`,
    paired(
      () => energise({ network, supply }),
      () => lusolve(complexMatrix, right),
      { times: 300, secondTimes: 20 },
    ),
    50,
  ),
  atMost(
    what,
    `real LU solve of the doubled matrix (${2 * size} unknowns) by ml-matrix`,
    paired(
      () => energise({ network, supply }),
      () => solve(realMatrix, realRight),
      { times: 300 },
    ),
    null,
  ),
];

/** The simulator is a program of its own: its whole process, started, read and ended. */
function simulator() {
  if (spawnSync("ngspice", ["--version"]).status !== 0) return undefined;
  const name = (/** @type {string} */ node) => `n${nodes.indexOf(node)}`;
  const deck = [
    "* two banks",
    ...network.branches.map(({ from, to, resistance }, i) => `r${i} ${name(from)} ${name(to)} ${resistance}`),
    ...supply.lines.map(({ node, voltage }, k) => {
      const degrees = (Math.atan2(voltage.im, voltage.re) * 180) / Math.PI;
      return `v${k} ${name(node)} 0 dc 0 ac ${Math.hypot(voltage.re, voltage.im)} ${degrees}`;
    }),
    ".ac lin 1 60 60",
    ".control",
    "run",
    "print i(v0)",
    "quit",
    ".endc",
    ".end",
    "",
  ].join("\n");
  const folder = mkdtempSync(join(tmpdir(), "electroheat-bench-"));
  const path = join(folder, "banks.cir");
  writeFileSync(path, deck);
  try {
    const times = Array.from({ length: 9 }, () => {
      const start = process.hrtime.bigint();
      const { stdout } = spawnSync("ngspice", ["-b", path], { encoding: "utf8" });
      if (!stdout.includes("i(v0) =")) throw new Error("the simulator printed no current");
      return Number(process.hrtime.bigint() - start);
    });
    return Math.min(...times);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
const simulated = simulator();
const one = paired(
  () => energise({ network, supply }),
  () => energise({ network, supply }),
  { times: 300 },
).first;
rows.push({
  what,
  against: "circuit simulator (ngspice), whole process",
  reach: "",
  found: simulated === undefined ? "not installed" : `${(simulated / one).toPrecision(2)}× faster`,
  met: null,
  detail: simulated === undefined ? "" : `${shown(one)} against ${shown(simulated)}`,
});

const points = [100, 300, 1_000, 3_000, 10_000].map((branches) => {
  const grown = twoBanks(Math.round(branches / 6) * 3);
  const times = Math.max(1, Math.round(20_000 / branches));
  const { first } = paired(
    () => energise({ network: grown, supply }),
    () => undefined,
    { times, rounds: 15, warm: 3 },
  );
  return { branches: grown.branches.length, ns: first };
});
const logs = points.map(({ branches, ns }) => [Math.log(branches), Math.log(ns)]);
const mean = (/** @type {number} */ k) => logs.reduce((sum, point) => sum + point[k], 0) / logs.length;
const [mx, my] = [mean(0), mean(1)];
const slope =
  logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) /
  logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
rows.push({
  what: "energise 100 to 10,000 branches",
  against: "itself",
  reach: "exponent ≤ 1.2",
  found: `exponent ${slope.toFixed(2)}`,
  met: slope <= 1.2,
  detail: points.map(({ branches, ns }) => `${branches}: ${shown(ns)}`).join(", "),
});

const large = twoBanks(18);
const apart = large.branches.map(({ id }) => ({
  branches: large.branches.map((branch) => (branch.id === id ? { ...branch, resistance: "open" } : branch)),
}));
rows.push(
  atMost(
    `all single faults of ${large.branches.length} elements (${faultScan({ network: large, supply }).length} opens)`,
    `${apart.length} separate solves`,
    paired(
      () => faultScan({ network: large, supply }),
      () => {
        for (const faulted of apart) energise({ network: faulted, supply });
      },
      { times: 20 },
    ),
    0.2,
  ),
);
tell(rows);
