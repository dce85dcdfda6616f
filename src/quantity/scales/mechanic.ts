/** Scales of units of length, area, volume and mass. */
import { CUBIC_FOOT, FOOT, HOUR, INCH, MIL, MINUTE, PI, POUND } from "../factors.ts";
import { type Scale, scale } from "../scale.ts";
import type { CanonicalUnit } from "../tags.ts";

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

/** All of the above, for the table of symbols. */
export const MECHANIC_SCALES: readonly Scale<CanonicalUnit>[] = [
  METER,
  NANOMETER,
  MICROMETER,
  MILLIMETER,
  CENTIMETER,
  INCH_LENGTH,
  FOOT_LENGTH,
  MIL_LENGTH,
  SQUARE_METER,
  SQUARE_MILLIMETER,
  SQUARE_CENTIMETER,
  SQUARE_INCH,
  SQUARE_FOOT,
  CIRCULAR_MIL,
  THOUSAND_CIRCULAR_MILS,
  CUBIC_METER,
  CUBIC_CENTIMETER,
  LITER,
  CUBIC_INCH,
  CUBIC_FOOT_VOLUME,
  US_GALLON,
  KILOGRAM,
  GRAM,
  POUND_MASS,
  KILOGRAM_PER_CUBIC_METER,
  GRAM_PER_CUBIC_CENTIMETER,
  POUND_PER_CUBIC_FOOT,
  POUND_PER_CUBIC_INCH,
  KILOGRAM_PER_SECOND,
  KILOGRAM_PER_HOUR,
  POUND_PER_MINUTE,
  POUND_PER_HOUR,
  KILOGRAM_PER_METER,
  GRAM_PER_METER,
  KILOGRAM_PER_KILOMETER,
  POUND_PER_FOOT,
  POUND_PER_THOUSAND_FEET,
];
