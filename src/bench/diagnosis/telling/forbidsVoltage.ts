/** Faults with which nobody closes the supply: the frame live, or elements and lines loaded beyond what they are built for. */
import type { DiagnosedFault } from "../question/diagnosedFault.ts";

/** Faults of these kinds, whatever else they say. */
const KINDS = ["earth fault", "earthed terminal", "other rating", "feed connected", "mis-landed"] as const;

/** Links that give elements more than their voltage, or a current to what should carry none. */
const LINKS = ["delta", "neutral"] as const;

/** A fault under which the module stays dead. */
export type ForbidsVoltage =
  | Extract<DiagnosedFault, { readonly kind: (typeof KINDS)[number] }>
  | (Extract<DiagnosedFault, { readonly kind: "mis-linked" }> & { readonly as: (typeof LINKS)[number] });

/** Whether nobody closes the supply, for a reading or for work, while this fault may be there. */
export const forbidsVoltage = (fault: DiagnosedFault): fault is ForbidsVoltage =>
  KINDS.some((kind) => kind === fault.kind) ||
  (fault.kind === "mis-linked" && LINKS.some((as) => as === fault.as));
