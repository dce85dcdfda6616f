/** A wire size as people write it, whatever the gauge system. */
import {
  conductorArea,
  fail,
  type Meters,
  squareMillimeters,
  toThousandCircularMils,
} from "../quantity/index.ts";
import { awgFromArea } from "./awg.ts";
import { swgSize } from "./swg.ts";
import { roundWireDiameter, type WireSize } from "./wireSize.ts";

const FORMS = 'a size with its system: "12 AWG", "2/0 AWG", "250 kcmil", "18 SWG" or "2.5 mm²"';
const LONGEST = 24;

/**
 * Reads a wire size with its gauge system. A bare "10" is refused, since it may be AWG, SWG, kcmil or mm², and so is "12 ga"; "2/0"
 * and "00" without a system are taken as AWG, as everywhere in this library. "2.5 mm" is refused: it would be a
 * diameter.
 * @param text - the size: "12 AWG", "AWG 12", "2/0", "250 kcmil", "250 MCM", "18 SWG", "SWG 18", "2.5 mm²", "2.5 mm2", "2.5 sq mm"
 * @returns the size with its area and the diameter of a solid wire of that area
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range`, `ambiguous` for a bare number or gauge
 * @source ASTM B258 for AWG, BS 3737:1964 for SWG; kcmil and mm² by definition
 * @example
 * ```ts
 * toMillimeters(wireSize("18 SWG").diameter).toFixed(3) // => "1.219"
 * ```
 * @since 0.1.0
 */
export function wireSize(text: string): WireSize {
  const path = "text";
  if (text === undefined || text === null || text === "") {
    return fail({ code: "missing", path, expected: FORMS, received: text });
  }
  if (typeof text !== "string") return fail({ code: "wrong-type", path, expected: FORMS, received: text });
  if (text.length > LONGEST) return fail({ code: "malformed-text", path, expected: FORMS, received: text });
  const bare = text.trim();
  if (/^swg|swg$/i.test(bare)) return swgSize(bare);
  // Told as what they are: further down only a gauge is left to be expected.
  if (/^\d+,\d/.test(bare))
    return fail({ code: "ambiguous", path, expected: `${FORMS}, with a decimal point`, received: text });
  if (/^\d[\d./]* ?(?:mm|in|")$/i.test(bare))
    return fail({
      code: "malformed-text",
      path,
      expected: `${FORMS}; a diameter is no size`,
      received: text,
    });
  const metric = /^(\d{1,4}(?:\.\d{1,4})?) ?(?:mm²|mm\^?2|sq\.? ?mm)$/i.exec(bare)?.[1];
  if (metric !== undefined) return sizeOf("mm²", metric, Number(metric));
  const kcmil = /^(\d{1,4}(?:\.\d{1,3})?) ?(?:kcmil|mcm)$/i.exec(bare)?.[1];
  if (kcmil !== undefined) return sizeOf("kcmil", kcmil, toThousandCircularMils(conductorArea(bare)));
  if (/^[1-9]\d*(\.\d+)?$|^0(\.\d+)?$/.test(bare))
    return fail({ code: "ambiguous", path, expected: FORMS, received: text });
  // In one country "12 ga" is AWG and in another SWG: 2.05 mm and 2.64 mm.
  if (/^\d[\d/]* ?(?:ga|gauge)\.?$/i.test(bare))
    return fail({ code: "ambiguous", path, expected: FORMS, received: text });
  if (!/^(?:no\.?|#|awg)? ?\d/i.test(bare))
    return fail({ code: "malformed-text", path, expected: FORMS, received: text });
  const { deviation: _, ...size } = awgFromArea({ area: conductorArea(bare), rounding: "exact" });
  return size;
}

/** A size that states its own area, in mm² or kcmil. */
function sizeOf(system: "mm²" | "kcmil", size: string, number: number): WireSize {
  if (!(number > 0))
    fail({ code: "out-of-range", path: "text", expected: `more than 0 ${system}`, received: number });
  const area = system === "mm²" ? squareMillimeters(number) : conductorArea(`${size} kcmil`);
  const diameter: Meters = roundWireDiameter(area);
  const basis = {
    source: system === "mm²" ? "iec-60228" : "astm-b258",
    edition: "definition",
    table: system,
    kind: "definition" as const,
  };
  return { system, size, area, diameter, basis };
}
