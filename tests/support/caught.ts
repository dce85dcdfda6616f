/** The error that a call throws, for tests that look at its code and argument. */
import { type ElectroheatError, isElectroheatError } from "electroheat/quantity";

export function caught(body: () => unknown): ElectroheatError {
  try {
    body();
  } catch (error) {
    if (isElectroheatError(error)) return error;
    throw error;
  }
  throw new Error("nothing was thrown");
}
