/** Threads as people write them: the published size where there is one, else areas from diameter and pitch. */
import metricTable from "../../shared/tables/thread-metric.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import { asField, fail, inches, isElectroheatError, type Meters, millimeters } from "../quantity/index.ts";
import { metricThread, type ThreadSize, threadGeometry, unifiedThread } from "./thread.ts";

/**
 * A thread size with the name that tables by diameter have for it.
 * @since 0.1.0
 */
export interface NamedThread extends ThreadSize {
  /** Nominal diameter: `"M8"`, `"1/4"`, `"#10"`. */
  readonly nominal: string;
}

const FORMS = 'a metric thread ("M6", "M8x1") or a unified one ("1/4-20", "#10-32")';
const LONGEST = 32;

const FRACTIONS: Readonly<Record<string, string>> = {
  "⅛": "1/8",
  "¼": "1/4",
  "⅜": "3/8",
  "½": "1/2",
  "⅝": "5/8",
  "¾": "3/4",
  "⅞": "7/8",
};

/** One spelling of what differs in dashes, quotes, fractions and spaces. */
const plain = (text: string): string =>
  text
    .replace(/[⅛¼⅜½⅝¾⅞]/g, (one) => FRACTIONS[one] as string)
    .replace(/⁄/g, "/")
    .replace(/[\s\u00a0]+/g, "")
    .replace(/×/g, "x")
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/^no\.?/i, "#");

const METRIC = /^M(\d{1,3}(?:\.\d{1,3})?)(?:[x-](\d{1,2}(?:\.\d{1,3})?))?(?:-?\d[a-h](?:\d[a-h])?)?$/i;
const UNIFIED =
  /^(#?)(\d{1,2}(?:\/\d{1,2})?|0?\.\d{2,4})(?:"|″|”|''|in\.?)?-(\d{1,2})(?:-?UN(?:C|F|EF|S)?)?(?:-?[123][AB])?$/i;

/** Sixty-fourths that a decimal of an inch stands for: 0.3125 is 5/16; null for any other. */
function fractionOf(decimal: string): string | null {
  let [above, below] = [Number(decimal) * 64, 64];
  if (Math.abs(above - Math.round(above)) > 64 * 0.5e-3) return null;
  above = Math.round(above);
  while (above % 2 === 0 && above > 0) [above, below] = [above / 2, below / 2];
  return above > 0 && below > 1 ? `${above}/${below}` : null;
}

/** The published size; null where the table does not have it. */
function published(run: () => ThreadSize): ThreadSize | null {
  try {
    return run();
  } catch (error) {
    if (isElectroheatError(error) && error.code === "unknown-name") return null;
    throw error;
  }
}

function computed(
  thread: string,
  nominal: string,
  form: ThreadSize["form"],
  diameter: Meters,
  pitch: Meters,
): NamedThread {
  const { stressArea, minorArea } = asField("text", () => threadGeometry({ form, diameter, pitch }));
  const basis: Basis = {
    source: form === "metric" ? "iso-898-1" : "asme-b1-1",
    edition: "definition",
    table: "stress area from diameter and pitch",
    kind: "definition",
  };
  return { thread, nominal, form, diameter, pitch, stressArea, minorArea, basis };
}

function metricSize(size: string, written: string | undefined, text: string): NamedThread {
  const nominal = `M${Number(size)}`;
  const coarse = published(() => metricThread(nominal));
  if (written === undefined) {
    if (coarse !== null) return { ...coarse, nominal };
    const expected = `one of ${metricTable.rows.map(([thread]) => thread).join(", ")}, or a thread with its pitch: "M20x2.5"`;
    return fail({ code: "unknown-name", path: "text", expected, received: text });
  }
  const pitch = millimeters(Number(written));
  if (coarse !== null && Math.abs(coarse.pitch / pitch - 1) < 1e-9) return { ...coarse, nominal };
  return computed(`${nominal}x${Number(written)}`, nominal, "metric", millimeters(Number(size)), pitch);
}

function unifiedSize(mark: string, diameter: string, perInch: string, text: string): NamedThread {
  const size = diameter.includes(".") ? fractionOf(diameter) : diameter;
  if (size === null || Number(perInch) === 0)
    return fail({ code: "malformed-text", path: "text", expected: FORMS, received: text });
  const thread = `${size}-${Number(perInch)}`;
  const [above = "", below] = size.split("/");
  const nominal = below === undefined ? `#${size}` : size;
  const listed = published(() => unifiedThread(thread));
  if (listed !== null) return { ...listed, nominal };
  // A fraction of an inch says its diameter; a screw number beyond the table, or whole inches, would have to be guessed.
  if (below === undefined || mark === "#" || Number(below) === 0) {
    const expected = "a screw number with the threads of its table (6-32 to 12-28), or a fraction of an inch";
    return fail({ code: "unknown-name", path: "text", expected, received: text });
  }
  return computed(
    thread,
    nominal,
    "unified",
    inches(Number(above) / Number(below)),
    inches(1 / Number(perInch)),
  );
}

/**
 * Diameter, pitch and areas of a thread as people write it: a published size by its table ({@link metricThread}, {@link unifiedThread}),
 * any other metric thread with its pitch, or unified one with a fraction of an inch, from diameter and pitch ({@link threadGeometry}).
 * Marks of series and class (UNC, UNF, 2A, 6g) are read over: threads per inch say more.
 * @param text - the thread, from its drawing, packet or thread gauge: "M8", "M8x1", "1/4-20", "1/4-20 UNC-2A", "¼\"-20", "#10-32", "No. 10-32"
 * @returns the size under its table name, with the nominal diameter
 * @throws ElectroheatError `missing`, `wrong-type`, `malformed-text`, `out-of-range`, `unknown-name` for a size that its text does not settle
 * @source ISO 898-1 and ASME B1.1: sizes as printed; stress areas of others by their formulas
 * @example
 * ```ts
 * const { thread, nominal, stressArea } = threadSize("1/4\"-20 UNC-2A");
 * [thread, nominal, toSquareMillimeters(stressArea)] // => ["1/4-20", "1/4", 20.516]
 * ```
 * @since 0.1.0
 */
export function threadSize(text: string): NamedThread {
  if (text === undefined || text === null || text === "")
    return fail({ code: "missing", path: "text", expected: FORMS, received: text });
  if (typeof text !== "string")
    return fail({ code: "wrong-type", path: "text", expected: FORMS, received: text });
  const bare = text.length > LONGEST ? "" : plain(text);
  const metric = METRIC.exec(bare);
  if (metric !== null) return metricSize(metric[1] as string, metric[2], text);
  const unified = UNIFIED.exec(bare);
  if (unified === null)
    return fail({ code: "malformed-text", path: "text", expected: FORMS, received: text });
  const [, mark, diameter, perInch] = unified as unknown as readonly [string, string, string, string];
  return unifiedSize(mark, diameter, perInch, text);
}
