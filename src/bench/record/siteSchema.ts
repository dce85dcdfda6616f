/** The shape of hardware, bars, feed and process in a record. */
import * as z from "zod/mini";
import type {
  Amperes,
  Celsius,
  JoulesPerKelvin,
  Meters,
  NewtonMeters,
  Seconds,
  WattsPerKelvin,
} from "../../quantity/index.ts";
import { count, exactly, quantity, ratio, type Schema, text } from "./fields.ts";
import type { ParsedBars, ParsedFastening, ParsedFeed, ParsedProcess } from "./parsed.ts";

/** Studs, nuts or screws of one kind. */
export const fasteningSchema = (): Schema<ParsedFastening> =>
  exactly({
    id: text(),
    thread: text(),
    count: z.optional(count()),
    strength: z.optional(exactly({ standard: text(), grade: text() })),
    condition: z.optional(text()),
    makerTorque: z.optional(quantity<NewtonMeters>("N·m")),
    applied: z.optional(quantity<NewtonMeters>("N·m")),
    renew: z.optional(z.boolean()),
  });

/** Jumper bars of one kind. */
export const barsSchema = (): Schema<ParsedBars> =>
  exactly({
    id: text(),
    count: z.optional(count()),
    studs: count(2),
    pitch: quantity<Meters>("m"),
    overhang: quantity<Meters>("m"),
    width: quantity<Meters>("m"),
    thickness: quantity<Meters>("m"),
    hole: z.optional(quantity<Meters>("m")),
    kerf: z.optional(quantity<Meters>("m", { zero: true })),
  });

/** Words of the trade for the metal of a conductor, in our tables' spelling; any other stays as it is. */
const METALS: Readonly<Record<string, string>> = {
  cu: "copper",
  copper: "copper",
  al: "aluminum",
  aluminium: "aluminum",
  aluminum: "aluminum",
};

const metal = (): Schema<string> =>
  z.pipe(
    text(),
    z.transform((written: string) => METALS[written.trim().toLowerCase()] ?? written),
  );

/** What feeds the module. */
export const feedSchema = (): Schema<ParsedFeed> =>
  exactly({
    edition: text(),
    equipment: z.optional(text()),
    conductor: z.optional(text()),
    material: z.optional(metal()),
    installation: text(),
    insulation: text(),
    terminals: z.optional(quantity<Celsius>("°C")),
    conductorsPerLine: z.optional(count(1, 100)),
    grouped: z.optional(count()),
    device: z.optional(quantity<Amperes>("A")),
    deviceKind: z.optional(z.enum(["circuit-breaker", "gG fuse"])),
  });

/** What the module heats. */
export const processSchema = (): Schema<ParsedProcess> =>
  exactly({
    target: quantity<Celsius>("°C"),
    lossConductance: quantity<WattsPerKelvin>("W/K"),
    heatCapacity: quantity<JoulesPerKelvin>("J/K"),
    shift: quantity<Seconds>("s"),
    shifts: z.optional(count()),
    tariff: z.optional(ratio(0, 1e12)),
  });
