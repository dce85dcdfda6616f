/** Scales of units of force, pressure, speed and flow. */
import { CUBIC_FOOT, FOOT, GRAVITY, HOUR, INCH, MINUTE, POUND } from "../factors.ts";
import { type Scale, scale } from "../scale.ts";
import type { CanonicalUnit } from "../tags.ts";

// Stiffness.
export const NEWTON_PER_METER: Scale<"N/m"> = /*#__PURE__*/ scale("newtonsPerMeter", "N/m", "N/m");
export const NEWTON_PER_MILLIMETER: Scale<"N/m"> = /*#__PURE__*/ scale(
  "newtonsPerMillimeter",
  "N/mm",
  "N/m",
  1e3,
);
export const MEGANEWTON_PER_METER: Scale<"N/m"> = /*#__PURE__*/ scale(
  "meganewtonsPerMeter",
  "MN/m",
  "N/m",
  1e6,
);
export const POUND_FORCE_PER_INCH: Scale<"N/m"> = /*#__PURE__*/ scale(
  "poundsForcePerInch",
  "lbf/in",
  "N/m",
  () => (POUND * GRAVITY) / INCH,
);
export const MEGAPOUND_FORCE_PER_INCH: Scale<"N/m"> = /*#__PURE__*/ scale(
  "megapoundsForcePerInch",
  "Mlbf/in",
  "N/m",
  () => (1e6 * POUND * GRAVITY) / INCH,
);

// Force.
export const NEWTON: Scale<"N"> = /*#__PURE__*/ scale("newtons", "N", "N");
export const KILONEWTON: Scale<"N"> = /*#__PURE__*/ scale("kilonewtons", "kN", "N", 1e3);
export const POUND_FORCE: Scale<"N"> = /*#__PURE__*/ scale("poundsForce", "lbf", "N", () => POUND * GRAVITY);
export const KIP: Scale<"N"> = /*#__PURE__*/ scale("kips", "kip", "N", () => 1000 * POUND * GRAVITY);
export const KILOGRAM_FORCE: Scale<"N"> = /*#__PURE__*/ scale("kilogramsForce", "kgf", "N", GRAVITY);

// Torque. Energy has the same dimension and is another tag.
export const NEWTON_METER: Scale<"N·m"> = /*#__PURE__*/ scale("newtonMeters", "N·m", "N·m");
export const NEWTON_CENTIMETER: Scale<"N·m"> = /*#__PURE__*/ scale(
  "newtonCentimeters",
  "N·cm",
  "N·m",
  1,
  1e2,
);
export const POUND_FORCE_INCH: Scale<"N·m"> = /*#__PURE__*/ scale(
  "poundForceInches",
  "lbf·in",
  "N·m",
  () => POUND * GRAVITY * INCH,
);
export const POUND_FORCE_FOOT: Scale<"N·m"> = /*#__PURE__*/ scale(
  "poundForceFeet",
  "lbf·ft",
  "N·m",
  () => POUND * GRAVITY * FOOT,
);
export const KILOGRAM_FORCE_METER: Scale<"N·m"> = /*#__PURE__*/ scale(
  "kilogramForceMeters",
  "kgf·m",
  "N·m",
  GRAVITY,
);
export const KILOGRAM_FORCE_CENTIMETER: Scale<"N·m"> = /*#__PURE__*/ scale(
  "kilogramForceCentimeters",
  "kgf·cm",
  "N·m",
  GRAVITY,
  1e2,
);

// Pressure and stress.
export const PASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("pascals", "Pa", "Pa");
export const KILOPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("kilopascals", "kPa", "Pa", 1e3);
export const MEGAPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("megapascals", "MPa", "Pa", 1e6);
export const GIGAPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("gigapascals", "GPa", "Pa", 1e9);
export const HECTOPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("hectopascals", "hPa", "Pa", 1e2);
export const BAR: Scale<"Pa"> = /*#__PURE__*/ scale("bars", "bar", "Pa", 1e5);
export const STANDARD_ATMOSPHERE: Scale<"Pa"> = /*#__PURE__*/ scale(
  "standardAtmospheres",
  "atm",
  "Pa",
  101_325,
);
export const POUND_PER_SQUARE_INCH: Scale<"Pa"> = /*#__PURE__*/ scale(
  "poundsForcePerSquareInch",
  "psi",
  "Pa",
  () => (POUND * GRAVITY) / (INCH * INCH),
);
export const KIP_PER_SQUARE_INCH: Scale<"Pa"> = /*#__PURE__*/ scale(
  "kipsPerSquareInch",
  "ksi",
  "Pa",
  () => (1000 * POUND * GRAVITY) / (INCH * INCH),
);
export const MEGAPOUND_PER_SQUARE_INCH: Scale<"Pa"> = /*#__PURE__*/ scale(
  "megapoundsForcePerSquareInch",
  "Mpsi",
  "Pa",
  () => (1e6 * POUND * GRAVITY) / (INCH * INCH),
);

