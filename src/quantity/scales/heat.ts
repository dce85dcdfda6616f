/** Scales of units of power, energy and heat. */
import { BTU_IT, FOOT, GRAVITY, HOUR, INCH, MINUTE, POUND } from "../factors.ts";
import { type Scale, scale } from "../scale.ts";
import type { CanonicalUnit } from "../tags.ts";

// Power and heat flow.
export const WATT: Scale<"W"> = /*#__PURE__*/ scale("watts", "W", "W");
export const MICROWATT: Scale<"W"> = /*#__PURE__*/ scale("microwatts", "µW", "W", 1, 1e6);
export const MILLIWATT: Scale<"W"> = /*#__PURE__*/ scale("milliwatts", "mW", "W", 1, 1e3);
export const KILOWATT: Scale<"W"> = /*#__PURE__*/ scale("kilowatts", "kW", "W", 1e3);
export const MEGAWATT: Scale<"W"> = /*#__PURE__*/ scale("megawatts", "MW", "W", 1e6);
export const BTU_IT_PER_HOUR: Scale<"W"> = /*#__PURE__*/ scale(
  "btuItPerHour",
  "Btu/h",
  "W",
  () => BTU_IT / HOUR,
);
export const HORSEPOWER: Scale<"W"> = /*#__PURE__*/ scale(
  "mechanicalHorsepower",
  "hp",
  "W",
  () => 550 * FOOT * POUND * GRAVITY,
);

// Energy. Torque has the same dimension and is another tag.
export const JOULE: Scale<"J"> = /*#__PURE__*/ scale("joules", "J", "J");
export const KILOJOULE: Scale<"J"> = /*#__PURE__*/ scale("kilojoules", "kJ", "J", 1e3);
export const MEGAJOULE: Scale<"J"> = /*#__PURE__*/ scale("megajoules", "MJ", "J", 1e6);
export const WATT_HOUR: Scale<"J"> = /*#__PURE__*/ scale("wattHours", "Wh", "J", HOUR);
export const KILOWATT_HOUR: Scale<"J"> = /*#__PURE__*/ scale("kilowattHours", "kWh", "J", () => 1000 * HOUR);
export const BTU_IT_ENERGY: Scale<"J"> = /*#__PURE__*/ scale("btuIt", "Btu", "J", BTU_IT);
export const THERM_IT: Scale<"J"> = /*#__PURE__*/ scale("thermsIt", "therm", "J", () => 1e5 * BTU_IT);

// Temperature difference and rate. For the temperature itself see temperature.ts.
export const KELVIN: Scale<"K"> = /*#__PURE__*/ scale("kelvins", "K", "K");
export const FAHRENHEIT_DEGREE: Scale<"K"> = /*#__PURE__*/ scale("fahrenheitDegrees", "Δ°F", "K", 1, 1.8);
export const KELVIN_PER_SECOND: Scale<"K/s"> = /*#__PURE__*/ scale("kelvinsPerSecond", "K/s", "K/s");
export const KELVIN_PER_MINUTE: Scale<"K/s"> = /*#__PURE__*/ scale(
  "kelvinsPerMinute",
  "K/min",
  "K/s",
  1,
  MINUTE,
);
export const KELVIN_PER_WATT: Scale<"K/W"> = /*#__PURE__*/ scale("kelvinsPerWatt", "K/W", "K/W");
export const WATT_PER_KELVIN: Scale<"W/K"> = /*#__PURE__*/ scale("wattsPerKelvin", "W/K", "W/K");
export const BTU_IT_PER_HOUR_FAHRENHEIT: Scale<"W/K"> = /*#__PURE__*/ scale(
  "btuItPerHourFahrenheit",
  "Btu/(h·°F)",
  "W/K",
  () => (BTU_IT * 1.8) / HOUR,
);

