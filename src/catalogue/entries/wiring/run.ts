/** Notes that the entries of the room `wiring` share: the load, and how a conductor or cable runs. */

/** Edition, installation and the like: names, or an edition of one's own. */
export const NAMES = {} as const;

export const AMBIENT = { symbol: "\\vartheta_a", min: -273.15 } as const;
/** Figures that name a column of a table: what the table lacks is an unknown name, not out of a range. */
export const INSULATION_TEMPERATURE = { symbol: "\\vartheta_c" } as const;
export const TERMINAL_TEMPERATURE = { symbol: "\\vartheta_t" } as const;
export const LOADED_CONDUCTORS = { symbol: "m", is: "number" } as const;

export const CONDUCTORS = { symbol: "n", is: "count", min: 1, max: 10_000 } as const;
export const CIRCUITS = { symbol: "n", is: "count", min: 1, max: 10_000 } as const;
/** Conductors in parallel that make a line. */
export const PER_LINE = { symbol: "p", is: "count", min: 1, max: 100, default: 1 } as const;
export const AMBIENT_BASE = { symbol: "\\vartheta_0" } as const;
export const ROUTE = { default: "table" } as const;

/** One figure, or one per heater or motor. */
export const HEATER_CURRENT = { symbol: "I_h", min: 0, each: { symbol: "I_h", min: 0 } } as const;
export const MOTOR_CURRENT = { symbol: "I_m", min: 0, default: 0, each: { symbol: "I_m", min: 0 } } as const;
export const NONCONTINUOUS_CURRENT = {
  symbol: "I_{nc}",
  min: 0,
  default: 0,
  each: { symbol: "I_{nc}", min: 0 },
} as const;
export const DESIGN_CURRENT_IEC = { symbol: "I_B", above: 0 } as const;
/** A device of the IEC family is one of the preferred ratings; what is none of them stands outside the table. */
export const DEVICE_IEC = { symbol: "I_n" } as const;
export const DEVICE = { symbol: "I_n", above: 0 } as const;
