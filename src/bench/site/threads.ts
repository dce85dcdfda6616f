/** Threads of a record, with the words for where their stress area comes from. */
import { type NamedThread, threadSize } from "../../joint/index.ts";
import { asField, type Meters, type SquareMeters } from "../../quantity/index.ts";
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

const STANDARD = { metric: "ISO 898-1", unified: "ASME B1.1" } as const;

const basisOf = ({ basis, form }: NamedThread): string =>
  basis.kind === "definition" ? `${basis.table} (${STANDARD[form]})` : basisText(basis);

/** Reads a thread; refused with path `thread`. */
export function threadOf(text: string): Thread {
  const found = asField("thread", () => threadSize(text));
  const { thread: name, nominal, form, diameter, stressArea } = found;
  return { name, nominal, form, diameter, stressArea, basis: basisOf(found) };
}
