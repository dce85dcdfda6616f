/**
 * Room for numbers. Engines put a typed array of more than a few numbers outside their heap, each with a block and a record
 * of its own, at ten times the cost of a view on a block that is there already. The inference makes thousands, so they are
 * views on blocks handed out from front to back, never twice: no two share anything, and a block goes with its last view.
 */

/** Numbers in a block. */
const BLOCK = 8192;

let block = new ArrayBuffer(0);
let taken = 0;

/** That many zeros. */
export function floats(count: number): Float64Array {
  const bytes = count * Float64Array.BYTES_PER_ELEMENT;
  if (taken + bytes > block.byteLength) {
    block = new ArrayBuffer(Math.max(bytes, BLOCK * Float64Array.BYTES_PER_ELEMENT));
    taken = 0;
  }
  const view = new Float64Array(block, taken, count);
  taken += bytes;
  return view;
}

/** A copy of the first numbers of a list, of all if left out. */
export function copied(values: Float64Array, count: number = values.length): Float64Array {
  const copy = floats(count);
  for (let i = 0; i < count; i += 1) copy[i] = values[i] as number;
  return copy;
}

/** `Float64Array.from` with a function, which engines take ten times as long over as a loop. */
export function filled(count: number, at: (i: number) => number): Float64Array {
  const values = floats(count);
  for (let i = 0; i < count; i += 1) values[i] = at(i);
  return values;
}

/** The same for whole numbers. */
export function filledWhole(count: number, at: (i: number) => number): Int32Array {
  const values = new Int32Array(count);
  for (let i = 0; i < count; i += 1) values[i] = at(i);
  return values;
}

/** Copies all of `from` into `into`, of the same length; `set` takes longer on a few numbers. */
export function copyInto(into: Float64Array, from: Float64Array): void {
  for (let i = 0; i < from.length; i += 1) into[i] = from[i] as number;
}
