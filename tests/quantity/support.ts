import * as quantity from "electroheat/quantity";
import { isElectroheatError } from "electroheat/quantity";

/** Distance to the next double above |x|. */
export function ulp(x: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, Math.abs(x));
  view.setBigInt64(0, view.getBigInt64(0) + 1n);
  return view.getFloat64(0) - Math.abs(x);
}

type Convert = (value: number) => number;

/** A constructor by its name, as a function on plain numbers. */
export function constructorOf(name: string): Convert {
  return (quantity as unknown as Record<string, Convert>)[name] as Convert;
}

/** The reader of a constructor. */
export function readerOf(name: string): Convert {
  return constructorOf(`to${name[0]?.toUpperCase()}${name.slice(1)}`);
}

/** Names of all constructors: every export that has a reader. */
export function constructorNames(): string[] {
  const names = Object.keys(quantity);
  return names.filter((name) => names.includes(`to${name[0]?.toUpperCase()}${name.slice(1)}`));
}

/** The error's code and message, or a failure when nothing of ours is thrown. */
export function thrown(run: () => unknown): { code: string; message: string; argument: string } {
  try {
    run();
  } catch (error) {
    if (isElectroheatError(error)) return error;
    throw error;
  }
  throw new Error("nothing was thrown");
}
