/** Collects what several checks find, so that a record is refused once with everything that is wrong with it. */
import { type Issue, isElectroheatError } from "../../quantity/index.ts";

/** Runs a check; what it throws is kept, with its path put under `prefix`. */
export function collect<T>(found: Issue[], prefix: string, run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    // Paths and messages both begin with the argument's name, which the record knows by a longer one.
    for (const one of error.issues) {
      found.push({ ...one, path: `${prefix}${one.path}`, message: `${prefix}${one.message}` });
    }
    return undefined;
  }
}
