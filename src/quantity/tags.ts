/**
 * Unit tags: a quantity is a plain `number` in one canonical unit, marked at compile time only.
 *
 * The mark is a required, namespaced string key on the primitive. It never exists at run time, so values
 * stay numbers in JSON, typed arrays and spreadsheet cells. A string key (not a `unique symbol`) keeps two
 * copies of the package, or its ESM and CJS declarations, assignable to each other.
 */

/**
 * Compile-time mark for the unit a number is held in.
 * @since 0.1.0
 */
export interface UnitTag<U extends string> {
  /** The canonical unit symbol. Exists only in the type system; no such property is present at run time. */
  readonly "~electroheat.unit": U;
}

/**
 * Compile-time mark for the kind of a quantity, where equal units must not be mixed (line voltage against
 * branch voltage, cold against hot resistance). Optional: a quantity without a kind flows in, a different
 * kind does not.
 * @since 0.1.0
 */
export interface KindTag<K extends string> {
  /** The kind. Exists only in the type system; no such property is present at run time. */
  readonly "~electroheat.kind"?: K;
}

/** Electric potential difference in volts (V). @since 0.1.0 */
export type Volts = number & UnitTag<"V">;
/** Electric current in amperes (A). @since 0.1.0 */
export type Amperes = number & UnitTag<"A">;
/** Electric resistance in ohms (Ω). @since 0.1.0 */
export type Ohms = number & UnitTag<"Ω">;
/** Electric conductance in siemens (S). @since 0.1.0 */
export type Siemens = number & UnitTag<"S">;
/** Power in watts (W). @since 0.1.0 */
export type Watts = number & UnitTag<"W">;
/** Energy in joules (J). Not assignable to torque. @since 0.1.0 */
export type Joules = number & UnitTag<"J">;
/** Time in seconds (s). @since 0.1.0 */
export type Seconds = number & UnitTag<"s">;
/** Frequency in hertz (Hz). @since 0.1.0 */
export type Hertz = number & UnitTag<"Hz">;
/** Length in metres (m). @since 0.1.0 */
export type Meters = number & UnitTag<"m">;
/** Area in square metres (m²). @since 0.1.0 */
export type SquareMeters = number & UnitTag<"m²">;
/** Volume in cubic metres (m³). @since 0.1.0 */
export type CubicMeters = number & UnitTag<"m³">;
/** Speed in metres per second (m/s). @since 0.1.0 */
export type MetersPerSecond = number & UnitTag<"m/s">;
/** Mass in kilograms (kg). @since 0.1.0 */
export type Kilograms = number & UnitTag<"kg">;
/** Force in newtons (N). @since 0.1.0 */
export type Newtons = number & UnitTag<"N">;
/** Stiffness in newtons per metre (N/m). @since 0.1.0 */
export type NewtonsPerMeter = number & UnitTag<"N/m">;
/** Pressure or stress in pascals (Pa). @since 0.1.0 */
export type Pascals = number & UnitTag<"Pa">;
/** Dynamic viscosity in pascal seconds (Pa·s). @since 0.1.0 */
export type PascalSeconds = number & UnitTag<"Pa·s">;
/** Torque in newton metres (N·m). Not assignable to energy. @since 0.1.0 */
export type NewtonMeters = number & UnitTag<"N·m">;
/** Resistivity in ohm metres (Ω·m). @since 0.1.0 */
export type OhmMeters = number & UnitTag<"Ω·m">;
/** Specific contact resistance in ohm square metres (Ω·m²). @since 0.1.0 */
export type OhmSquareMeters = number & UnitTag<"Ω·m²">;
/** Resistance per length in ohms per metre (Ω/m). @since 0.1.0 */
export type OhmsPerMeter = number & UnitTag<"Ω/m">;
/** Relative change per kelvin (1/K). @since 0.1.0 */
export type PerKelvin = number & UnitTag<"1/K">;
/** Temperature on the Celsius scale (°C). Not assignable to a temperature difference. @since 0.1.0 */
export type Celsius = number & UnitTag<"°C">;
/** Temperature difference in kelvins (K). Not assignable to a temperature. @since 0.1.0 */
export type Kelvins = number & UnitTag<"K">;
/** Heat flux or surface load in watts per square metre (W/m²). @since 0.1.0 */
export type WattsPerSquareMeter = number & UnitTag<"W/m²">;
/** Film coefficient in watts per square metre kelvin (W/(m²·K)). @since 0.1.0 */
export type WattsPerSquareMeterKelvin = number & UnitTag<"W/(m²·K)">;
/** Thermal conductivity in watts per metre kelvin (W/(m·K)). @since 0.1.0 */
export type WattsPerMeterKelvin = number & UnitTag<"W/(m·K)">;
/** Thermal conductance in watts per kelvin (W/K). @since 0.1.0 */
export type WattsPerKelvin = number & UnitTag<"W/K">;
/** Thermal resistance in kelvins per watt (K/W). @since 0.1.0 */
export type KelvinsPerWatt = number & UnitTag<"K/W">;
/** Heat capacity in joules per kelvin (J/K). @since 0.1.0 */
export type JoulesPerKelvin = number & UnitTag<"J/K">;
/** Specific heat in joules per kilogram kelvin (J/(kg·K)). @since 0.1.0 */
export type JoulesPerKilogramKelvin = number & UnitTag<"J/(kg·K)">;
/** Density in kilograms per cubic metre (kg/m³). @since 0.1.0 */
export type KilogramsPerCubicMeter = number & UnitTag<"kg/m³">;
/** Mass per length in kilograms per metre (kg/m). @since 0.1.0 */
export type KilogramsPerMeter = number & UnitTag<"kg/m">;
/** Volume flow in cubic metres per second (m³/s). @since 0.1.0 */
export type CubicMetersPerSecond = number & UnitTag<"m³/s">;
/** Mass flow in kilograms per second (kg/s). @since 0.1.0 */
export type KilogramsPerSecond = number & UnitTag<"kg/s">;
/** Current density in amperes per square metre (A/m²). @since 0.1.0 */
export type AmperesPerSquareMeter = number & UnitTag<"A/m²">;

