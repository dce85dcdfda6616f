/** Scales of electrical units, time and angle. */
import { FOOT, HOUR, INCH, MIL, MINUTE, PI } from "../factors.ts";
import { type Scale, scale } from "../scale.ts";
import type { CanonicalUnit } from "../tags.ts";

// Voltage, current, frequency, angle.
export const VOLT: Scale<"V"> = /*#__PURE__*/ scale("volts", "V", "V");
export const MICROVOLT: Scale<"V"> = /*#__PURE__*/ scale("microvolts", "µV", "V", 1, 1e6);
export const MILLIVOLT: Scale<"V"> = /*#__PURE__*/ scale("millivolts", "mV", "V", 1, 1e3);
export const KILOVOLT: Scale<"V"> = /*#__PURE__*/ scale("kilovolts", "kV", "V", 1e3);
export const AMPERE: Scale<"A"> = /*#__PURE__*/ scale("amperes", "A", "A");
export const MICROAMPERE: Scale<"A"> = /*#__PURE__*/ scale("microamperes", "µA", "A", 1, 1e6);
export const MILLIAMPERE: Scale<"A"> = /*#__PURE__*/ scale("milliamperes", "mA", "A", 1, 1e3);
export const KILOAMPERE: Scale<"A"> = /*#__PURE__*/ scale("kiloamperes", "kA", "A", 1e3);

// Resistance.
export const OHM: Scale<"Ω"> = /*#__PURE__*/ scale("ohms", "Ω", "Ω");
export const NANOOHM: Scale<"Ω"> = /*#__PURE__*/ scale("nanoohms", "nΩ", "Ω", 1, 1e9);
export const MICROOHM: Scale<"Ω"> = /*#__PURE__*/ scale("microohms", "µΩ", "Ω", 1, 1e6);
export const MILLIOHM: Scale<"Ω"> = /*#__PURE__*/ scale("milliohms", "mΩ", "Ω", 1, 1e3);
export const KILOOHM: Scale<"Ω"> = /*#__PURE__*/ scale("kiloohms", "kΩ", "Ω", 1e3);
export const MEGAOHM: Scale<"Ω"> = /*#__PURE__*/ scale("megaohms", "MΩ", "Ω", 1e6);
export const GIGAOHM: Scale<"Ω"> = /*#__PURE__*/ scale("gigaohms", "GΩ", "Ω", 1e9);

// Resistivity, specific contact resistance.
export const OHM_METER: Scale<"Ω·m"> = /*#__PURE__*/ scale("ohmMeters", "Ω·m", "Ω·m");
export const NANOOHM_METER: Scale<"Ω·m"> = /*#__PURE__*/ scale("nanoohmMeters", "nΩ·m", "Ω·m", 1, 1e9);
export const MICROOHM_METER: Scale<"Ω·m"> = /*#__PURE__*/ scale("microohmMeters", "µΩ·m", "Ω·m", 1, 1e6);
export const MICROOHM_CENTIMETER: Scale<"Ω·m"> = /*#__PURE__*/ scale(
  "microohmCentimeters",
  "µΩ·cm",
  "Ω·m",
  1,
  1e8,
);
export const OHM_SQUARE_MILLIMETER_PER_METER: Scale<"Ω·m"> = /*#__PURE__*/ scale(
  "ohmSquareMillimetersPerMeter",
  "Ω·mm²/m",
  "Ω·m",
  1,
  1e6,
);
export const OHM_CIRCULAR_MIL_PER_FOOT: Scale<"Ω·m"> = /*#__PURE__*/ scale(
  "ohmCircularMilsPerFoot",
  "Ω·cmil/ft",
  "Ω·m",
  () => ((PI / 4) * MIL * MIL) / FOOT,
);
export const OHM_SQUARE_METER: Scale<"Ω·m²"> = /*#__PURE__*/ scale("ohmSquareMeters", "Ω·m²", "Ω·m²");

// Temperature coefficient.
export const PER_KELVIN: Scale<"1/K"> = /*#__PURE__*/ scale("perKelvin", "1/K", "1/K");
export const MILLIONTH_PER_KELVIN: Scale<"1/K"> = /*#__PURE__*/ scale(
  "millionthsPerKelvin",
  "ppm/K",
  "1/K",
  1,
  1e6,
);

// Conductance and electric conductivity.
export const SIEMENS: Scale<"S"> = /*#__PURE__*/ scale("siemens", "S", "S");
export const MILLISIEMENS: Scale<"S"> = /*#__PURE__*/ scale("millisiemens", "mS", "S", 1, 1e3);
export const SIEMENS_PER_METER: Scale<"S/m"> = /*#__PURE__*/ scale("siemensPerMeter", "S/m", "S/m");
export const MEGASIEMENS_PER_METER: Scale<"S/m"> = /*#__PURE__*/ scale(
  "megasiemensPerMeter",
  "MS/m",
  "S/m",
  1e6,
);

