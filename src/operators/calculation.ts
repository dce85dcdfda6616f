/** What an operator works on: any function of one argument with named fields, and how its results are read. */
import { fail, given, isElectroheatError } from "../quantity/index.ts";

/**
 * A function of one object with named fields that gives a number, or an object with numbers in it. Every calculation of
 * the library is one, and so is any function of your own of that shape.
 * @since 0.1.0
 */
export type Calculation<I extends object = object, R = unknown> = (input: I) => R;

/**
 * Names of the fields of an argument that can hold a number.
 * @since 0.1.0
 */
export type NumericField<I> = {
  [K in keyof I]-?: Extract<I[K], number> extends never ? never : K;
}[keyof I] &
  string;

/** Name under which the result of a calculation that gives a bare number is listed. */
export const BARE = "result";

/** Refuses anything but a function, naming the argument. */
export function checkCalculation(calculation: unknown, path = "calculation"): void {
  if (typeof calculation === "function") return;
  const code = calculation === undefined || calculation === null ? "missing" : "wrong-type";
  fail({ code, path, expected: "a function of one object with named fields", received: calculation });
}

/**
 * Reads one output of a result by its name: dots lead into records and lists (`lines.0.current`), and `result` is a bare
 * number itself.
 */
export function outputReader(output: string): (result: unknown) => unknown {
  const steps = output.split(".");
  const single = steps.length === 1 ? output : undefined;
  return (result) => {
    if (typeof result !== "object" || result === null) return output === BARE ? result : undefined;
    if (single !== undefined) return (result as Record<string, unknown>)[single];
    let at: unknown = result;
    for (const step of steps) {
      if (typeof at !== "object" || at === null || !Object.hasOwn(at, step)) return undefined;
      at = (at as Record<string, unknown>)[step];
    }
    return at;
  };
}

/** The outputs asked for; left out, the bare number, or every field of the result that is a number. */
export function outputNames(result: unknown, outputs: readonly string[] | undefined): readonly string[] {
  if (outputs !== undefined) {
    if (!Array.isArray(outputs) || outputs.length === 0 || outputs.some((name) => typeof name !== "string")) {
      fail({
        code: "wrong-type",
        path: "outputs",
        expected: "a list of names of outputs",
        received: outputs,
      });
    }
    const twice = outputs.find((name, i) => outputs.indexOf(name) !== i);
    if (twice !== undefined) {
      fail({ code: "duplicate", path: "outputs", expected: "each output once", received: twice });
    }
    return outputs;
  }
  if (typeof result !== "object" || result === null) return [BARE];
  const found = Object.entries(result).flatMap(([name, value]) => (typeof value === "number" ? [name] : []));
  if (found.length > 0) return found;
  return fail({
    code: "missing",
    path: "outputs",
    expected: "names of outputs, such as `lines.0.current`: no field of the result is a number",
    received: undefined,
  });
}

/** A finite number at an output, or an error that names it. */
export function numberFrom(value: unknown, output: string): number {
  if (typeof value === "number" && Number.isFinite(value)) return value;
  return fail({
    code: value === undefined ? "unknown-name" : "not-a-number",
    path: output,
    expected: "a finite number from the calculation",
    received: value,
  });
}

/** A field that is neither given twice nor inherited; `__proto__` and the like would reach into every object. */
function checkFieldName(path: string, name: string): void {
  if (name !== "__proto__" && name !== "constructor" && name !== "prototype") return;
  fail({ code: "unknown-field", path, expected: "the name of a field of the argument", received: name });
}

/** A fresh argument from the fields that stay as they are. The operator then writes the others into it. */
export function argumentFrom(
  fixed: object | undefined,
  names: readonly string[],
  path: string,
): Record<string, unknown> {
  // Assigned, not spread: an object that grew keeps its fields in itself, and the loops over it run faster.
  const argument: Record<string, unknown> = {};
  if (fixed !== undefined) Object.assign(argument, given(fixed, "fixed"));
  for (const name of names) {
    checkFieldName(path, name);
    if (fixed !== undefined && Object.hasOwn(fixed, name)) {
      fail({ code: "duplicate", path: `fixed.${name}`, expected: `only in ${path}`, received: name });
    }
  }
  return argument;
}

/** What a calculation said when it refused, as one line. */
export function refusalOf(error: unknown): string {
  if (isElectroheatError(error)) return error.message;
  return error instanceof Error ? `${error.name}: ${error.message}` : String(error);
}