// Heat flux and surface load.
export const WATT_PER_SQUARE_METER: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "wattsPerSquareMeter",
  "W/m²",
  "W/m²",
);
export const WATT_PER_SQUARE_CENTIMETER: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "wattsPerSquareCentimeter",
  "W/cm²",
  "W/m²",
  1e4,
);
export const KILOWATT_PER_SQUARE_METER: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "kilowattsPerSquareMeter",
  "kW/m²",
  "W/m²",
  1e3,
);
export const WATT_PER_SQUARE_INCH: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "wattsPerSquareInch",
  "W/in²",
  "W/m²",
  () => 1 / (INCH * INCH),
);
export const KILOWATT_PER_SQUARE_FOOT: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "kilowattsPerSquareFoot",
  "kW/ft²",
  "W/m²",
  () => 1000 / (FOOT * FOOT),
);
export const BTU_IT_PER_HOUR_SQUARE_FOOT: Scale<"W/m²"> = /*#__PURE__*/ scale(
  "btuItPerHourSquareFoot",
  "Btu/(h·ft²)",
  "W/m²",
  () => BTU_IT / (HOUR * FOOT * FOOT),
);
export const WATT_PER_METER: Scale<"W/m"> = /*#__PURE__*/ scale("wattsPerMeter", "W/m", "W/m");
export const KILOWATT_PER_METER: Scale<"W/m"> = /*#__PURE__*/ scale("kilowattsPerMeter", "kW/m", "W/m", 1e3);

// Film coefficient and thermal conductivity.
export const WATT_PER_SQUARE_METER_KELVIN: Scale<"W/(m²·K)"> = /*#__PURE__*/ scale(
  "wattsPerSquareMeterKelvin",
  "W/(m²·K)",
  "W/(m²·K)",
);
export const BTU_IT_PER_HOUR_SQUARE_FOOT_FAHRENHEIT: Scale<"W/(m²·K)"> = /*#__PURE__*/ scale(
  "btuItPerHourSquareFootFahrenheit",
  "Btu/(h·ft²·°F)",
  "W/(m²·K)",
  () => (BTU_IT * 1.8) / (HOUR * FOOT * FOOT),
);
export const WATT_PER_METER_KELVIN: Scale<"W/(m·K)"> = /*#__PURE__*/ scale(
  "wattsPerMeterKelvin",
  "W/(m·K)",
  "W/(m·K)",
);
export const BTU_IT_PER_HOUR_FOOT_FAHRENHEIT: Scale<"W/(m·K)"> = /*#__PURE__*/ scale(
  "btuItPerHourFootFahrenheit",
  "Btu/(h·ft·°F)",
  "W/(m·K)",
  () => (BTU_IT * 1.8) / (HOUR * FOOT),
);
export const BTU_IT_INCH_PER_HOUR_SQUARE_FOOT_FAHRENHEIT: Scale<"W/(m·K)"> = /*#__PURE__*/ scale(
  "btuItInchesPerHourSquareFootFahrenheit",
  "Btu·in/(h·ft²·°F)",
  "W/(m·K)",
  () => (BTU_IT * 1.8 * INCH) / (HOUR * FOOT * FOOT),
);
export const WATT_PER_CUBIC_METER: Scale<"W/m³"> = /*#__PURE__*/ scale("wattsPerCubicMeter", "W/m³", "W/m³");
export const WATT_PER_CUBIC_CENTIMETER: Scale<"W/m³"> = /*#__PURE__*/ scale(
  "wattsPerCubicCentimeter",
  "W/cm³",
  "W/m³",
  1e6,
);
export const SQUARE_METER_PER_SECOND: Scale<"m²/s"> = /*#__PURE__*/ scale(
  "squareMetersPerSecond",
  "m²/s",
  "m²/s",
);

// Heat capacity.
export const JOULE_PER_KELVIN: Scale<"J/K"> = /*#__PURE__*/ scale("joulesPerKelvin", "J/K", "J/K");
export const KILOJOULE_PER_KELVIN: Scale<"J/K"> = /*#__PURE__*/ scale(
  "kilojoulesPerKelvin",
  "kJ/K",
  "J/K",
  1e3,
);
export const BTU_IT_PER_FAHRENHEIT: Scale<"J/K"> = /*#__PURE__*/ scale(
  "btuItPerFahrenheit",
  "Btu/°F",
  "J/K",
  () => BTU_IT * 1.8,
);

