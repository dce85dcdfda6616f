/** What a refusal or a warning tells, for tests that hold every figure of it. */
import type { Warning } from "electroheat/quantity";
import { caught } from "./caught.ts";

/** Code, path, what is allowed, what was seen, and the unit of the first issue that a call is refused with. */
export function refusal(
  call: () => unknown,
): readonly [
  string | undefined,
  string | undefined,
  string | undefined,
  string | undefined,
  string | undefined,
] {
  const [issue] = caught(call).issues;
  return [issue?.code, issue?.path, issue?.expected, issue?.received, issue?.unit];
}

/** The same by name, with the argument of the error itself. */
export function refusedAs(call: () => unknown): {
  readonly code: string;
  readonly argument: string;
  readonly unit: string | undefined;
  readonly expected: string | undefined;
  readonly received: string | undefined;
} {
  const { code, argument } = caught(call);
  const [, , expected, received, unit] = refusal(call);
  return { code, argument, unit, expected, received };
}

/** All of a warning but its words. */
export function facts({ message: _, ...rest }: Warning): Omit<Warning, "message"> {
  return rest;
}
