/**
 * evaluateColumns and evaluateRows against the loop one would write by hand for the same job: `npm run build`, then
 * `node benchmarks/columns.mjs [rows] [rounds]`.
 *
 * By hand: for each row an argument object, the same checked function, its result into a typed array if it is a number, else NaN and
 * a status. Both are timed in turn, the order changing from round to round; printed is the median of the rounds' ratios, with its
 * quartiles, because a ratio of neighbours hardly sees what else the machine does, and the ratio of the fastest rounds of each. Each pair runs alone in a process of its own
 * ("alone"), and all of them in one process ("mixed"), where the engine can no longer compile the shared loop for one calculation.
 */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { hotResistance, powerFromVoltageAndResistance } from "electroheat/element";
import { evaluateColumns, evaluateRows } from "electroheat/operators";

const rows = Number(process.argv[2] ?? 1_000_000);
const rounds = Number(process.argv[3] ?? 25);
const WARM = 5;

const column = (/** @type {number} */ low, /** @type {number} */ high) =>
  Float64Array.from({ length: rows }, (_, i) => low + ((high - low) * ((i * 7919) % rows)) / rows);
const voltage = column(200, 480);
const resistance = column(5, 50);
const factor = column(1, 1.1);
const holed = resistance.map((value, i) => (i % 100 === 0 ? -1 : value));

const power = powerFromVoltageAndResistance;
/**
 * A function of one's own with a record as its result.
 * @param {{ voltage: number, resistance: number }} input
 */
const both = ({ voltage: v, resistance: r }) => ({ current: v / r, power: (v * v) / r });
/** @param {{ voltage: number, resistance: number }} input */
const three = ({ voltage: v, resistance: r }) => ({ current: v / r, power: (v * v) / r, conductance: 1 / r });

/** Status by code and path, as one would keep it by hand. */
class Seen {
  /** @type {Map<string, number>} */
  kinds = new Map();
  /** @param {any} error */
  of(error) {
    const kind = `${error?.code} ${error?.argument}`;
    const known = this.kinds.get(kind) ?? this.kinds.size + 1;
    this.kinds.set(kind, known);
    return known;
  }
}

/** @type {Record<string, Record<string, () => unknown>>} */
const groups = {
  "number, two columns": {
    hand: () => {
      const out = new Float64Array(rows);
      const status = new Uint8Array(rows);
      const seen = new Seen();
      for (let i = 0; i < rows; i += 1) {
        try {
          const result = power({ voltage: voltage[i], resistance: resistance[i] });
          if (Number.isFinite(result)) out[i] = result;
          else throw new Error("not a number");
        } catch (error) {
          out[i] = Number.NaN;
          status[i] = seen.of(error);
        }
      }
      return [out, status];
    },
    evaluateColumns: () => evaluateColumns({ calculation: power, columns: { voltage, resistance } }),
    evaluateRows: () =>
      evaluateRows({ rows, evaluate: (i) => power({ voltage: voltage[i], resistance: resistance[i] }) }),
  },
  "number, column and value": {
    hand: () => {
      const out = new Float64Array(rows);
      const status = new Uint8Array(rows);
      const seen = new Seen();
      for (let i = 0; i < rows; i += 1) {
        try {
          const result = hotResistance({ coldResistance: resistance[i], temperatureFactor: 1.04 });
          if (Number.isFinite(result)) out[i] = result;
          else throw new Error("not a number");
        } catch (error) {
          out[i] = Number.NaN;
          status[i] = seen.of(error);
        }
      }
      return [out, status];
    },
    evaluateColumns: () =>
      evaluateColumns({
        calculation: hotResistance,
        columns: { coldResistance: resistance },
        fixed: { temperatureFactor: 1.04 },
      }),
    evaluateRows: () =>
      evaluateRows({
        rows,
        evaluate: (i) => hotResistance({ coldResistance: resistance[i], temperatureFactor: 1.04 }),
      }),
  },
  "record of two": {
    hand: () => {
      const current = new Float64Array(rows);
      const watts = new Float64Array(rows);
      const status = new Uint8Array(rows);
      const seen = new Seen();
      for (let i = 0; i < rows; i += 1) {
        try {
          const result = both({ voltage: voltage[i], resistance: resistance[i] });
          if (!Number.isFinite(result.current) || !Number.isFinite(result.power))
            throw new Error("not a number");
          current[i] = result.current;
          watts[i] = result.power;
        } catch (error) {
          current[i] = Number.NaN;
          watts[i] = Number.NaN;
          status[i] = seen.of(error);
        }
      }
      return [current, watts, status];
    },
    evaluateColumns: () => evaluateColumns({ calculation: both, columns: { voltage, resistance } }),
    evaluateRows: () =>
      evaluateRows({ rows, evaluate: (i) => both({ voltage: voltage[i], resistance: resistance[i] }) }),
  },
  "record of three": {
    hand: () => {
      const outs = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
      const [current, watts, conductance] = outs;
      const status = new Uint8Array(rows);
      const seen = new Seen();
      for (let i = 0; i < rows; i += 1) {
        try {
          const result = three({ voltage: voltage[i], resistance: resistance[i] });
          if (
            !Number.isFinite(result.current) ||
            !Number.isFinite(result.power) ||
            !Number.isFinite(result.conductance)
          )
            throw new Error("not a number");
          current[i] = result.current;
          watts[i] = result.power;
          conductance[i] = result.conductance;
        } catch (error) {
          for (const out of outs) out[i] = Number.NaN;
          status[i] = seen.of(error);
        }
      }
      return [...outs, status];
    },
    evaluateColumns: () => evaluateColumns({ calculation: three, columns: { voltage, resistance } }),
    evaluateRows: () =>
      evaluateRows({ rows, evaluate: (i) => three({ voltage: voltage[i], resistance: resistance[i] }) }),
  },
  "one row in 100 refused": {
    hand: () => {
      const out = new Float64Array(rows);
      const status = new Uint8Array(rows);
      const seen = new Seen();
      for (let i = 0; i < rows; i += 1) {
        try {
          const result = hotResistance({ coldResistance: holed[i], temperatureFactor: factor[i] });
          if (Number.isFinite(result)) out[i] = result;
          else throw new Error("not a number");
        } catch (error) {
          out[i] = Number.NaN;
          status[i] = seen.of(error);
        }
      }
      return [out, status];
    },
    evaluateColumns: () =>
      evaluateColumns({
        calculation: hotResistance,
        columns: { coldResistance: holed, temperatureFactor: factor },
      }),
  },
};

