/** A check of this room's own. */
import { fail } from "../quantity/index.ts";

/** Text that is not blank: the name or source of a value of the caller's own. */
export function checkText(path: string, value: unknown): void {
  if (typeof value === "string" && value.trim() !== "") return;
  const missing = value === undefined || value === null || typeof value === "string";
  fail({ code: missing ? "missing" : "wrong-type", path, expected: "text", received: value });
}
