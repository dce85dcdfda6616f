/** One call from torque to what it does: preload band, share of proof, risk of yielding, pressure on the bar. */
import { type Judgement, judge } from "../decision/index.ts";
import type { Basis } from "../material/index.ts";
import {
  checkBetween,
  checkMeasurable,
  given,
  inField,
  type Meters,
  type NewtonMeters,
  onlyFields,
  type Pascals,
  type SquareMeters,
  type Warning,
} from "../quantity/index.ts";
import { JOINT_DEFERRAL } from "./basis.ts";
import { type PreloadBand, preloadBand } from "./preload.ts";
import { type BearingPressure, bearingPressure } from "./pressure.ts";

/** Where a judged share stands when no limit is given: joints that are taken apart again. */
const REUSED_SHARE = 0.75;
/** Share of the torque that reaches the shank as twist while the nut is turned: all but the face friction. */
const TWIST_SHARE = 0.5;

/**
 * What a torque does to a fastener and the bar under it.
 * @since 0.1.0
 */
export interface Tightening {
  /** Preload band. */
  readonly preload: PreloadBand;
  /** Preload over proof load, lowest and highest. */
  readonly proofShare: {
    /** Lower end, 0..1 of proof. */
    readonly low: number;
    /** Upper end. */
    readonly high: number;
  };
  /** Judgement of the whole band against the share of proof allowed. */
  readonly proof: Judgement;
  /** Where the share allowed comes from. */
  readonly proofBasis: Basis;
  /**
   * Judgement of tension and twist together against the yield (or proof) strength: the risk of yielding while the nut
   * is turned.
   */
  readonly yielding: Judgement;
  /** Where that criterion comes from; its share of twist is common practice. */
  readonly yieldingBasis: Basis;
  /** Pressure under the face and at the interface at the lowest preload; `null` without face dimensions. */
  readonly pressureLow: BearingPressure | null;
  /** The same at the highest preload. */
  readonly pressureHigh: BearingPressure | null;
  /** To whom the verdicts defer. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

const FIELDS = [
  "torque",
  "diameter",
  "stressArea",
  "nutFactorLow",
  "nutFactorHigh",
  "strength",
  "allowedShare",
  "face",
];

/**
 * Preload band, share of proof, risk of yielding and bar pressure from a torque.
 *
 * Tension σ = F/stressArea; twist τ = 16·(0.5·torque)/(π·d³) with d the diameter of the stress area; together √(σ² +
 * 3τ²). Half of the torque as twist is common practice (50 % face, 40 % thread, 10 % tension) and holds for the nut
 * factors of ordinary threads. Everything without a default is required: stud strength and nut factors not known is
 * an answer not known. Aged studs are weaker than their grade.
 * @param input.torque - tightening torque (N·m), more than 0
 * @param input.diameter - nominal diameter (m), more than 0
 * @param input.stressArea - tensile stress area (m²), more than 0, less than that of the diameter; `metricThread`
 *   gives it
 * @param input.nutFactorLow - lowest nut factor, 0.03 to 1; `nutFactorRange` gives it by condition
 * @param input.nutFactorHigh - highest nut factor
 * @param input.strength - proof (or yield) strength of the stud (Pa), more than 0; `fastenerStrength` gives it as
 *   `limit`
 * @param input.allowedShare - share of proof allowed, 0.1 to 1; 0.75 (fasteners that are reused) if left out
 * @param input.face - bearing face: outer diameter, hole in the bar, bar thickness (m); pressures are left out
 *   without it
 * @returns bands, judgements with their bases, pressures, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source Shigley equations 8-27 and 8-31 (0.75 of proof for reused fasteners, 0.90 permanent); distortion-energy
 *   criterion; 50/40/10 split: fastener guide, common practice
 * @example
 * ```ts
 * const m6 = metricThread("M6");
 * const { preload, proof } = tightening({
 *   torque: newtonMeters(6.5), diameter: m6.diameter, stressArea: m6.stressArea, nutFactorLow: 0.18, nutFactorHigh: 0.27,
 *   strength: fastenerStrength({ standard: "ISO 898-1", grade: "8.8", diameter: m6.diameter }).limit,
 * });
 * [preload.low, preload.high, proof.verdict] // => [4012.35, 6018.52, "within"]
 * ```
 * @since 0.1.0
 */
export function tightening(input: {
  readonly torque: NewtonMeters;
  readonly diameter: Meters;
  readonly stressArea: SquareMeters;
  readonly nutFactorLow: number;
  readonly nutFactorHigh: number;
  readonly strength: Pascals;
  readonly allowedShare?: number;
  readonly face?: {
    readonly outerDiameter: Meters;
    readonly holeDiameter: Meters;
    readonly barThickness: Meters;
  };
}): Tightening {
  onlyFields(given(input), FIELDS);
  const { torque, diameter, stressArea, strength, allowedShare = REUSED_SHARE, face } = input;
  checkMeasurable("torque", torque, "N·m");
  checkMeasurable("diameter", diameter, "m");
  checkMeasurable("stressArea", stressArea, "m²");
  checkBetween("stressArea", stressArea, 0, (Math.PI / 4) * diameter * diameter, "m²");
  checkMeasurable("strength", strength, "Pa");
  checkBetween("allowedShare", allowedShare, 0.1, 1);
  if (face !== undefined) given(face, "face");
  const preload = preloadBand(input);
  const proofLoad = strength * stressArea;
  const share = { low: preload.low / proofLoad, high: preload.high / proofLoad };
  const core = Math.sqrt((4 * stressArea) / Math.PI);
  const twist = (16 * TWIST_SHARE * torque) / (Math.PI * core ** 3);
  const combined = (force: number): number => Math.hypot(force / stressArea, Math.sqrt(3) * twist) / strength;
  const band = (low: number, high: number): { value: number; halfWidth: number } => ({
    value: (low + high) / 2,
    halfWidth: (high - low) / 2,
  });
  const proof = judge({ ...band(share.low, share.high), high: allowedShare, rule: "share of proof load" });
  const yielding = judge({
    ...band(combined(preload.low), combined(preload.high)),
    high: 1,
    rule: "tension and twist together against strength",
  });
  const warnings: Warning[] = [];
  if (yielding.verdict !== "within") {
    warnings.push({
      code: "caution",
      path: "torque",
      message: "This torque can yield the stud while the nut is turned: use less torque or a stronger stud.",
    });
  }
  const pressed = (force: PreloadBand["low"]): BearingPressure | null =>
    face === undefined ? null : inField("face", () => bearingPressure({ force, ...face }));
  return {
    preload,
    proofShare: share,
    proof,
    proofBasis:
      input.allowedShare === undefined
        ? {
            source: "shigley",
            edition: "9th ed., equation 8-31",
            table: "0.75 of proof for fasteners that are reused",
            kind: "published",
          }
        : {
            source: "share given by the caller",
            edition: "as given",
            table: "allowedShare",
            kind: "user table",
          },
    yielding,
    yieldingBasis: {
      source: "common-practice",
      edition: "distortion energy; 50/40/10 split of the torque, no published source",
      table: "tension and twist together",
      kind: "common practice",
    },
    pressureLow: pressed(preload.low),
    pressureHigh: pressed(preload.high),
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}
