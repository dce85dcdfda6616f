/** Runs a vector: the rules are those of shared/README.md, and nothing else. */
import { isElectroheatError } from "electroheat/quantity";
import type { Vector } from "./shared.ts";

/**
 * Value at a path of a result. `""` is the result itself; names and item numbers are separated by dots;
 * `[key=value]` picks the first item of a list whose key, as text, is the value.
 */
export function valueAt(result: unknown, path: string): unknown {
  const step = /\.?([^.[\]]+)|\[([^\]=]+)=([^\]]*)\]/y;
  let at = result;
  while (step.lastIndex < path.length) {
    const from = step.lastIndex;
    const match = step.exec(path);
    if (match === null) throw new Error(`${path}: cannot be read from "${path.slice(from)}"`);
    const [shown, name, key, value] = match;
    if (at === null || typeof at !== "object") throw new Error(`${path}: nothing at "${shown}"`);
    if (name !== undefined) {
      if (!Object.hasOwn(at, name)) throw new Error(`${path}: no field ${name}`);
      at = (at as Record<string, unknown>)[name];
    } else {
      const items: readonly Record<string, unknown>[] = Array.isArray(at) ? at : [];
      const found = items.find((item) => String(item[key as string]) === value);
      if (found === undefined) throw new Error(`${path}: no item with ${key} = ${value}`);
      at = found;
    }
  }
  return at;
}

function isNear(got: number, value: number, tolerance: Vector["tolerance"]): boolean {
  const allowed = Math.max(tolerance.absolute ?? 0, (tolerance.relative ?? 0) * Math.abs(value));
  return Math.abs(got - value) <= allowed;
}

export interface Outcome {
  /** What did not agree, one line each; empty when the vector holds. */
  readonly failures: readonly string[];
  /** Numbers compared. */
  readonly compared: number;
}

/** Calls the function of a vector on the rooms given and holds the result against what is expected. */
export function runVector(vector: Vector, rooms: Readonly<Record<string, unknown>>): Outcome {
  const [roomName, functionName] = vector.call.split(".") as [string, string];
  const room = rooms[roomName] as Record<string, unknown> | undefined;
  if (room === undefined) return { failures: [`no room ${roomName}`], compared: 0 };
  const call = room[functionName];
  if (typeof call !== "function") return { failures: [`no function ${vector.call}`], compared: 0 };
  // A copy: a function that wrote into its input would spoil the next vector unseen.
  const given = structuredClone(vector.inputs ?? [vector.input]);
  let result: unknown;
  try {
    result = (call as (...args: unknown[]) => unknown)(...given);
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    if (vector.expectedError === undefined) return { failures: [`threw ${error.message}`], compared: 0 };
    const failures = [];
    if (error.code !== vector.expectedError)
      failures.push(`code ${error.code}, expected ${vector.expectedError}`);
    if (vector.expectedArgument !== undefined && error.argument !== vector.expectedArgument) {
      failures.push(`argument ${error.argument}, expected ${vector.expectedArgument}`);
    }
    return { failures, compared: 1 };
  }
  if (vector.expectedError !== undefined)
    return { failures: [`no error; expected ${vector.expectedError}`], compared: 0 };
  const failures: string[] = [];
  for (const [path, value] of Object.entries(vector.expected ?? {})) {
    const got = valueAt(result, path);
    const same =
      typeof value === "number"
        ? typeof got === "number" && isNear(got, value, vector.tolerance)
        : got === value;
    if (!same) failures.push(`${path || "result"}: ${String(got)}, expected ${String(value)}`);
  }
  for (const [path, value] of Object.entries(vector.wrong ?? {})) {
    const got = valueAt(result, path);
    if (typeof got !== "number" || isNear(got, value, vector.tolerance)) {
      failures.push(`${path || "result"}: ${String(got)} is the known wrong ${value}`);
    }
  }
  return {
    failures,
    compared: Object.keys(vector.expected ?? {}).length + Object.keys(vector.wrong ?? {}).length,
  };
}
