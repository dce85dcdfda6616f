/** Safety ventilation of ovens that drive off solvent: estimates for a first look, with who decides. */
import type { Basis } from "../material/index.ts";
import {
  type CubicMetersPerSecond,
  checkBetween,
  checkOneOf,
  cubicFeet,
  fahrenheit,
  fail,
  given,
  type KilogramsPerCubicMeter,
  toAbsoluteKelvins,
  usGallons,
  type Warning,
} from "../quantity/index.ts";
import type { AirFlow } from "./airFlow.ts";
import { checkScale } from "./scale.ts";

/**
 * Air to dilute a solvent, and who decides about it.
 * @since 0.1.0
 */
export interface SafetyVentilation {
  /** Fresh air, as a flow for {@link exhaustHeat}. */
  readonly flow: AirFlow;
  /** Volume of air for each volume of liquid solvent. */
  readonly airPerSolvent: number;
  /** Rule it goes by. */
  readonly basis: Basis;
  /** Standard and edition that the rule stands in, and who decides. */
  readonly deferral: {
    /** The standard. */
    readonly standard: string;
    /** Which edition. */
    readonly edition: string;
    /** Who decides. */
    readonly note: string;
  };
  /** Always cautions: the hot oven, the batch, the proof of flow, and what the older rule leaves out. */
  readonly warnings: readonly Warning[];
}

/**
 * How the air is found.
 *
 * - `share of the flammable limit`: keeps the vapor at a share of its lower flammable limit, 0.25 without a vapor monitor
 * - `10000 ft3 per gallon`: an older estimating rule for any solvent
 * @since 0.1.0
 */
export type VentilationRule =
  | {
      /** By the flammable limit of the solvent. */
      readonly rule: "share of the flammable limit";
      /** Volume of vapor at 70 °F from one volume of liquid, from {@link solventVaporRatio} or the data sheet, more than 0. */
      readonly vaporRatio: number;
      /** Lower flammable limit, volume of vapor in volume of air, more than 0, up to 1: 0.011 for 1.1 %. */
      readonly lowerFlammableLimit: number;
      /** Share of that limit allowed in the exhaust, more than 0, up to 0.25 by the rule. */
      readonly shareOfLimit: number;
    }
  | {
      /** By the older estimating rule. */
      readonly rule: "10000 ft3 per gallon";
    };

/** What neither rule counts. */
const UNCORRECTED: readonly Warning[] = [
  {
    code: "caution",
    path: "airPerSolvent",
    message:
      "Not corrected for a hot oven: the lower flammable limit falls as the oven gets hotter, so more air is needed than this.",
    source: "nfpa-86",
  },
  {
    code: "caution",
    path: "solventRate",
    message:
      "Not corrected for a batch oven: solvent that leaves the load in a burst needs the air of the peak, not of the mean rate.",
    source: "nfpa-86",
  },
];

/** The older rule does not look at the solvent. */
const OLDER_RULE: Warning = {
  code: "caution",
  path: "by.rule",
  message:
    "10000 ft³ per gallon is 74805 volumes of air and does not look at the solvent: toluene (227 volumes of vapor, limit 1.1 %) then stands near 27.5 % of its lower flammable limit, above the 25 % of the other rule, which asks for about 82390. Go by the flammable limit of the solvent.",
  limit: 0.25,
  unit: "",
  source: "coating-oven-article",
};

/** Molar gas constant, J/(mol·K), exact. */
const GAS_CONSTANT = 8.31446261815324;

/**
 * Volume of vapor at 70 °F and sea level from one volume of liquid: liquidDensity / molarMass × R·T/p.
 * @param input.liquidDensity - of the liquid, from its data sheet, kg/m³, more than 0
 * @param input.molarMass - of the solvent, from its data sheet, kg/mol, 0.01 to 1 (grams per mole divided by 1000)
 * @returns vapor volume over liquid volume
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition (ideal gas)
 * @example
 * ```ts
 * solventVaporRatio({ liquidDensity: kilogramsPerCubicMeter(867), molarMass: 0.09214 }) // => 227.207
 * ```
 * @since 0.1.0
 */
