/**
 * The other spellings once more, by what they mean on a nameplate, a meter or a drawing: a second copy, written down from the meaning, so
 * that one that is lost or leads to another unit is noticed. Common practice, no published source; what a unit is worth has sources in
 * `units.test.ts`.
 */
import { type CanonicalUnit, parseQuantity } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { ALIASES } from "../../src/quantity/aliases.ts";
import { constructorOf } from "./support.ts";
import { ROWS } from "./unitDatabase.ts";

/** Constructor → spellings, parted by a bar. */
const MEANT: { readonly [made: string]: string } = {
  volts: "VAC|Vac|V AC|V ac|VDC|Vdc|V DC|V dc|Vrms|V~|v|volt|volts ac",
  millivolts: "millivolt",
  microvolts: "uV",
  kilovolts: "KV",
  amperes: "amp|amps|ampere|amperes",
  milliamperes: "milliamp|milliamps",
  microamperes: "uA",
  kiloamperes: "KA",
  ohms: "R",
  microohms: "uΩ|microhm|microhms",
  kiloohms: "KΩ|KOHM|kilohm|kilohms",
  megaohms: "megohm|megohms|meg|megs",
  siemens: "mho",
  microwatts: "uW",
  kilowatts: "KW|Kw|kw",
  btuItPerHour: "BTU/h|BTU/hr|Btu/hr|BTU/H|BTUH|Btuh|btuh",
  mechanicalHorsepower: "HP|Hp|horsepower",
  wattHours: "W h",
  kilowattHours: "KWH|kW h|kwh",
  btuIt: "BTU|btu",
  thermsIt: "therms",
  seconds: "sec",
  milliseconds: "msec",
  minutes: "mins",
  hours: "hr|hrs",
  hertz: "HZ|cps",
  kilohertz: "KHz|KHZ",
  degrees: "deg|degs",
  meters: "metre|metres",
  millimeters: "millimetre|millimetres",
  centimeters: "centimetre|centimetres",
  micrometers: "um|micron|microns",
  inches: "inch|\"|''",
  feet: "foot|'",
  mils: "thou",
  squareInches: "sq in|square inch",
  squareFeet: "sq ft|square foot",
  squareMillimeters: "sq mm",
  squareCentimeters: "sq cm",
  circularMils: "CM|circ mil",
  thousandCircularMils: "KCMIL|MCM|kcm",
  liters: "l|litre|litres",
  cubicInches: "cu in|cubic inch",
  cubicFeet: "cu ft|cubic foot",
  cubicCentimeters: "cc|mL|ml",
  usGallons: "gal US|gal (US)",
  feetPerMinute: "fpm|FPM",
  feetPerSecond: "fps",
  kilograms: "KG|Kg",
  pounds: "lbs|lbm|LB|LBS",
  poundsForce: "LBF",
  kilogramsForce: "kp",
  poundsForcePerSquareInch: "PSI|lbf/in²|lb/in²",
  megapascals: "N/mm²",
  hectopascals: "mbar|mb|millibar|millibars",
  bars: "bar",
  btuItPerHourFahrenheit: "BTU/(h·°F)|BTU/(hr·°F)|btu/(hr °F)|Btu/(hr·°F)",
  inchesOfWaterConventional: "in wc|in WC|in w.c.|in W.C.|inWC|in wg|in w.g.|in H2O",
  inchesOfMercuryConventional: "in Hg",
  newtonMeters: "Nm",
  newtonCentimeters: "Ncm",
  poundForceInches: "in lbf|lb in|in lb|lbs in|in lbs|inlb|inlbs|LB IN|IN LB|IN LBS|inch pounds|inch pound",
  poundForceFeet: "ft lbf|lb ft|ft lb|lbs ft|ft lbs|ftlb|ftlbs|LB FT|FT LB|FT LBS|foot pounds|foot pound",
  kilogramForceMeters: "m kgf|kg m|kp m|kpm|mkp",
  kilogramForceCentimeters: "kg cm|kp cm|kpcm",
  ohmCircularMilsPerFoot: "Ω cmil per ft|Ω CM/ft|Ω/cmf",
  microohmCentimeters: "uΩ cm",
  microohmMeters: "uΩ m",
  ohmsPerThousandFeet: "Ω/1000ft|Ω/kft|Ω/MFT|Ω per 1000 ft",
  microohmsPerFoot: "uΩ/ft",
  perKelvin: "/K|1/°C|/°C|K⁻¹",
  millionthsPerKelvin: "ppm/°C",
  wattsPerKelvin: "W/°C",
  joulesPerKelvin: "J/°C",
  kilojoulesPerKelvin: "kJ/°C",
  kelvinsPerWatt: "°C/W",
  celsius: "C|degrees celsius|degC|deg C",
  fahrenheit: "F|degrees fahrenheit|degF|deg F",
  kelvins: "Δ°C|ΔC|ΔK|C°|°C difference|delta °C|delta C|kelvin",
  fahrenheitDegrees: "ΔF|F°|°F difference|delta °F|delta F",
  wattsPerSquareInch: "WSI|wsi|W/sq in",
  wattsPerSquareCentimeter: "W/sq cm",
  btuItPerHourSquareFoot: "Btu/h ft²",
  wattsPerSquareMeterKelvin: "W/m² K|W/m²K|W/(m²K)",
  btuItPerHourSquareFootFahrenheit: "Btu/h ft² °F|BTU/(h·ft²·°F)",
  wattsPerMeterKelvin: "W/m K|W/mK|W/(mK)",
  joulesPerKilogramKelvin: "J/kg K|J/kgK",
  kilojoulesPerKilogramKelvin: "kJ/kg K|kJ/kgK",
  joulesPerGramKelvin: "J/g K|J/gK",
  btuItPerPoundFahrenheit: "Btu/lb °F|BTU/lb °F",
  poundsPerCubicFoot: "pcf",
  gramsPerCubicCentimeter: "g/cc",
  cubicFeetPerMinute: "cfm|CFM",
  litersPerSecond: "l/s",
  litersPerMinute: "l/min|LPM|lpm",
  usGallonsPerMinute: "gpm (US)",
  poundsPerHour: "lb/hr|lbs/hr",
  kilogramsPerHour: "kg/hr",
  microfarads: "uF",
};