/** @param {readonly number[]} list @param {number} share */
const quantile = (list, share) =>
  [...list].sort((a, b) => a - b)[Math.floor(share * (list.length - 1))] ?? Number.NaN;

/** @param {() => unknown} run nanoseconds for each row */
function timed(run) {
  const start = process.hrtime.bigint();
  run();
  return Number(process.hrtime.bigint() - start) / rows;
}

/** @param {readonly (readonly [string, string])[]} pairs group and way */
function measure(pairs) {
  const found = pairs.map(([group, way]) => ({
    group,
    way,
    hand: groups[group]?.["hand"] ?? (() => undefined),
    run: groups[group]?.[way] ?? (() => undefined),
    times: /** @type {[number, number][]} */ ([]),
  }));
  for (let round = 0; round < rounds + WARM; round += 1) {
    for (const { hand, run, times } of found) {
      const first = round % 2 === 0 ? timed(hand) : undefined;
      const ours = timed(run);
      const theirs = first ?? timed(hand);
      if (round >= WARM) times.push([theirs, ours]);
    }
  }
  for (const { group, way, times } of found) {
    const ratios = times.map(([theirs, ours]) => ours / theirs);
    const [low, middle, high] = [0.25, 0.5, 0.75].map((share) => quantile(ratios, share).toFixed(2));
    const each = [0, 1].map((k) => times.map((pair) => pair[k] ?? 0));
    const [theirs, ours] = each.map((list) => quantile(list, 0.5).toFixed(1));
    const [best = 0, own = 0] = each.map((list) => Math.min(...list));
    const medians = `${ours?.padStart(6)} ns/row, by hand ${theirs?.padStart(6)}`;
    const spread = `${middle} × (${low} to ${high})`;
    console.log(
      `${group.padEnd(25)} ${way.padEnd(15)} ${medians}: ${spread}, fastest ${(own / best).toFixed(2)} ×`,
    );
  }
}

const all = Object.entries(groups).flatMap(([group, ways]) =>
  Object.keys(ways).flatMap((way) =>
    way === "hand" ? [] : [/** @type {[string, string]} */ ([group, way])],
  ),
);
const [group, way] = process.argv.slice(4);
if (group !== undefined && way !== undefined) measure([[group, way]]);
else {
  console.log(`${rows} rows, ${rounds} rounds, Node ${process.version}\n\nalone`);
  for (const pair of all) {
    const file = fileURLToPath(import.meta.url);
    spawnSync(process.execPath, [file, String(rows), String(rounds), ...pair], { stdio: "inherit" });
  }
  console.log("\nmixed");
  measure(all);
}
