/** What a branch may be called, and what it may be. */
import { fail } from "../quantity/index.ts";

/** What a branch can be. */
export const ROLES = ["element", "joint", "jumper bar", "conductor"] as const;

/** Requires a name. */
export function checkName(path: string, value: unknown): void {
  if (value === undefined || value === null || value === "")
    fail({ code: "missing", path, expected: "a name", received: value });
  if (typeof value !== "string")
    fail({ code: "wrong-type", path, expected: "a name (text)", received: value });
}
