/**
 * evaluateColumns and evaluateRows against the loops one would write by hand, side by side: `npm run build`, then
 * `node benchmarks/columns.mjs [rows]`. Each pair runs alone in a process of its own ("alone"), and all of them in one process
 * ("mixed"), where the engine can no longer compile the shared loop for one calculation. Median of several rounds, in
 * nanoseconds for each row; ratios to the plain call, a loop that makes one argument for each row and calls the same function.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { hotResistance, powerFromVoltageAndResistance } from "electroheat/element";
import { evaluateColumns, evaluateRows } from "electroheat/operators";

const rows = Number(process.argv[2] ?? 1_000_000);
const ROUNDS = 15;

const column = (low, high) =>
  Float64Array.from({ length: rows }, (_, i) => low + ((high - low) * ((i * 7919) % rows)) / rows);
const voltage = column(200, 480);
const resistance = column(5, 50);
const factor = column(1, 1.1);
const holed = resistance.map((value, i) => (i % 100 === 0 ? -1 : value));

/** A function of one's own with a record as its result. */
const both = ({ voltage, resistance }) => ({
  current: voltage / resistance,
  power: (voltage * voltage) / resistance,
});

const power = powerFromVoltageAndResistance;
/** @type {Record<string, Record<string, () => Float64Array | undefined>>} */
const groups = {
  power: {
    "bare arithmetic, no checks": () => {
      const out = new Float64Array(rows);
      for (let i = 0; i < rows; i += 1) out[i] = (voltage[i] * voltage[i]) / resistance[i];
      return out;
    },
    "plain call": () => {
      const out = new Float64Array(rows);
      for (let i = 0; i < rows; i += 1) out[i] = power({ voltage: voltage[i], resistance: resistance[i] });
      return out;
    },
    evaluateColumns: () =>
      evaluateColumns({ calculation: power, columns: { voltage, resistance } }).columns.result,
    evaluateRows: () =>
      evaluateRows({ rows, evaluate: (i) => power({ voltage: voltage[i], resistance: resistance[i] }) })
        .columns.result,
  },
  "hot resistance": {
    "plain call": () => {
      const out = new Float64Array(rows);
      for (let i = 0; i < rows; i += 1) {
        out[i] = hotResistance({ coldResistance: resistance[i], temperatureFactor: factor[i] });
      }
      return out;
    },
    evaluateColumns: () =>
      evaluateColumns({
        calculation: hotResistance,
        columns: { coldResistance: resistance, temperatureFactor: factor },
      }).columns.result,
    evaluateRows: () =>
      evaluateRows({
        rows,
        evaluate: (i) => hotResistance({ coldResistance: resistance[i], temperatureFactor: factor[i] }),
      }).columns.result,
  },
  "record of two": {
    "plain call": () => {
      const [current, watts] = [new Float64Array(rows), new Float64Array(rows)];
      for (let i = 0; i < rows; i += 1) {
        const result = both({ voltage: voltage[i], resistance: resistance[i] });
        current[i] = result.current;
        watts[i] = result.power;
      }
      return watts;
    },
    evaluateColumns: () =>
      evaluateColumns({ calculation: both, columns: { voltage, resistance } }).columns.power,
    evaluateRows: () =>
      evaluateRows({ rows, evaluate: (i) => both({ voltage: voltage[i], resistance: resistance[i] }) })
        .columns.power,
  },
  "one row in 100 refused": {
    "plain call": () => {
      const out = new Float64Array(rows);
      for (let i = 0; i < rows; i += 1) {
        try {
          out[i] = power({ voltage: voltage[i], resistance: holed[i] });
        } catch {
          out[i] = Number.NaN;
        }
      }
      return out;
    },
    evaluateColumns: () =>
      evaluateColumns({ calculation: power, columns: { voltage, resistance: holed } }).columns.result,
  },
};

/** @param {readonly number[]} list */
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;

/** @param {readonly string[]} names */
function measure(names) {
  const runs = names.flatMap((group) =>
    Object.entries(groups[group] ?? {}).map(([way, run]) => ({
      group,
      way,
      run,
      times: /** @type {number[]} */ ([]),
    })),
  );
  for (let round = 0; round < ROUNDS + 3; round += 1) {
    for (const { run, times } of runs) {
      const start = process.hrtime.bigint();
      const out = run();
      const spent = Number(process.hrtime.bigint() - start) / rows;
      if (out?.length !== rows) throw new Error("a column of the wrong length");
      // Three rounds to warm up.
      if (round >= 3) times.push(spent);
    }
  }
  let plain = Number.NaN;
  for (const { group, way, times } of runs) {
    const time = median(times);
    if (way === "plain call") plain = time;
    const ratio = way.startsWith("evaluate") ? `${(time / plain).toFixed(2)} × the plain call` : "";
    console.log(`${group.padEnd(24)} ${way.padEnd(28)} ${time.toFixed(1).padStart(8)} ns/row  ${ratio}`);
  }
}

const only = process.argv[3];
if (only !== undefined) measure([only]);
else {
  console.log(`${rows} rows, median of ${ROUNDS} rounds, Node ${process.version}\n\nalone`);
  for (const group of Object.keys(groups)) {
    const file = fileURLToPath(import.meta.url);
    spawnSync(process.execPath, [file, String(rows), group], { stdio: "inherit" });
  }
  console.log("\nmixed");
  measure(Object.keys(groups));
}
