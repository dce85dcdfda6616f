/** Scales of units of length, mass, force and flow. */
import { CUBIC_FOOT, FOOT, GRAVITY, HOUR, INCH, MIL, MINUTE, PI, POUND } from "../factors.ts";
import { type Scale, scale } from "../scale.ts";

// Length.
export const METER: Scale<"m"> = /*#__PURE__*/ scale("meters", "m", "m");
export const NANOMETER: Scale<"m"> = /*#__PURE__*/ scale("nanometers", "nm", "m", 1, 1e9);
export const MICROMETER: Scale<"m"> = /*#__PURE__*/ scale("micrometers", "µm", "m", 1, 1e6);
export const MILLIMETER: Scale<"m"> = /*#__PURE__*/ scale("millimeters", "mm", "m", 1, 1e3);
export const CENTIMETER: Scale<"m"> = /*#__PURE__*/ scale("centimeters", "cm", "m", 1, 1e2);
export const INCH_LENGTH: Scale<"m"> = /*#__PURE__*/ scale("inches", "in", "m", INCH);
export const FOOT_LENGTH: Scale<"m"> = /*#__PURE__*/ scale("feet", "ft", "m", FOOT);
export const MIL_LENGTH: Scale<"m"> = /*#__PURE__*/ scale("mils", "mil", "m", MIL);

// Area. Wire areas in circular mils; gauges by number are in gauge.ts.
export const SQUARE_METER: Scale<"m²"> = /*#__PURE__*/ scale("squareMeters", "m²", "m²");
export const SQUARE_MILLIMETER: Scale<"m²"> = /*#__PURE__*/ scale("squareMillimeters", "mm²", "m²", 1, 1e6);
export const SQUARE_CENTIMETER: Scale<"m²"> = /*#__PURE__*/ scale("squareCentimeters", "cm²", "m²", 1, 1e4);
export const SQUARE_INCH: Scale<"m²"> = /*#__PURE__*/ scale("squareInches", "in²", "m²", () => INCH * INCH);
export const SQUARE_FOOT: Scale<"m²"> = /*#__PURE__*/ scale("squareFeet", "ft²", "m²", () => FOOT * FOOT);
export const CIRCULAR_MIL: Scale<"m²"> = /*#__PURE__*/ scale(
  "circularMils",
  "cmil",
  "m²",
  () => (PI / 4) * MIL * MIL,
);
export const THOUSAND_CIRCULAR_MILS: Scale<"m²"> = /*#__PURE__*/ scale(
  "thousandCircularMils",
  "kcmil",
  "m²",
  () => 1000 * (PI / 4) * MIL * MIL,
);

// Volume.
export const CUBIC_METER: Scale<"m³"> = /*#__PURE__*/ scale("cubicMeters", "m³", "m³");
export const CUBIC_CENTIMETER: Scale<"m³"> = /*#__PURE__*/ scale("cubicCentimeters", "cm³", "m³", 1, 1e6);
export const LITER: Scale<"m³"> = /*#__PURE__*/ scale("liters", "L", "m³", 1, 1e3);
export const CUBIC_INCH: Scale<"m³"> = /*#__PURE__*/ scale(
  "cubicInches",
  "in³",
  "m³",
  () => INCH * INCH * INCH,
);
export const CUBIC_FOOT_VOLUME: Scale<"m³"> = /*#__PURE__*/ scale("cubicFeet", "ft³", "m³", CUBIC_FOOT);
export const US_GALLON: Scale<"m³"> = /*#__PURE__*/ scale(
  "usGallons",
  "US gal",
  "m³",
  () => 231 * INCH * INCH * INCH,
);

// Mass, density, mass per length.
export const KILOGRAM: Scale<"kg"> = /*#__PURE__*/ scale("kilograms", "kg", "kg");
export const GRAM: Scale<"kg"> = /*#__PURE__*/ scale("grams", "g", "kg", 1, 1e3);
export const POUND_MASS: Scale<"kg"> = /*#__PURE__*/ scale("pounds", "lb", "kg", POUND);
export const KILOGRAM_PER_CUBIC_METER: Scale<"kg/m³"> = /*#__PURE__*/ scale(
  "kilogramsPerCubicMeter",
  "kg/m³",
  "kg/m³",
);
export const GRAM_PER_CUBIC_CENTIMETER: Scale<"kg/m³"> = /*#__PURE__*/ scale(
  "gramsPerCubicCentimeter",
  "g/cm³",
  "kg/m³",
  1e3,
);
export const POUND_PER_CUBIC_FOOT: Scale<"kg/m³"> = /*#__PURE__*/ scale(
  "poundsPerCubicFoot",
  "lb/ft³",
  "kg/m³",
  () => POUND / CUBIC_FOOT,
);
export const POUND_PER_CUBIC_INCH: Scale<"kg/m³"> = /*#__PURE__*/ scale(
  "poundsPerCubicInch",
  "lb/in³",
  "kg/m³",
  () => POUND / (INCH * INCH * INCH),
);

// Mass flow.
export const KILOGRAM_PER_SECOND: Scale<"kg/s"> = /*#__PURE__*/ scale("kilogramsPerSecond", "kg/s", "kg/s");
export const KILOGRAM_PER_HOUR: Scale<"kg/s"> = /*#__PURE__*/ scale(
  "kilogramsPerHour",
  "kg/h",
  "kg/s",
  1,
  HOUR,
);
export const POUND_PER_MINUTE: Scale<"kg/s"> = /*#__PURE__*/ scale(
  "poundsPerMinute",
  "lb/min",
  "kg/s",
  () => POUND / MINUTE,
);
export const POUND_PER_HOUR: Scale<"kg/s"> = /*#__PURE__*/ scale(
  "poundsPerHour",
  "lb/h",
  "kg/s",
  () => POUND / HOUR,
);

// Mass per length.
export const KILOGRAM_PER_METER: Scale<"kg/m"> = /*#__PURE__*/ scale("kilogramsPerMeter", "kg/m", "kg/m");
export const GRAM_PER_METER: Scale<"kg/m"> = /*#__PURE__*/ scale("gramsPerMeter", "g/m", "kg/m", 1, 1e3);
export const KILOGRAM_PER_KILOMETER: Scale<"kg/m"> = /*#__PURE__*/ scale(
  "kilogramsPerKilometer",
  "kg/km",
  "kg/m",
  1,
  1e3,
);
export const POUND_PER_FOOT: Scale<"kg/m"> = /*#__PURE__*/ scale(
  "poundsPerFoot",
  "lb/ft",
  "kg/m",
  () => POUND / FOOT,
);
export const POUND_PER_THOUSAND_FEET: Scale<"kg/m"> = /*#__PURE__*/ scale(
  "poundsPerThousandFeet",
  "lb/1000 ft",
  "kg/m",
  () => POUND / (1000 * FOOT),
);

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

// Pressure and stress.
export const PASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("pascals", "Pa", "Pa");
export const KILOPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("kilopascals", "kPa", "Pa", 1e3);
export const MEGAPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("megapascals", "MPa", "Pa", 1e6);
export const GIGAPASCAL: Scale<"Pa"> = /*#__PURE__*/ scale("gigapascals", "GPa", "Pa", 1e9);
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