// Pressure as a head of liquid, conventional values.
export const INCH_OF_WATER: Scale<"Pa"> = /*#__PURE__*/ scale(
  "inchesOfWaterConventional",
  "inH₂O",
  "Pa",
  () => 1000 * GRAVITY * INCH,
);
export const INCH_OF_MERCURY: Scale<"Pa"> = /*#__PURE__*/ scale(
  "inchesOfMercuryConventional",
  "inHg",
  "Pa",
  () => 13595.1 * GRAVITY * INCH,
);

// Speed and dynamic viscosity.
export const PASCAL_SECOND: Scale<"Pa·s"> = /*#__PURE__*/ scale("pascalSeconds", "Pa·s", "Pa·s");
export const METER_PER_SECOND: Scale<"m/s"> = /*#__PURE__*/ scale("metersPerSecond", "m/s", "m/s");
export const METER_PER_MINUTE: Scale<"m/s"> = /*#__PURE__*/ scale(
  "metersPerMinute",
  "m/min",
  "m/s",
  1,
  MINUTE,
);
export const FOOT_PER_SECOND: Scale<"m/s"> = /*#__PURE__*/ scale("feetPerSecond", "ft/s", "m/s", FOOT);
export const FOOT_PER_MINUTE: Scale<"m/s"> = /*#__PURE__*/ scale(
  "feetPerMinute",
  "ft/min",
  "m/s",
  () => FOOT / MINUTE,
);

// Volume flow. A volume flow carries no reference condition: say it beside the number.
export const CUBIC_METER_PER_SECOND: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "cubicMetersPerSecond",
  "m³/s",
  "m³/s",
);
export const CUBIC_METER_PER_MINUTE: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "cubicMetersPerMinute",
  "m³/min",
  "m³/s",
  1,
  MINUTE,
);
export const CUBIC_METER_PER_HOUR: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "cubicMetersPerHour",
  "m³/h",
  "m³/s",
  1,
  HOUR,
);
export const LITER_PER_SECOND: Scale<"m³/s"> = /*#__PURE__*/ scale("litersPerSecond", "L/s", "m³/s", 1, 1e3);
export const LITER_PER_MINUTE: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "litersPerMinute",
  "L/min",
  "m³/s",
  1,
  () => 1e3 * MINUTE,
);
export const CUBIC_FOOT_PER_MINUTE: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "cubicFeetPerMinute",
  "ft³/min",
  "m³/s",
  () => CUBIC_FOOT / MINUTE,
);
export const US_GALLON_PER_MINUTE: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "usGallonsPerMinute",
  "US gal/min",
  "m³/s",
  () => (231 * INCH * INCH * INCH) / MINUTE,
);
export const US_GALLON_PER_HOUR: Scale<"m³/s"> = /*#__PURE__*/ scale(
  "usGallonsPerHour",
  "US gal/h",
  "m³/s",
  () => (231 * INCH * INCH * INCH) / HOUR,
);

/** All of the above, for the table of symbols. */
export const FORCE_SCALES: readonly Scale<CanonicalUnit>[] = [
  NEWTON_PER_METER,
  NEWTON_PER_MILLIMETER,
  MEGANEWTON_PER_METER,
  POUND_FORCE_PER_INCH,
  MEGAPOUND_FORCE_PER_INCH,
  NEWTON,
  KILONEWTON,
  POUND_FORCE,
  KIP,
  KILOGRAM_FORCE,
  NEWTON_METER,
  NEWTON_CENTIMETER,
  POUND_FORCE_INCH,
  POUND_FORCE_FOOT,
  KILOGRAM_FORCE_METER,
  KILOGRAM_FORCE_CENTIMETER,
  PASCAL,
  KILOPASCAL,
  MEGAPASCAL,
  GIGAPASCAL,
  HECTOPASCAL,
  BAR,
  STANDARD_ATMOSPHERE,
  POUND_PER_SQUARE_INCH,
  KIP_PER_SQUARE_INCH,
  MEGAPOUND_PER_SQUARE_INCH,
  INCH_OF_WATER,
  INCH_OF_MERCURY,
  PASCAL_SECOND,
  METER_PER_SECOND,
  METER_PER_MINUTE,
  FOOT_PER_SECOND,
  FOOT_PER_MINUTE,
  CUBIC_METER_PER_SECOND,
  CUBIC_METER_PER_MINUTE,
  CUBIC_METER_PER_HOUR,
  LITER_PER_SECOND,
  LITER_PER_MINUTE,
  CUBIC_FOOT_PER_MINUTE,
  US_GALLON_PER_MINUTE,
  US_GALLON_PER_HOUR,
];
