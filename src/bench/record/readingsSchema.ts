/** The shape of what was measured: instruments, supply, and the readings of one day. */
import * as z from "zod/mini";
import type { Amperes, Kelvins, LineVolts, Ohms, Open, Volts } from "../../quantity/index.ts";
import {
  exactly,
  LINE_VOLTAGES,
  list,
  quantity,
  ratio,
  resistanceOrAbove,
  type Schema,
  text,
} from "./fields.ts";
import type {
  ParsedInstrument,
  ParsedOhmmeter,
  ParsedReadings,
  ParsedRecord,
  ParsedSupply,
} from "./parsed.ts";

/** Voltages between lines. */
/** From a lost line to a live one a meter may show nothing. */
const SUPPLY_VOLTAGES = { ...LINE_VOLTAGES, zero: true } as const;

export const supplySchema = (): Schema<ParsedSupply> =>
  exactly({
    v12: quantity<LineVolts>("V", SUPPLY_VOLTAGES),
    v23: quantity<LineVolts>("V", SUPPLY_VOLTAGES),
    v31: quantity<LineVolts>("V", SUPPLY_VOLTAGES),
  });

const instrument = <Q>(unit: "A" | "V" | "Ω"): Schema<ParsedInstrument<Q>> =>
  exactly({
    ofReading: ratio(0, 0.5),
    digits: ratio(0, 1000),
    resolution: z.optional(quantity<Q>(unit)),
  });

const ohmmeter = (): Schema<ParsedOhmmeter> =>
  exactly({
    ofReading: ratio(0, 0.5),
    digits: ratio(0, 1000),
    resolution: z.optional(quantity<Ohms>("Ω")),
    leads: z.union([
      z.enum(["unknown", "taken off"]),
      exactly({ shorted: quantity<Ohms>("Ω", { zero: true }) }),
    ]),
  });

/** The instruments. */
export const instrumentsSchema = (): Schema<NonNullable<ParsedRecord["instruments"]>> =>
  exactly({
    ohmmeter: z.optional(ohmmeter()),
    clamp: z.optional(instrument<Amperes>("A")),
    voltmeter: z.optional(instrument<Volts>("V")),
    millivoltmeter: z.optional(instrument<Volts>("V")),
    insulationTester: z.optional(instrument<Ohms>("Ω")),
  });

/** Readings of one day. */
export const readingsSchema = (): Schema<ParsedReadings> =>
  exactly({
    supply: z.optional(supplySchema()),
    ohms: z.optional(
      list(
        exactly({
          from: text(),
          to: text(),
          reads: quantity<Ohms | Open>("Ω", { open: true, zero: true }),
          alone: z.optional(text()),
          ownStuds: z.optional(z.boolean()),
        }),
      ),
    ),
    currents: z.optional(
      list(
        exactly({
          at: text(),
          into: z.optional(text()),
          reads: quantity<Amperes>("A", { zero: true }),
        }),
      ),
    ),
    insulation: z.optional(
      list(
        exactly({
          from: text(),
          reads: resistanceOrAbove(),
          testVoltage: z.optional(quantity<Volts>("V")),
        }),
      ),
    ),
    joints: z.optional(
      list(
        exactly({
          id: text(),
          drop: z.optional(quantity<Volts>("V", { zero: true })),
          current: z.optional(quantity<Amperes>("A")),
          rise: z.optional(quantity<Kelvins>("K", { zero: true })),
          loadRatio: z.optional(z.number().check(z.gt(0), z.lte(1.5))),
        }),
      ),
    ),
  });
