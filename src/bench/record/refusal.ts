/** What is wrong with a record, in our words instead of the schema library's. */
import { type ErrorCode, type Issue, issue } from "../../quantity/index.ts";

const TYPE_NAMES: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  object: "a record with fields",
  array: "a list",
};

/** Most unknown fields of one record that are listed, so that the message has room for what else is wrong with it. */
const MOST_FIELDS = 10;

/** An issue as the schema library finds it. */
export type RawIssue = {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly input?: unknown;
  readonly [key: string]: unknown;
};

function limitWords(raw: RawIssue): string {
  const counted = raw["origin"] === "string" ? " characters" : raw["origin"] === "array" ? " entries" : "";
  return raw.code === "too_small"
    ? `at least ${raw["minimum"]}${counted}`
    : `at most ${raw["maximum"]}${counted}`;
}

/** One raw issue in our words; an unknown-keys issue names several fields. */
export function ourIssues(raw: RawIssue, prefix: readonly PropertyKey[] = []): Issue[] {
  const parts = [...prefix, ...raw.path].map(String);
  const path = parts.join(".") || "record";
  const received = raw.input;
  const make = (code: ErrorCode, expected: string, at = path, seen = received): Issue =>
    issue({ code, path: at, expected, received: seen });
  const found = (raw["params"] as { found?: Issue } | undefined)?.found;
  // Its sentence says the unit itself.
  if (found !== undefined) return [make(found.code, found.expected)];
  switch (raw.code) {
    case "invalid_type": {
      const expected = TYPE_NAMES[raw["expected"] as string] as string;
      return [
        make(
          received === undefined
            ? "missing"
            : typeof received !== "number"
              ? "wrong-type"
              : Number.isFinite(received)
                ? "out-of-range"
                : "not-a-number",
          expected,
        ),
      ];
    }
    case "unrecognized_keys": {
      const keys = raw["keys"] as string[];
      // The schema says which fields there are.
      const allowed = String(raw["message"]);
      const told = keys
        .slice(0, MOST_FIELDS)
        .map((key) => make("unknown-field", allowed, [...parts, key || '""'].join("."), key));
      const more = keys.length - told.length;
      if (more === 0) return told;
      return [...told, make("unknown-field", allowed, path, `and ${more} more`)];
    }
    case "invalid_value":
      return [
        make(
          received === undefined ? "missing" : "unknown-name",
          `one of ${(raw["values"] as unknown[]).join(", ")}`,
        ),
      ];
    case "too_small":
    case "too_big": {
      // An empty text or list is one that was left out; a list of the wrong length is another slip.
      const empty = received === "" || (Array.isArray(received) && received.length === 0);
      return [make(empty ? "missing" : "out-of-range", limitWords(raw))];
    }
    // Leads are the one union, and no check but these is in a schema.
    default: {
      // The alternative that got furthest in says most.
      const inner = (raw["errors"] as RawIssue[][])
        .flat()
        .filter((one) => one.path.length > 0 || one.code === "unrecognized_keys");
      if (inner.length > 0) return inner.flatMap((one) => ourIssues(one, parts));
      return [
        make(
          received === undefined ? "missing" : "wrong-type",
          `"unknown", "taken off" or a record { shorted: … }`,
        ),
      ];
    }
  }
}
