/** American wire gauge and kcmil as text. The gauge tables of other systems belong to `material`. */
import { fail } from "./errors.ts";
import { INCH } from "./factors.ts";
import type { Meters, SquareMeters } from "./tags.ts";
import { thousandCircularMils } from "./units/area.ts";

const LONGEST_GAUGE = 24;
const AWG_FORMS = "an AWG size (SWG: see swgSize): 4/0 to 1/0 (or 0000 to 0), or 1 to 40";

/** The gauge without its marks: "#10 awg" is "10". */
function bareGauge(path: string, text: string, expected: string): string {
  if (typeof text !== "string" || text.length > LONGEST_GAUGE) {
    const missing = text === undefined || text === null;
    const code = missing ? "missing" : typeof text === "string" ? "malformed-text" : "wrong-type";
    return fail({ code, path, expected, received: text });
  }
  const bare = text.trim().toUpperCase().replace("AWG", "").replace("NO.", "").replace("#", "").trim();
  return bare === "" ? fail({ code: "missing", path, expected, received: text }) : bare;
}

/** Gauge number n of ASTM B258: 4/0 is −3, 0 is 0, 40 is 40. */
function gaugeNumber(path: string, text: string): number {
  const bare = bareGauge(path, text, AWG_FORMS);
  if (/^[1-4]\/0$/.test(bare)) return 1 - Number(bare[0]);
  if (/^0{1,4}$/.test(bare)) return 1 - bare.length;
  if (/^[1-9]\d?$/.test(bare)) {
    const number = Number(bare);
    if (number <= 40) return number;
    return fail({ code: "out-of-range", path, expected: AWG_FORMS, received: text });
  }
  // "12 ga" is AWG in one country and SWG in another.
  const code = /\d ?GA/.test(bare) ? "ambiguous" : "malformed-text";
  return fail({ code, path, expected: AWG_FORMS, received: text });
}

/** As `awgDiameter`, under the caller's name for the text. */
export function solidDiameter(path: string, size: string): Meters {
  return (0.005 * INCH * 92 ** ((36 - gaugeNumber(path, size)) / 39)) as Meters;
}

/** As `awgArea`, under the caller's name for the text. */
export function gaugeArea(path: string, size: string): SquareMeters {
  return ((Math.PI / 4) * solidDiameter(path, size) ** 2) as SquareMeters;
}

/**
 * Diameter of the solid round wire of an American wire gauge: 0.005 in × 92^((36 − n) / 39), n = 0 for 1/0,
 * −1 for 2/0, −2 for 3/0, −3 for 4/0. The exact definition; tables round it to three or four digits. A stranded
 * conductor of that gauge is thicker.
 * @param size - the size: "14", "#14", "14 AWG", "2/0", "00", "4/0" to "40"
 * @returns the diameter in meters (m)
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range` above 40, `ambiguous` for
 *   "12 ga", which may be SWG
 * @source ASTM B258, Standard Specification for Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes
 *   of Solid Round Wires Used as Electrical Conductors; definition
 * @example
 * ```ts
 * toMils(awgDiameter("36")).toFixed(6) // => "5.000000"
 * ```
 * @since 0.1.0
 */
export function awgDiameter(size: string): Meters {
  return solidDiameter("size", size);
}

/**
 * Metal area of an American wire gauge: π/4 × diameter². Strands together have this area as well.
 * @param size - the size: "14", "#14", "14 AWG", "2/0", "00", "4/0" to "40"
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range` above 40, `ambiguous` for
 *   "12 ga", which may be SWG
 * @source ASTM B258, as for {@link awgDiameter}; definition
 * @example
 * ```ts
 * toThousandCircularMils(awgArea("4/0")).toFixed(1) // => "211.6"
 * ```
 * @since 0.1.0
 */
export function awgArea(size: string): SquareMeters {
  return gaugeArea("size", size);
}

/**
 * Metal area of a conductor size that names its own system: AWG or kcmil. A bare "10" is refused, since it may be
 * AWG, kcmil or mm²; "2/0" and "0000" are AWG and nothing else.
 * @param text - the size: "2/0 AWG", "10 AWG", "0000", "250 kcmil", "250 MCM"
 * @returns the area in square meters (m²)
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range`, `ambiguous` for a bare number
 * @source ASTM B258 for AWG; kcmil by definition (1000 circular mils)
 * @example
 * ```ts
 * toThousandCircularMils(conductorArea("250 kcmil")).toFixed(3) // => "250.000"
 * ```
 * @since 0.1.0
 */
export function conductorArea(text: string): SquareMeters {
  const bare = bareGauge("text", text, "a size with AWG or kcmil");
  const kcmil = /^(\d{1,4}(?:\.\d{1,3})?) ?(?:KCMIL|MCM)$/.exec(bare)?.[1];
  if (kcmil !== undefined) {
    if (Number(kcmil) > 0) return thousandCircularMils(Number(kcmil));
    return fail({ code: "out-of-range", path: "text", expected: "more than 0 kcmil", received: text });
  }
  if (/^\d+(\.\d+)?$/.test(bare) && !/^0{2,4}$/.test(bare) && bare === text.trim()) {
    return fail({ code: "ambiguous", path: "text", expected: "a size with AWG or kcmil", received: text });
  }
  return gaugeArea("text", text);
}