const unitOf = (made: string): CanonicalUnit =>
  (ROWS.find(([name]) => name === made)?.[1] ?? "°C") as CanonicalUnit;
const meant = Object.entries(MEANT).flatMap(([made, spellings]) =>
  spellings.split("|").map((spelling) => [spelling, made] as const),
);

describe("other spellings by their meaning", () => {
  it.each(meant)("5 %s is five %s", (spelling, made) => {
    const { value } = parseQuantity<CanonicalUnit>(`5 ${spelling}`, { unit: unitOf(made) });
    expect(Math.abs((value as number) / constructorOf(made)(5) - 1)).toBeLessThan(4e-16);
  });

  it("are all that are read", () => {
    const listed = Object.entries(ALIASES).flatMap(([unit, symbols]) =>
      Object.values(symbols ?? {}).flatMap((spellings) => spellings.map((one) => `${one} of ${unit}`)),
    );
    const own = new Set(meant.map(([spelling, made]) => `${spelling} of ${unitOf(made)}`));
    expect(listed.filter((one) => !own.has(one))).toEqual([]);
  });

  it("are words in any case, symbols only as they are written", () => {
    for (const word of ["MILLIVOLT", "Millivolt", "miLLivolt"])
      expect(parseQuantity(`5 ${word}`, { unit: "V" }).value).toBe(0.005);
    for (const symbol of ["MV", "mv", "Mv"])
      expect(() => parseQuantity(`5 ${symbol}`, { unit: "V" }), symbol).toThrow(/mV/);
    for (const name of ["poundforceinches", "POUNDFORCEINCHES"])
      expect(() => parseQuantity(`5 ${name}`, { unit: "N·m" }), name).toThrow();
    // A unit's name in full, one or many, with any mark between its words.
    for (const name of ["pound force inches", "Pound-Force-Inches", "POUND·FORCE·INCHES"])
      expect(parseQuantity(`5 ${name}`, { unit: "N·m" }).symbol, name).toBe("lbf·in");
    for (const name of ["kilovolt", "kilovolts", "Kilovolts"])
      expect(parseQuantity(`5 ${name}`, { unit: "V" }).value, name).toBe(5000);
    // Not of a name that ends otherwise.
    expect(() => parseQuantity("5 fee", { unit: "m" })).toThrow(/5 fee/);
  });
});
