/** Asks the lookups of other rooms in the record's own names: a slip of the pen is refused, a limit of a source is an answer. */
import { type ErrorCode, type Issue, isElectroheatError } from "../../quantity/index.ts";

/** What came of a question: an answer, or why the source has none. */
export type Asked<T> =
  | { readonly found: T; readonly why: null }
  | { readonly found: null; readonly why: string; readonly refused: Pick<Issue, "code" | "path"> };

/** Beyond what a source covers, or at odds with it: the record is legible, and the reader must be told. */
const ANSWERS: readonly ErrorCode[] = ["outside-table", "out-of-range", "inconsistent"];

/** The record's name of a room's argument, where it is another one; `*` stands for all that are not named. */
export type FieldNames = Readonly<Record<string, string>>;

/**
 * Runs a lookup. What its source does not cover comes back as text; any other refusal is kept as an issue under the record's path
 * and then neither answer nor reason matters, for the record will be refused.
 */
export function ask<T>(found: Issue[], names: FieldNames, run: () => T): Asked<T> {
  try {
    return { found: run(), why: null };
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    const refused = { code: error.code, path: error.argument };
    if (!error.issues.every(({ code }) => ANSWERS.includes(code))) refer(found, names, error.issues);
    return { found: null, why: error.message, refused };
  }
}

/** Runs a check that has no answer but its value: every refusal is an issue under the record's path. */
export function insist<T>(found: Issue[], names: FieldNames, run: () => T): T | null {
  try {
    return run();
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    refer(found, names, error.issues);
    return null;
  }
}

function refer(found: Issue[], names: FieldNames, issues: readonly Issue[]): void {
  for (const one of issues) {
    const path = names[one.path] ?? names["*"] ?? one.path;
    // Messages begin with the argument's name, which the record knows by another one. Two lookups may refuse the same slip.
    const message = one.message.startsWith(one.path)
      ? path + one.message.slice(one.path.length)
      : one.message;
    if (!found.some((known) => known.path === path && known.code === one.code))
      found.push({ ...one, path, message });
  }
}
