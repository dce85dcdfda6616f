/** Searches that may end outside a table: the issue is then a value like any other. */
import { type Issue, isElectroheatError } from "../quantity/index.ts";

/** Runs a search that may end outside a table; any other error goes on. */
export function insideTable<T>(search: () => T): T | Issue {
  try {
    return search();
  } catch (error) {
    if (isElectroheatError(error) && error.code === "outside-table") return error.issues[0] as Issue;
    throw error;
  }
}

export function isIssue(found: object): found is Issue {
  return "expected" in found;
}
