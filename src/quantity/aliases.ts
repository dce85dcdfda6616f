/**
 * Other spellings of the symbols, as printed on nameplates, meters, drawings and data sheets. Capitals count in
 * symbols (mΩ, MΩ); words of three letters and more are read in any case. Left out on purpose: `lb` as a force,
 * `K` and `°C` for each other, `ft·lb` as an energy, `MOHM` (mega or milli), plain `gal`, `scfm` and `acfm`.
 */
import type { CanonicalUnit } from "./tags.ts";

type Aliases = { readonly [U in CanonicalUnit]?: { readonly [symbol: string]: readonly string[] } };

export const ALIASES: Aliases = {
  V: {
    V: ["VAC", "Vac", "VDC", "Vdc", "v", "volt", "volts ac"],
    mV: ["millivolt"],
    µV: ["uV"],
    kV: ["KV"],
  },
  A: { A: ["amp", "amps", "ampere", "amperes"], mA: ["milliamp", "milliamps"], µA: ["uA"], kA: ["KA"] },
  Ω: {
    µΩ: ["uΩ", "microhm", "microhms"],
    kΩ: ["KΩ", "KOHM", "kilohm", "kilohms"],
    MΩ: ["megohm", "megohms"],
  },
  S: { S: ["mho"] },
  W: {
    µW: ["uW"],
    kW: ["KW", "Kw"],
    "Btu/h": ["BTU/h", "BTU/hr", "Btu/hr", "BTU/H", "BTUH", "Btuh", "btuh"],
    hp: ["HP", "Hp", "horsepower"],
  },
  J: { Wh: ["W h"], kWh: ["KWH", "kW h", "kwh"], Btu: ["BTU", "btu"], therm: ["therms"] },
  s: { s: ["sec"], ms: ["msec"], min: ["mins"], h: ["hr", "hrs"] },
  Hz: { Hz: ["HZ", "cps"], kHz: ["KHz", "KHZ"] },
  rad: { "°": ["deg", "degs"] },
  m: {
    m: ["metre", "metres"],
    mm: ["millimetre", "millimetres"],
    cm: ["centimetre", "centimetres"],
    µm: ["um", "micron", "microns"],
    in: ["inch", '"', "''"],
    ft: ["foot", "'"],
    mil: ["thou"],
  },
  "m²": {
    "in²": ["sq in", "square inch"],
    "ft²": ["sq ft", "square foot"],
    "mm²": ["sq mm"],
    "cm²": ["sq cm"],
    cmil: ["CM", "circ mil"],
    kcmil: ["KCMIL", "MCM", "kcm"],
  },
  "m³": {
    L: ["l", "litre", "litres"],
    "in³": ["cu in", "cubic inch"],
    "ft³": ["cu ft", "cubic foot"],
    "cm³": ["cc", "mL", "ml"],
    "US gal": ["gal US", "gal (US)"],
  },
  "m/s": { "ft/min": ["fpm", "FPM"], "ft/s": ["fps"] },
  kg: { kg: ["KG", "Kg"], lb: ["lbs", "lbm", "LB", "LBS"] },
  N: { lbf: ["LBF"], kgf: ["kp"] },
  Pa: {
    psi: ["PSI", "lbf/in²", "lb/in²"],
    MPa: ["N/mm²"],
    "inH₂O": ["in wc", "in WC", "in w.c.", "in W.C.", "inWC", "in wg", "in w.g.", "in H2O"],
    inHg: ["in Hg"],
  },
  N·m: {
    N·m: ["Nm"],
    N·cm: ["Ncm"],
    lbf·in: [
      "in lbf",
      "lb in",
      "in lb",
      "lbs in",
      "in lbs",
      "LB IN",
      "IN LB",
      "IN LBS",
      "inch pounds",
      "inch pound",
    ],
    lbf·ft: [
      "ft lbf",
      "lb ft",
      "ft lb",
      "lbs ft",
      "ft lbs",
      "LB FT",
      "FT LB",
      "FT LBS",
      "foot pounds",
      "foot pound",
    ],
    kgf·m: ["m kgf"],
  },
  Ω·m: { "Ω·cmil/ft": ["Ω cmil per ft", "Ω CM/ft", "Ω/cmf"], µΩ·cm: ["uΩ cm"], µΩ·m: ["uΩ m"] },
  "Ω/m": { "Ω/1000 ft": ["Ω/kft", "Ω/MFT", "Ω per 1000 ft"], "µΩ/ft": ["uΩ/ft"] },
  "1/K": { "1/K": ["/K", "1/°C", "/°C", "K⁻¹"], "ppm/K": ["ppm/°C"] },
  "°C": {
    "°C": ["C", "degrees celsius", "degC", "deg C"],
    "°F": ["F", "degrees fahrenheit", "degF", "deg F"],
  },
  K: {
    K: ["Δ°C", "ΔC", "ΔK", "C°", "°C difference", "delta °C", "delta C", "kelvin"],
    "Δ°F": ["ΔF", "F°", "°F difference", "delta °F", "delta F"],
  },
  "W/m²": { "W/in²": ["WSI", "wsi", "W/sq in"], "W/cm²": ["W/sq cm"], "Btu/(h·ft²)": ["Btu/h ft²"] },
  "W/(m²·K)": {
    "W/(m²·K)": ["W/m² K", "W/m²K", "W/(m²K)"],
    "Btu/(h·ft²·°F)": ["Btu/h ft² °F", "BTU/(h·ft²·°F)"],
  },
  "W/(m·K)": { "W/(m·K)": ["W/m K", "W/mK", "W/(mK)"] },
  "J/(kg·K)": {
    "J/(kg·K)": ["J/kg K", "J/kgK"],
    "kJ/(kg·K)": ["kJ/kg K", "kJ/kgK"],
    "J/(g·K)": ["J/g K", "J/gK"],
    "Btu/(lb·°F)": ["Btu/lb °F", "BTU/lb °F"],
  },
  "kg/m³": { "lb/ft³": ["pcf"], "g/cm³": ["g/cc"] },
  "m³/s": {
    "ft³/min": ["cfm", "CFM"],
    "L/s": ["l/s"],
    "L/min": ["l/min", "LPM", "lpm"],
    "US gal/min": ["gpm (US)"],
  },
  "kg/s": { "lb/h": ["lb/hr", "lbs/hr"], "kg/h": ["kg/hr"] },
  F: { µF: ["uF"] },
};
