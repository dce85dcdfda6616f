/**
 * Order by size where equal by symmetry is not equal to the last bit: which of two twins is larger then hangs on how a host rounds
 * `exp` or `pow`, and a report would name another branch as the worst on another machine.
 */
import { checkNonNegative, fail, givenList } from "../quantity/index.ts";

/**
 * Relative difference up to which two computed values count as equal: far above what rounding and the tolerance of an iteration
 * leave (about 1e-10), far below what anything measured can tell.
 * @source float64 carries 2^−53, iterations of this library end at about 1e-10; the rest is margin
 * @since 0.1.0
 */
export const EQUAL_WITHIN = 1e-9;

/**
 * Sorts from large to small. Items whose sizes agree to {@link EQUAL_WITHIN} of the largest of them count as equal and keep their
 * order in the list, so that every host names the same one first. The list itself is untouched.
 * @param items - anything
 * @param sizeOf - gives the finite number an item is sorted by, not below 0
 * @returns a new list
 * @throws ElectroheatError `missing`, `wrong-type`, `not-a-number`, `out-of-range`: no list, no function, or a size that is no finite
 *   number from 0 up
 * @source stable sorting; the width of a tie is this library's own
 * @example
 * ```ts
 * largestFirst([{ id: "L1", power: 0.1 + 0.2 }, { id: "L2", power: 7 }, { id: "L3", power: 0.3 }], ({ power }) => power)
 *   .map(({ id }) => id) // => ["L2", "L1", "L3"]
 * ```
 * @since 0.1.0
 */
export function largestFirst<T>(items: readonly T[], sizeOf: (item: T) => number): T[] {
  givenList(items, "items");
  if (typeof sizeOf !== "function") {
    const code = sizeOf === undefined || sizeOf === null ? "missing" : "wrong-type";
    fail({ code, path: "sizeOf", expected: "a function that gives the size of an item", received: sizeOf });
  }
  const sizes: number[] = [];
  let falls = true;
  for (let i = 0; i < items.length; i += 1) {
    const size = sizeOf(items[i] as T);
    // The path is text built only on failure.
    if (!(Number.isFinite(size) && size >= 0)) checkNonNegative(`items.${i}`, size);
    if (i > 0 && size > (sizes[i - 1] as number)) falls = false;
    sizes.push(size);
  }
  const order = sizes.map((_, i) => i);
  // What falls already is in order: of ties the first comes first.
  if (!falls) {
    order.sort((a, b) => (sizes[b] as number) - (sizes[a] as number) || a - b);
    // Tied to the largest of the run, not to the neighbour: a long slope of small steps is no tie.
    for (let start = 0, end = 0; start < order.length; start = end) {
      const least = (sizes[order[start] as number] as number) * (1 - EQUAL_WITHIN);
      while (end < order.length && (sizes[order[end] as number] as number) >= least) end += 1;
      if (end - start > 1) order.splice(start, end - start, ...order.slice(start, end).sort((a, b) => a - b));
    }
  }
  return order.map((i) => items[i] as T);
}