// Resistance per length.
export const OHM_PER_METER: Scale<"Ω/m"> = /*#__PURE__*/ scale("ohmsPerMeter", "Ω/m", "Ω/m");
export const MILLIOHM_PER_METER: Scale<"Ω/m"> = /*#__PURE__*/ scale(
  "milliohmsPerMeter",
  "mΩ/m",
  "Ω/m",
  1,
  1e3,
);
export const OHM_PER_KILOMETER: Scale<"Ω/m"> = /*#__PURE__*/ scale("ohmsPerKilometer", "Ω/km", "Ω/m", 1, 1e3);
export const OHM_PER_FOOT: Scale<"Ω/m"> = /*#__PURE__*/ scale("ohmsPerFoot", "Ω/ft", "Ω/m", 1, FOOT);
export const OHM_PER_THOUSAND_FEET: Scale<"Ω/m"> = /*#__PURE__*/ scale(
  "ohmsPerThousandFeet",
  "Ω/1000 ft",
  "Ω/m",
  1,
  () => 1000 * FOOT,
);
export const MICROOHM_PER_FOOT: Scale<"Ω/m"> = /*#__PURE__*/ scale(
  "microohmsPerFoot",
  "µΩ/ft",
  "Ω/m",
  1,
  () => 1e6 * FOOT,
);

// Current density.
export const AMPERE_PER_SQUARE_METER: Scale<"A/m²"> = /*#__PURE__*/ scale(
  "amperesPerSquareMeter",
  "A/m²",
  "A/m²",
);
export const AMPERE_PER_SQUARE_MILLIMETER: Scale<"A/m²"> = /*#__PURE__*/ scale(
  "amperesPerSquareMillimeter",
  "A/mm²",
  "A/m²",
  1e6,
);
export const AMPERE_PER_SQUARE_INCH: Scale<"A/m²"> = /*#__PURE__*/ scale(
  "amperesPerSquareInch",
  "A/in²",
  "A/m²",
  () => 1 / (INCH * INCH),
);

// Inductance and capacitance.
export const HENRY: Scale<"H"> = /*#__PURE__*/ scale("henries", "H", "H");
export const MILLIHENRY: Scale<"H"> = /*#__PURE__*/ scale("millihenries", "mH", "H", 1, 1e3);
export const FARAD: Scale<"F"> = /*#__PURE__*/ scale("farads", "F", "F");
export const MICROFARAD: Scale<"F"> = /*#__PURE__*/ scale("microfarads", "µF", "F", 1, 1e6);

// Time and frequency.
export const SECOND: Scale<"s"> = /*#__PURE__*/ scale("seconds", "s", "s");
export const MILLISECOND: Scale<"s"> = /*#__PURE__*/ scale("milliseconds", "ms", "s", 1, 1e3);
export const MINUTE_TIME: Scale<"s"> = /*#__PURE__*/ scale("minutes", "min", "s", MINUTE);
export const HOUR_TIME: Scale<"s"> = /*#__PURE__*/ scale("hours", "h", "s", HOUR);
export const HERTZ: Scale<"Hz"> = /*#__PURE__*/ scale("hertz", "Hz", "Hz");
export const KILOHERTZ: Scale<"Hz"> = /*#__PURE__*/ scale("kilohertz", "kHz", "Hz", 1e3);
export const RADIAN: Scale<"rad"> = /*#__PURE__*/ scale("radians", "rad", "rad");
export const DEGREE: Scale<"rad"> = /*#__PURE__*/ scale("degrees", "°", "rad", () => PI / 180);

/** All of the above, for the table of symbols. */
export const ELECTRIC_SCALES: readonly Scale<CanonicalUnit>[] = [
  VOLT,
  MICROVOLT,
  MILLIVOLT,
  KILOVOLT,
  AMPERE,
  MICROAMPERE,
  MILLIAMPERE,
  KILOAMPERE,
  OHM,
  NANOOHM,
  MICROOHM,
  MILLIOHM,
  KILOOHM,
  MEGAOHM,
  GIGAOHM,
  OHM_METER,
  NANOOHM_METER,
  MICROOHM_METER,
  MICROOHM_CENTIMETER,
  OHM_SQUARE_MILLIMETER_PER_METER,
  OHM_CIRCULAR_MIL_PER_FOOT,
  OHM_SQUARE_METER,
  PER_KELVIN,
  MILLIONTH_PER_KELVIN,
  SIEMENS,
  MILLISIEMENS,
  SIEMENS_PER_METER,
  MEGASIEMENS_PER_METER,
  OHM_PER_METER,
  MILLIOHM_PER_METER,
  OHM_PER_KILOMETER,
  OHM_PER_FOOT,
  OHM_PER_THOUSAND_FEET,
  MICROOHM_PER_FOOT,
  AMPERE_PER_SQUARE_METER,
  AMPERE_PER_SQUARE_MILLIMETER,
  AMPERE_PER_SQUARE_INCH,
  HENRY,
  MILLIHENRY,
  FARAD,
  MICROFARAD,
  SECOND,
  MILLISECOND,
  MINUTE_TIME,
  HOUR_TIME,
  HERTZ,
  KILOHERTZ,
  RADIAN,
  DEGREE,
];
