/** The error that a call throws, for tests that look at its code and argument. */
import { type ElectroheatError, type Issue, isElectroheatError } from "electroheat/quantity";
import { expect } from "vitest";

/** Whatever is refused: a reader learns where, what stood there and what may, in whole words and with no blank in it. */
export function expectTold(issues: readonly Issue[]): void {
  for (const { path, expected, received, unit = "none" } of issues) {
    const said = `${path}: ${expected}, got ${received} ${unit}`;
    expect([path, expected, received, unit], said).not.toContain("");
    expect(expected, said).not.toMatch(/undefined|NaN|\(\)|^\s|\s$| {2}|, ,|one of (?:\(|$)/);
  }
}

export function caught(body: () => unknown): ElectroheatError {
  try {
    body();
  } catch (error) {
    if (isElectroheatError(error)) {
      expectTold(error.issues);
      return error;
    }
    throw error;
  }
  throw new Error("nothing was thrown");
}
