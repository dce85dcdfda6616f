/** Refusals of one function told in the words of another. */
import { ElectroheatError, type Issue, isElectroheatError } from "./errors.ts";

/** Calls a function; what it refuses is thrown anew, each issue as `told` tells it. */
export function retold<T>(compute: () => T, told: (one: Issue) => Issue): T {
  try {
    return compute();
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    throw new ElectroheatError(error.issues.map(told) as [Issue, ...Issue[]]);
  }
}

/** What was allowed, with its unit: for a message in another unit. */
export const inItsUnit = ({ expected, unit = "" }: Issue): string => `${expected} ${unit}`.trim();
