/**
 * What every vector gives, as text that tells every bit: numbers as the shortest decimal that reads back the same, −0 told from 0.
 * Plain enough to run in any host; the caller brings the vectors and the rooms.
 */

/** @param {unknown} value @returns {string} */
export function exactText(value) {
  return JSON.stringify(value, (_, one) => {
    if (typeof one !== "number") return one === undefined ? "undefined" : one;
    if (Object.is(one, -0)) return "-0";
    return Number.isFinite(one) ? one : String(one);
  });
}

/**
 * @param {readonly { id: string, call: string, input?: unknown, inputs?: readonly unknown[] }[]} vectors
 * @param {Record<string, Record<string, unknown>>} rooms
 * @returns {Record<string, string>} result or error code of each vector by its id
 */
export function vectorResults(vectors, rooms) {
  /** @type {Record<string, string>} */
  const found = {};
  for (const { id, call, input, inputs } of vectors) {
    const [room = "", name = ""] = call.split(".");
    const calculation = /** @type {(...given: readonly unknown[]) => unknown} */ (rooms[room]?.[name]);
    try {
      found[id] = exactText(calculation(...structuredClone(inputs ?? [input])));
    } catch (error) {
      const { name: kind, code } = /** @type {{ name: string, code?: string }} */ (error);
      // The host's own errors (a missing function, a stack overflow) must show, not pass as a refusal.
      found[id] = kind === "ElectroheatError" ? `refused: ${code}` : `FAILED: ${String(error)}`;
    }
  }
  return found;
}

/** @param {string} text @returns {unknown} the result, or the text itself where it was a refusal */
function parsed(text) {
  return text.startsWith("refused:") || text.startsWith("FAILED:") || text === "undefined"
    ? text
    : JSON.parse(text);
}

/**
 * Walks two results side by side. @param {unknown} a @param {unknown} b
 * @param {(a: number, b: number) => void} onNumbers @param {(a: unknown, b: unknown) => void} onOther called where they differ
 */
function walk(a, b, onNumbers, onOther) {
  if (typeof a === "number" && typeof b === "number") onNumbers(a, b);
  else if (typeof a === "object" && typeof b === "object" && a !== null && b !== null) {
    const [x, y] = /** @type {[Record<string, unknown>, Record<string, unknown>]} */ ([a, b]);
    if (Object.keys(x).join() !== Object.keys(y).join()) onOther(a, b);
    else for (const key of Object.keys(x)) walk(x[key], y[key], onNumbers, onOther);
  } else if (a !== b) onOther(a, b);
}

/**
 * Where two hosts differ. A number is compared to itself, or to the largest number of its result where it is a billion times
 * smaller: what is left when equal terms cancel has no digits of its own.
 * @param {Record<string, string>} ours @param {Record<string, string>} theirs
 * @returns {{ id: string, largest: number, numbers: number, choices: string[] }[]} each vector that differs: the largest relative
 *   difference of its numbers, how many of them differ, and what differs that is not a number (of two equal branches another is
 *   called the worst)
 */
export function differences(ours, theirs) {
  const found = [];
  for (const id of new Set([...Object.keys(ours), ...Object.keys(theirs)])) {
    const [a, b] = [ours[id] ?? "", theirs[id] ?? ""];
    if (a === b) continue;
    let top = 0;
    /** @type {[number, number][]} */
    const pairs = [];
    /** @type {string[]} */
    const choices = [];
    walk(
      parsed(a),
      parsed(b),
      (x, y) => {
        top = Math.max(top, Math.abs(x), Math.abs(y));
        if (!Object.is(x, y)) pairs.push([x, y]);
      },
      (x, y) => choices.push(`${String(x)} / ${String(y)}`),
    );
    const apart = pairs.map(([x, y]) => Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y), 1e-9 * top));
    found.push({ id, largest: Math.max(0, ...apart), numbers: pairs.length, choices });
  }
  return found;
}