export function solventVaporRatio(input: {
  readonly liquidDensity: KilogramsPerCubicMeter;
  readonly molarMass: number;
}): number {
  given(input);
  checkScale("liquidDensity", input.liquidDensity, "kg/m³");
  checkBetween("molarMass", input.molarMass, 0.01, 1, "kg/mol");
  // 70 °F, where standard air is counted.
  const kelvin = toAbsoluteKelvins(fahrenheit(70));
  return ((input.liquidDensity / input.molarMass) * GAS_CONSTANT * kelvin) / 101325;
}

/**
 * Fresh air for an oven that drives off solvent, as an estimate: by the flammable limit vaporRatio × (1/(shareOfLimit ×
 * lowerFlammableLimit) − 1), or 10000 ft³ for each US gallon.
 *
 * Flammable limits fall as the oven gets hotter and are not corrected here; batch ovens, where the solvent leaves in a burst,
 * need more; the older rule is not held against the flammable limit. Each is among the warnings. Not a design.
 * @param input.solventRate - liquid solvent driven off, highest rate, m³/s, more than 0
 * @param input.by - the rule and its figures
 * @returns the air, its rule, the standard that governs, and cautions
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`
 * @source NFPA 86, Standard for Ovens and Furnaces (25 % of the lower flammable limit; from memory, text not seen, edition in
 *   force governs); toluene in the warning: density 867 kg/m³, 92.14 g/mol, limit 1.1 % (from memory)
 * @example
 * ```ts
 * const { airPerSolvent, deferral } = safetyVentilation({
 *   solventRate: usGallonsPerHour(2), by: { rule: "10000 ft3 per gallon" },
 * });
 * [airPerSolvent, deferral.standard] // => [74805.2, "NFPA 86"]
 * ```
 * @since 0.1.0
 */
export function safetyVentilation(input: {
  readonly solventRate: CubicMetersPerSecond;
  readonly by: VentilationRule;
}): SafetyVentilation {
  given(input);
  const { solventRate, by } = input;
  checkScale("solventRate", solventRate, "m³/s");
  if (by === undefined || by === null)
    fail({ code: "missing", path: "by", expected: "a rule", received: by });
  const rule = checkOneOf("by.rule", by.rule, ["share of the flammable limit", "10000 ft3 per gallon"]);
  let airPerSolvent: number;
  if (by.rule === "share of the flammable limit") {
    checkScale("by.vaporRatio", by.vaporRatio);
    checkScale("by.lowerFlammableLimit", by.lowerFlammableLimit);
    checkBetween("by.lowerFlammableLimit", by.lowerFlammableLimit, 0, 1);
    checkScale("by.shareOfLimit", by.shareOfLimit);
    // More than the rule allows would be an answer that guides somebody into a fire.
    checkBetween("by.shareOfLimit", by.shareOfLimit, 0, 0.25);
    airPerSolvent = by.vaporRatio * (1 / (by.shareOfLimit * by.lowerFlammableLimit) - 1);
  } else {
    airPerSolvent = cubicFeet(10_000) / usGallons(1);
  }
  const older = rule === "10000 ft3 per gallon";
  return {
    flow: {
      basis: "standard",
      standard: "0.075 lb/ft3",
      volumeFlow: (solventRate * airPerSolvent) as CubicMetersPerSecond,
    },
    airPerSolvent,
    basis: {
      source: older ? "coating-oven-article" : "nfpa-86",
      edition: older
        ? "article of 2017 on an older edition's estimating rule"
        : "from memory; only summaries of it seen, not its text",
      table: older ? "10000 ft³ for each US gallon" : "25 % of the lower flammable limit",
      // Nobody has read the figure in the standard itself, so it does not pass as printed there.
      kind: "common practice",
    },
    deferral: {
      standard: "NFPA 86",
      edition: "the edition adopted where the oven stands; its text was not seen for this figure",
      note: "The adopted standard, the authority having jurisdiction and the maker's oven design govern the safety ventilation; this is an estimate for checking a purge fan or a heat load, not a design.",
    },
    warnings: [
      ...(older ? [OLDER_RULE] : []),
      ...UNCORRECTED,
      {
        code: "caution",
        path: "flow",
        message:
          "Solvent vapor in an oven can explode: prove the exhaust flow before heat, and do not run on a degraded fan or interlock.",
        source: "nfpa-86",
      },
    ],
  };
}
