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
  const sized = items.map((item, i) => {
    const size = sizeOf(item);
    checkNonNegative(`items.${i}`, size);
    return { item, i, size };
  });
  sized.sort((a, b) => b.size - a.size || a.i - b.i);
  // Tied to the largest of the run, not to the neighbour: a long slope of small steps is no tie.
  for (let start = 0, end = 0; start < sized.length; start = end) {
    const least = (sized[start] as { size: number }).size * (1 - EQUAL_WITHIN);
    while (end < sized.length && (sized[end] as { size: number }).size >= least) end += 1;
    if (end - start > 1)
      sized.splice(start, end - start, ...sized.slice(start, end).sort((a, b) => a.i - b.i));
  }
  return sized.map(({ item }) => item);
}
