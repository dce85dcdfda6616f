/**
 * Invented modules as columns, and what one of them draws: a delta of three branches behind a joint. The same numbers on every
 * machine.
 */
import { powerFromVoltageAndResistance } from "electroheat/element";
import { jointPower } from "electroheat/joint";
import { isElectroheatError } from "electroheat/quantity";

/** Fields of a record, in the order of the columns. */
export const FIELDS = /** @type {const} */ ([
  "lineVoltage",
  "r12",
  "r23",
  "r31",
  "jointCurrent",
  "jointResistance",
]);

/** @typedef {Record<typeof FIELDS[number], number>} ModuleRecord one module: V, Ω, Ω, Ω, A, Ω; a negative resistance is a slip */

/** @param {number} row @returns {ModuleRecord} */
export function record(row) {
  // A fixed walk through the ranges; one record in a thousand has a slip in it, as records have.
  const part = (/** @type {number} */ step) => ((row * step) % 9973) / 9973;
  return {
    lineVoltage: 460 + 40 * part(7919),
    r12: 10 + 5 * part(104729),
    r23: 10 + 5 * part(1299709),
    r31: row % 1000 === 999 ? -1 : 10 + 5 * part(15485863),
    jointCurrent: 40 + 40 * part(32452843),
    jointResistance: 1e-4 + 9e-4 * part(49979687),
  };
}

/**
 * Heat of the module without what its joint takes (W), or NaN where the record is refused.
 * @param {number} lineVoltage @param {number} r12 @param {number} r23 @param {number} r31
 * @param {number} jointCurrent @param {number} jointResistance
 */
export function moduleHeat(lineVoltage, r12, r23, r31, jointCurrent, jointResistance) {
  const at = (/** @type {number} */ resistance) =>
    powerFromVoltageAndResistance({ voltage: tagged(lineVoltage), resistance: tagged(resistance) });
  try {
    const lost = jointPower({ current: tagged(jointCurrent), resistance: tagged(jointResistance) });
    return at(r12) + at(r23) + at(r31) - lost;
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return Number.NaN;
  }
}

/** Numbers of a table have no unit to the compiler; FIELDS says which they are in. @param {number} value @returns {any} */
const tagged = (value) => value;

/** @param {number} rows @param {(bytes: number) => ArrayBuffer | SharedArrayBuffer} [memory] where the columns live */
export function columnsOf(rows, memory = (bytes) => new ArrayBuffer(bytes)) {
  const columns = FIELDS.map(() => new Float64Array(memory(rows * 8)));
  for (let row = 0; row < rows; row += 1) {
    const one = record(row);
    FIELDS.forEach((field, k) => {
      const column = columns[k];
      if (column !== undefined) column[row] = one[field];
    });
  }
  return columns;
}

/** The plain loop that everything else is held against. @param {readonly Float64Array[]} columns @param {Float64Array} out */
export function plainLoop(columns, out, from = 0, to = out.length) {
  const [v, a, b, c, i, r] =
    /** @type {[Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array]} */ (
      columns
    );
  for (let row = from; row < to; row += 1) {
    out[row] = moduleHeat(
      /** @type {number} */ (v[row]),
      /** @type {number} */ (a[row]),
      /** @type {number} */ (b[row]),
      /** @type {number} */ (c[row]),
      /** @type {number} */ (i[row]),
      /** @type {number} */ (r[row]),
    );
  }
  return out;
}