// Specific heat and specific energy.
export const JOULE_PER_KILOGRAM_KELVIN: Scale<"J/(kg·K)"> = /*#__PURE__*/ scale(
  "joulesPerKilogramKelvin",
  "J/(kg·K)",
  "J/(kg·K)",
);
export const KILOJOULE_PER_KILOGRAM_KELVIN: Scale<"J/(kg·K)"> = /*#__PURE__*/ scale(
  "kilojoulesPerKilogramKelvin",
  "kJ/(kg·K)",
  "J/(kg·K)",
  1e3,
);
export const JOULE_PER_GRAM_KELVIN: Scale<"J/(kg·K)"> = /*#__PURE__*/ scale(
  "joulesPerGramKelvin",
  "J/(g·K)",
  "J/(kg·K)",
  1e3,
);
export const BTU_IT_PER_POUND_FAHRENHEIT: Scale<"J/(kg·K)"> = /*#__PURE__*/ scale(
  "btuItPerPoundFahrenheit",
  "Btu/(lb·°F)",
  "J/(kg·K)",
  4186.8,
);
export const JOULE_PER_KILOGRAM: Scale<"J/kg"> = /*#__PURE__*/ scale("joulesPerKilogram", "J/kg", "J/kg");
export const KILOJOULE_PER_KILOGRAM: Scale<"J/kg"> = /*#__PURE__*/ scale(
  "kilojoulesPerKilogram",
  "kJ/kg",
  "J/kg",
  1e3,
);

/** All of the above, for the table of symbols. */
export const HEAT_SCALES: readonly Scale<CanonicalUnit>[] = [
  WATT,
  MICROWATT,
  MILLIWATT,
  KILOWATT,
  MEGAWATT,
  BTU_IT_PER_HOUR,
  HORSEPOWER,
  JOULE,
  KILOJOULE,
  MEGAJOULE,
  WATT_HOUR,
  KILOWATT_HOUR,
  BTU_IT_ENERGY,
  THERM_IT,
  KELVIN,
  FAHRENHEIT_DEGREE,
  KELVIN_PER_SECOND,
  KELVIN_PER_MINUTE,
  KELVIN_PER_WATT,
  WATT_PER_KELVIN,
  BTU_IT_PER_HOUR_FAHRENHEIT,
  WATT_PER_SQUARE_METER,
  WATT_PER_SQUARE_CENTIMETER,
  KILOWATT_PER_SQUARE_METER,
  WATT_PER_SQUARE_INCH,
  KILOWATT_PER_SQUARE_FOOT,
  BTU_IT_PER_HOUR_SQUARE_FOOT,
  WATT_PER_METER,
  KILOWATT_PER_METER,
  WATT_PER_SQUARE_METER_KELVIN,
  BTU_IT_PER_HOUR_SQUARE_FOOT_FAHRENHEIT,
  WATT_PER_METER_KELVIN,
  BTU_IT_PER_HOUR_FOOT_FAHRENHEIT,
  BTU_IT_INCH_PER_HOUR_SQUARE_FOOT_FAHRENHEIT,
  WATT_PER_CUBIC_METER,
  WATT_PER_CUBIC_CENTIMETER,
  SQUARE_METER_PER_SECOND,
  JOULE_PER_KELVIN,
  KILOJOULE_PER_KELVIN,
  BTU_IT_PER_FAHRENHEIT,
  JOULE_PER_KILOGRAM_KELVIN,
  KILOJOULE_PER_KILOGRAM_KELVIN,
  JOULE_PER_GRAM_KELVIN,
  BTU_IT_PER_POUND_FAHRENHEIT,
  JOULE_PER_KILOGRAM,
  KILOJOULE_PER_KILOGRAM,
];