/** Angle in radians (rad). @since 0.1.0 */
export type Radians = number & UnitTag<"rad">;
/** Electric conductivity in siemens per metre (S/m). @since 0.1.0 */
export type SiemensPerMeter = number & UnitTag<"S/m">;
/** Inductance in henries (H). @since 0.1.0 */
export type Henries = number & UnitTag<"H">;
/** Capacitance in farads (F). @since 0.1.0 */
export type Farads = number & UnitTag<"F">;
/** Power per length in watts per metre (W/m). @since 0.1.0 */
export type WattsPerMeter = number & UnitTag<"W/m">;
/** Volumetric power in watts per cubic metre (W/m³). @since 0.1.0 */
export type WattsPerCubicMeter = number & UnitTag<"W/m³">;
/** Diffusivity or kinematic viscosity in square metres per second (m²/s). @since 0.1.0 */
export type SquareMetersPerSecond = number & UnitTag<"m²/s">;
/** Rate of temperature change in kelvins per second (K/s). @since 0.1.0 */
export type KelvinsPerSecond = number & UnitTag<"K/s">;
/** Specific energy in joules per kilogram (J/kg). @since 0.1.0 */
export type JoulesPerKilogram = number & UnitTag<"J/kg">;

/** Voltage between two lines; plain `Volts` flows in, a branch voltage does not. @since 0.1.0 */
export type LineVolts = Volts & KindTag<"line-to-line">;
/** Voltage across one branch; plain `Volts` flows in, a line voltage does not. @since 0.1.0 */
export type BranchVolts = Volts & KindTag<"branch">;
/** Current in a line; plain `Amperes` flows in, a branch current does not. @since 0.1.0 */
export type LineAmperes = Amperes & KindTag<"line">;
/** Current in one branch; plain `Amperes` flows in, a line current does not. @since 0.1.0 */
export type BranchAmperes = Amperes & KindTag<"branch">;
/** Resistance at 20 °C; plain `Ohms` flows in, a hot resistance does not. @since 0.1.0 */
export type ColdOhms = Ohms & KindTag<"cold">;
/** Resistance at working temperature; plain `Ohms` flows in, a cold resistance does not. @since 0.1.0 */
export type HotOhms = Ohms & KindTag<"hot">;

/**
 * What a broken path reads: an open circuit is a legal state of an element, a branch or a reading.
 * A shorted one is 0 Ω.
 * @since 0.1.0
 */
export type Open = "open";

/**
 * Symbols of the canonical units: what every quantity is held in.
 * @since 0.1.0
 */
export type CanonicalUnit =
  | "V"
  | "A"
  | "Ω"
  | "S"
  | "W"
  | "J"
  | "s"
  | "Hz"
  | "m"
  | "m²"
  | "m³"
  | "m/s"
  | "kg"
  | "N"
  | "N/m"
  | "Pa"
  | "Pa·s"
  | "N·m"
  | "Ω·m"
  | "Ω·m²"
  | "Ω/m"
  | "1/K"
  | "°C"
  | "K"
  | "W/m²"
  | "W/(m²·K)"
  | "W/(m·K)"
  | "W/K"
  | "K/W"
  | "J/K"
  | "J/(kg·K)"
  | "kg/m³"
  | "kg/m"
  | "m³/s"
  | "kg/s"
  | "A/m²"
  | "rad"
  | "S/m"
  | "H"
  | "F"
  | "W/m"
  | "W/m³"
  | "m²/s"
  | "K/s"
  | "J/kg";

/**
 * The tagged number of a canonical unit: `Quantity<"Ω">` is `Ohms`.
 * @since 0.1.0
 */
export type Quantity<U extends CanonicalUnit> = number & UnitTag<U>;
