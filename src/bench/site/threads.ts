/** Threads as a record writes them: the published size where there is one, else areas from diameter and pitch. */
import { compareQuoted } from "../../decision/index.ts";
import { metricThread, type ThreadSize, threadGeometry, unifiedThread } from "../../joint/index.ts";
import {
  fail,
  inches,
  isElectroheatError,
  type Meters,
  millimeters,
  type SquareMeters,
} from "../../quantity/index.ts";
import { basisText } from "./figure.ts";

/** A thread with what torque and preload need of it. */
export interface Thread {
  /** Designation as tables write it: `"M8"`, `"10-32"`. */
  readonly name: string;
  /** Nominal diameter as tables by diameter write it: `"M8"`, `"1/4"`, `"#10"`. */
  readonly nominal: string;
  readonly form: "metric" | "unified";
  readonly diameter: Meters;
  readonly stressArea: SquareMeters;
  /** Where the stress area comes from. */
  readonly basis: string;
}

const FORMS = 'a metric thread ("M6", "M8x1") or a unified one ("1/4-20", "#10-32")';

/** The published size; `null` where the table does not have it. */
function published(run: () => ThreadSize): ThreadSize | null {
  try {
    return run();
  } catch (error) {
    if (isElectroheatError(error) && error.code === "unknown-name") return null;
    throw error;
  }
}

function fromSize(size: ThreadSize, nominal: string): Thread {
  const { thread, form, diameter, stressArea, basis } = size;
  return { name: thread, nominal, form, diameter, stressArea, basis: basisText(basis) };
}

function fromGeometry(
  name: string,
  nominal: string,
  form: Thread["form"],
  diameter: Meters,
  pitch: Meters,
): Thread {
  const { stressArea } = threadGeometry({ form, diameter, pitch });
  const standard = form === "metric" ? "ISO 898-1" : "ASME B1.1";
  return {
    name,
    nominal,
    form,
    diameter,
    stressArea,
    basis: `stress area from diameter and pitch (${standard})`,
  };
}

/** Reads a thread; refused with path `thread`. */
export function threadOf(text: string): Thread {
  const bare = text.replace(/\s+/g, "").replace(/×/g, "x");
  const metric = /^M(\d{1,3}(?:\.\d+)?)(?:x(\d+(?:\.\d+)?))?$/i.exec(bare);
  if (metric !== null) {
    const [, size = "", pitch] = metric;
    const name = `M${size}`;
    if (pitch === undefined) return fromSize(metricThread(name), name);
    const coarse = published(() => metricThread(name));
    if (coarse !== null && compareQuoted({ left: coarse.pitch, right: millimeters(Number(pitch)) }) === 0) {
      return fromSize(coarse, name);
    }
    return fromGeometry(
      `${name}x${pitch}`,
      name,
      "metric",
      millimeters(Number(size)),
      millimeters(Number(pitch)),
    );
  }
  const unified = /^(#?)(\d{1,2}(?:\/\d{1,2})?)-(\d{1,2})(?:UN[CF])?$/i.exec(bare);
  if (unified === null)
    return fail({ code: "malformed-text", path: "thread", expected: FORMS, received: text });
  const [, mark = "", diameter = "", perInch = ""] = unified;
  const name = `${diameter}-${perInch}`;
  const nominal = diameter.includes("/") ? diameter : `#${diameter}`;
  const [above = "", below] = diameter.split("/");
  const size = published(() => unifiedThread(name));
  if (size !== null) return fromSize(size, nominal);
  // A fraction of an inch says its diameter; a screw number beyond the table, or whole inches, would have to be guessed.
  if (below === undefined || mark === "#" || Number(below) === 0)
    return fromSize(unifiedThread(name), nominal);
  const across = inches(Number(above) / Number(below));
  return fromGeometry(name, nominal, "unified", across, inches(1 / Number(perInch)));
}
