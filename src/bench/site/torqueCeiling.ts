/** The most torque that a fastening takes: by its own strength and friction, and by tables that print a maximum. */
import { compareQuoted } from "../../decision/index.ts";
import { type TorqueKind, tightening } from "../../joint/index.ts";
import type { NewtonMeters, Pascals } from "../../quantity/index.ts";
import { basisText } from "./figure.ts";
import type { Thread } from "./threads.ts";

/** Nut factors of a thread in its condition. */
export interface NutFactors {
  readonly low: number;
  readonly high: number;
}

/** A torque not to be passed, and what sets it. */
export interface Ceiling {
  readonly torque: NewtonMeters;
  readonly kind: TorqueKind | "from preload";
  readonly basis: string;
  /** What the reader must know of the figure itself. */
  readonly cautions: readonly string[];
}

/** Preload and stress go with torque, so what one newton-meter does tells at which torque a limit is reached. */
const TRIAL = 1 as NewtonMeters;

/**
 * The greatest torque at which the whole nut factor band stays within the customary share of proof, and tension and twist together within
 * the strength. Either may come first: slippery threads reach the share of proof, rough ones twist the stud.
 */
export function strengthCeiling(thread: Thread, strength: Pascals, { low, high }: NutFactors): Ceiling {
  const { diameter, stressArea } = thread;
  const at = { torque: TRIAL, diameter, stressArea, nutFactorLow: low, nutFactorHigh: high, strength };
  const { proofShare, proof, proofBasis, yielding, yieldingBasis } = tightening(at);
  const byProof = (TRIAL * (proof.high as number)) / proofShare.high;
  const byTwist = (TRIAL * (yielding.high as number)) / (yielding.value + yielding.halfWidth);
  const twisted = compareQuoted({ left: byTwist, right: byProof }) < 0;
  return {
    torque: (twisted ? byTwist : byProof) as NewtonMeters,
    kind: "from preload",
    basis: `torque = K·F·d with the lowest nut factor at ${basisText(twisted ? yieldingBasis : proofBasis)}; nut factor ${low} to ${high}`,
    cautions: [],
  };
}

/** The lower of two ceilings; the second where they are the same. */
export const lowerOf = (one: Ceiling | null, other: Ceiling | null): Ceiling | null =>
  one === null || other === null
    ? (one ?? other)
    : compareQuoted({ left: one.torque, right: other.torque }) < 0
      ? one
      : other;
