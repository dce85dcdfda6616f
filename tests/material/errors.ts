/** The error a call throws, for tests of bad input. */
import type { ElectroheatError, ErrorCode } from "electroheat/quantity";

export function caught(run: () => unknown): ElectroheatError {
  try {
    run();
  } catch (error) {
    return error as ElectroheatError;
  }
  throw new Error("nothing was thrown");
}

export function codeOf(run: () => unknown): ErrorCode {
  return caught(run).code;
}
