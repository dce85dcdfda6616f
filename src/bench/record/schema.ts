/** The boundary: a record of unknown shape becomes checked quantities, or one error that lists everything wrong with it. */
import * as z from "zod/mini";
import { type Celsius, fail, failAll, type LineVolts, type Watts } from "../../quantity/index.ts";
import { count, exactly, LINE_VOLTAGES, list, quantity, ratio, type Schema, text } from "./fields.ts";
import type { ParsedRecord } from "./parsed.ts";
import { instrumentsSchema, readingsSchema, supplySchema } from "./readingsSchema.ts";
import { ourIssues, type RawIssue } from "./refusal.ts";
import { barsSchema, fasteningSchema, feedSchema, processSchema } from "./siteSchema.ts";

/** As people write them: in capitals or not, by the letter on the drawing. */
const WRITTEN: Readonly<Record<string, string>> = { y: "wye", Δ: "delta", δ: "delta" };

const connectionSchema = (): Schema<"star" | "delta"> =>
  z.pipe(
    z.pipe(
      z.transform((written: unknown) => {
        if (typeof written !== "string") return written;
        const name = written.trim().toLowerCase();
        const known = WRITTEN[name] ?? name;
        return known === "star" || known === "delta" || known === "wye" ? known : written;
      }),
      z.enum(["star", "delta", "wye"]),
    ),
    z.transform((name): "star" | "delta" => (name === "delta" ? "delta" : "star")),
  );

const wiringSchema = (): Schema<ParsedRecord["wiring"]> =>
  exactly({
    banks: z
      .array(
        exactly({
          id: text(),
          connection: connectionSchema(),
          elementsInParallel: z.optional(count()),
          elementsInSeries: z.optional(count()),
          power: z.optional(quantity<Watts>("W")),
        }),
      )
      .check(z.minLength(1), z.maxLength(1000)),
    starPoints: z.optional(z.enum(["tied", "separate"])),
    neutral: z.optional(z.enum(["connected", "floating"])),
    joints: z.optional(
      list(
        exactly({
          id: text(),
          at: text(),
          behind: z.optional(z.array(text()).check(z.minLength(1), z.maxLength(1000))),
        }),
        1000,
      ),
    ),
  });

const identitySchema = (): Schema<NonNullable<ParsedRecord["identity"]>> =>
  exactly({
    equipment: z.optional(text()),
    serialNumber: z.optional(text()),
    location: z.optional(text()),
    workOrder: z.optional(text()),
    technician: z.optional(text()),
    date: z.optional(text()),
  });

/** Built on first use: a schema made at import would cost everyone who imports the room. */
function makeSchema(): Schema<ParsedRecord> {
  return exactly({
    title: text(),
    identity: z.optional(identitySchema()),
    nameplate: z.optional(
      exactly({ power: quantity<Watts>("W"), voltage: quantity<LineVolts>("V", LINE_VOLTAGES) }),
    ),
    wiring: wiringSchema(),
    supply: z.optional(supplySchema()),
    temperatureFactor: z.optional(ratio(0.5, 10)),
    tolerance: z.optional(exactly({ low: ratio(-1, 0), high: ratio(0, 1) })),
    instruments: z.optional(instrumentsSchema()),
    asFound: z.optional(readingsSchema()),
    asLeft: z.optional(readingsSchema()),
    hardware: z.optional(list(fasteningSchema(), 1000)),
    bars: z.optional(list(barsSchema(), 1000)),
    feed: z.optional(feedSchema()),
    ambient: z.optional(quantity<Celsius>("°C")),
    process: z.optional(processSchema()),
  });
}

let schema: Schema<ParsedRecord> | undefined;

/** Reads a record, or throws one error that lists every offending path. */
export function parseRecord(record: unknown): ParsedRecord {
  schema ??= makeSchema();
  const parsed = z.safeParse(schema, record, { reportInput: true });
  if (parsed.success) return parsed.data;
  failAll(parsed.error.issues.flatMap((raw) => ourIssues(raw as unknown as RawIssue)));
  // A schema that refuses says why; without a reason the record is a wrong one all the same.
  return fail({ code: "wrong-type", path: "record", expected: "a bench record", received: record });
}
