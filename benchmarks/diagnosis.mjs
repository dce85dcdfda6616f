// What a diagnosis costs, in plain solves of the same network in the same run.
//   node benchmarks/diagnosis.mjs     (after npm run build)
// The wall clock is not asked: on a shared machine it tells of the neighbours. User time of the process is.
import { diagnose } from "electroheat/bench";
import { balancedSupply, buildModule, energise } from "electroheat/circuit";
import { amperes, ohms, volts } from "electroheat/quantity";

const module = {
  banks: ["A", "B"].map((id) => ({
    id,
    connection: "delta",
    elementResistance: ohms(12),
    elementsInParallel: 3,
  })),
};
const instruments = {
  ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: { shorted: ohms(0.25) } },
  clamp: { ofReading: 0.02, digits: 5, resolution: 0.1 },
  voltmeter: { ofReading: 0.005, digits: 2, resolution: 0.1 },
};
const lines = ["L1", "L2", "L3"];
const next = (i) => lines[(i + 1) % 3];
const sheet = (currents, pairs) => [
  ...currents.map((reads, i) => ({ kind: "current", at: lines[i], reads: amperes(reads) })),
  ...[480, 481, 479].map((reads, i) => ({
    kind: "voltage",
    from: lines[i],
    to: next(i),
    reads: volts(reads),
  })),
  ...pairs.map((reads, i) => ({ kind: "resistance", from: lines[i], to: next(i), reads: ohms(reads) })),
];
const sheets = {
  sound: sheet([395.7, 399.7, 403.7], [1.63, 1.62, 1.63]),
  "one element open": sheet([365.7, 365.7, 399.7], [1.88, 1.7, 1.71]),
  "turns shorted": sheet([423.7, 423.7, 399.7], [1.5, 1.58, 1.59]),
};

/** User time for a while of calls: microseconds for one. */
function spent(run, microseconds) {
  const before = process.cpuUsage();
  let times = 0;
  for (;;) {
    run();
    times += 1;
    const { user } = process.cpuUsage(before);
    if (user > microseconds) return user / times;
  }
}

const middle = (values) => values.sort((a, b) => a - b)[values.length >> 1];

/** Cost of a call in plain solves, both warm and measured turn about: the machine's mood is the same for both. */
function ratio(run, solve) {
  spent(run, 3e6);
  return middle(Array.from({ length: 9 }, () => spent(run, 6e4) / spent(solve, 2e4)));
}

const { network } = buildModule(module);
const supply = balancedSupply({ lineVoltage: volts(480) });
const many = () => {
  for (let i = 0; i < 100; i += 1) energise({ network, supply });
};
const solve = spent(many, 5e5) / 100;
console.log(`${network.branches.length} elements, two banks, 9 readings; one solve ${solve.toFixed(1)} µs`);
console.log("sheet               depth    solves' time     asked");
for (const [name, readings] of Object.entries(sheets)) {
  for (const [depth, allowed] of [
    ["single", 50],
    ["pairs", 400],
  ]) {
    const asked = { module, instruments, supply: { lineVoltage: volts(480) }, readings, depth };
    const solves = 100 * ratio(() => diagnose(asked), many);
    console.log(
      `${name.padEnd(18)}  ${depth.padEnd(6)}  ${solves.toFixed(0).padStart(12)}  ${String(allowed).padStart(8)}`,
    );
  }
}
