/**
 * Two ways of doing the same thing, timed in turn in one process, in processor time: the wall clock tells of the neighbours on the
 * machine. They still share its caches and cores and only ever add, so that the fastest tenth of each says most of the code: the
 * figure is the ratio of the two tenth percentiles. The middle half of the ratios of the single rounds is told beside it and shows
 * how quiet the machine was. The order changes from round to round.
 */

/** @param {readonly number[]} list @param {number} part 0 to 1 */
export function quantile(list, part) {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

/** @param {NodeJS.CpuUsage} [since] @returns {number} nanoseconds of processor time of this process, all its threads */
export function processorTime(since) {
  const { user, system } = process.cpuUsage(since);
  return (user + system) * 1000;
}

/** @param {() => unknown} run @param {number} times @returns {number} nanoseconds of processor time for one */
function timed(run, times) {
  const start = process.cpuUsage();
  for (let i = 0; i < times; i += 1) run();
  return processorTime(start) / times;
}

/**
 * @typedef {object} Pair
 * @property {number} ratio first over second, of their tenth percentiles
 * @property {number} low lower quartile of the ratios
 * @property {number} high upper quartile
 * @property {number} first nanoseconds for one, tenth percentile
 * @property {number} second nanoseconds for one, tenth percentile
 */

/**
 * @param {() => unknown} first @param {() => unknown} second
 * @param {{ times?: number, secondTimes?: number, rounds?: number, warm?: number }} [options] calls in a round; rounds; rounds
 *   not counted
 * @returns {Pair}
 */
export function paired(first, second, { times = 1, secondTimes = times, rounds = 41, warm = 8 } = {}) {
  /** @type {number[]} */ const ratios = [];
  /** @type {number[]} */ const ours = [];
  /** @type {number[]} */ const theirs = [];
  for (let round = 0; round < rounds + warm; round += 1) {
    let [a, b] = [0, 0];
    if (round % 2 === 0) {
      a = timed(first, times);
      b = timed(second, secondTimes);
    } else {
      b = timed(second, secondTimes);
      a = timed(first, times);
    }
    if (round < warm) continue;
    ratios.push(a / b);
    ours.push(a);
    theirs.push(b);
  }
  return {
    ratio: quantile(ours, 0.1) / quantile(theirs, 0.1),
    low: quantile(ratios, 0.25),
    high: quantile(ratios, 0.75),
    first: quantile(ours, 0.1),
    second: quantile(theirs, 0.1),
  };
}

/** @param {number} ns */
export function shown(ns) {
  if (ns < 1_000) return `${ns.toPrecision(3)} ns`;
  if (ns < 1_000_000) return `${(ns / 1_000).toPrecision(3)} µs`;
  if (ns < 1e9) return `${(ns / 1e6).toPrecision(3)} ms`;
  return `${(ns / 1e9).toPrecision(3)} s`;
}

/**
 * One line of the table.
 * @typedef {object} Row
 * @property {string} what what was measured
 * @property {string} against what with
 * @property {string} reach what it should reach; empty where it is only told
 * @property {string} found what it came to
 * @property {boolean | null} met null where there is nothing to reach
 * @property {string} detail times and spread
 */

/** @param {readonly Row[]} rows prints them for `all.mjs`, or for people when run alone */
export function tell(rows) {
  if (process.send !== undefined) process.send(rows);
  else for (const row of rows) console.log(lineOf(row));
}

/** @param {Row} row */
export function lineOf({ what, against, reach, found, met, detail }) {
  const verdict = met === null ? "told" : met ? "met" : "MISSED";
  return `${what} | ${against} | ${reach || "–"} | ${found} | ${verdict} | ${detail}`;
}

/** @param {Pair} pair */
export const spread = ({ low, high, first, second }) =>
  `${shown(first)} against ${shown(second)}; middle half of the ratios ${low.toPrecision(3)} to ${high.toPrecision(3)}`;

/**
 * @param {string} what @param {string} against @param {Pair} pair @param {number | null} most largest ratio allowed
 * @returns {Row}
 */
export function atMost(what, against, pair, most) {
  return {
    what,
    against,
    reach: most === null ? "" : `≤ ${most}×`,
    found: `${pair.ratio.toPrecision(3)}×`,
    met: most === null ? null : pair.ratio <= most,
    detail: spread(pair),
  };
}

/**
 * @param {string} what @param {string} against @param {Pair} pair ours first @param {number} least how many times faster
 * @returns {Row}
 */
export function faster(what, against, pair, least) {
  const times = 1 / pair.ratio;
  return {
    what,
    against,
    reach: `≥ ${least}× faster`,
    found: `${times.toPrecision(3)}× faster`,
    met: times >= least,
    detail: `${shown(pair.first)} against ${shown(pair.second)}; middle half ${(1 / pair.high).toPrecision(3)} to ${(1 / pair.low).toPrecision(3)}`,
  };
}
