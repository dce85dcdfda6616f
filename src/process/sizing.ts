/** How much power an oven needs: to heat up in the wanted time, to run, and the margins that people add. */
import {
  type Celsius,
  checkBetween,
  checkOneOf,
  fail,
  given,
  type Joules,
  type JoulesPerKilogramKelvin,
  type Kilograms,
  type KilogramsPerSecond,
  type Seconds,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/** Ends of the range of margins that the source calls usual. */
const MARGIN_LOW = 0.1;
const MARGIN_HIGH = 0.35;

/**
 * Mean loss during an exponential heat-up over the loss at set point, for r = loss at set point / power:
 * 1/r + 1/ln(1 − r). One half for a strong oven, two thirds at r = 0.88, one at r = 1.
 * @param lossShare - loss at set point over power, 0 to 1, 1 excluded
 * @returns the share, 0.5 to 1
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First-order heating, averaged over the heat-up
 * @example
 * ```ts
 * meanLossShare(0.8) // => 0.628665
 * ```
 * @since 0.1.0
 */
export function meanLossShare(lossShare: number): number {
  checkBetween("lossShare", lossShare, 0, 1);
  if (lossShare === 1) {
    fail({
      code: "out-of-range",
      path: "lossShare",
      expected: "less than 1: at 1 the set point is never reached",
      received: 1,
    });
  }
  // Below this the two terms cancel; the series is exact to the last digit.
  if (lossShare < 1e-3) return 0.5 + lossShare / 12 + lossShare ** 2 / 24 + (lossShare ** 3 * 19) / 720;
  return 1 / lossShare + 1 / Math.log1p(-lossShare);
}

/**
 * Which share of the loss at set point is counted during heat-up.
 *
 * - `two thirds`: the trade's short method
 * - `one half`: a strong oven, or a straight rise
 * @since 0.1.0
 */
export type LossRule = "two thirds" | "one half";

/**
 * Margin by the name of its place in the range that the short method calls usual.
 *
 * - `lowest usual`: 0.10
 * - `highest usual`: 0.35
 * @since 0.1.0
 */
export type NamedMargin = "lowest usual" | "highest usual";

/**
 * Power of an oven by the short method.
 * @since 0.1.0
 */
export interface OvenSizing {
  /** Power to heat up in the wanted time, margin included, W. */
  readonly startUp: Watts;
  /** Power to run, margin included, W. */
  readonly operating: Watts;
  /** The larger: the power to connect, W. */
  readonly connected: Watts;
  /** Which of the two decides. */
  readonly decidedBy: "start-up" | "operating";
  /** Share of the loss counted during heat-up. */
  readonly lossShare: number;
  /** Margin that was added. */
  readonly margin: number;
  /** What to know about the margin. */
  readonly warnings: readonly Warning[];
}

function marginOf(margin: number | NamedMargin): number {
  if (margin === "lowest usual") return MARGIN_LOW;
  if (margin === "highest usual") return MARGIN_HIGH;
  if (typeof margin === "string" && margin !== "") {
    return fail({
      code: "unknown-name",
      path: "margin",
      expected: "a share, 0 or more, or one of lowest usual, highest usual",
      received: margin,
    });
  }
  checkScaleOrZero("margin", margin);
  return margin;
}

/**
 * Power of an oven by the short method: start-up = (heat/time + share × loss) × (1 + margin), operating = (throughput +
 * loss) × (1 + margin); the larger is connected.
 * @param input.heat - heat of everything that is heated up, latent heat included, J, more than 0
 * @param input.time - wanted heat-up time, s, more than 0
 * @param input.loss - loss at set point, walls, openings and exhaust, W, 0 or more
 * @param input.throughput - heat of the work passing through when running, latent heat included, W, 0 or more; 0 if left out
 * @param input.lossRule - which share of the loss counts during heat-up
 * @param input.margin - added to both: a share such as 0.2, 0 or more, or by name; the source calls 0.10 to 0.35 usual
 * @returns both powers and the larger; a warning for an unusual margin
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`
 * @source Heater reference data, power calculation, short method (common practice)
 * @example
 * ```ts
 * ovenSizing({
 *   heat: kilowattHours(30), time: hours(1), loss: kilowatts(9), throughput: kilowatts(12), lossRule: "two thirds", margin: 0.2,
 * }).connected // => 43200
 * ```
 * @since 0.1.0
 */
export function ovenSizing(input: {
  readonly heat: Joules;
  readonly time: Seconds;
  readonly loss: Watts;
  readonly throughput?: Watts;
  readonly lossRule: LossRule;
  readonly margin: number | NamedMargin;
}): OvenSizing {
  given(input);
  const { heat, time, loss, throughput = 0 } = input;
  const margin = marginOf(input.margin);
  checkScale("heat", heat, "J");
  checkScale("time", time, "s");
  checkScaleOrZero("loss", loss, "W");
  checkScaleOrZero("throughput", throughput, "W");
  const rule = checkOneOf("lossRule", input.lossRule, ["two thirds", "one half"]);
  const lossShare = rule === "two thirds" ? 2 / 3 : 1 / 2;
  const startUp = (heat / time + lossShare * loss) * (1 + margin);
  const operating = (throughput + loss) * (1 + margin);
  const warnings: readonly Warning[] =
    margin >= MARGIN_LOW && margin <= MARGIN_HIGH
      ? []
      : [
          {
            code: "suspicious",
            path: "margin",
            message: `Margins of ${MARGIN_LOW} to ${MARGIN_HIGH} are usual.`,
            limit: margin < MARGIN_LOW ? MARGIN_LOW : MARGIN_HIGH,
            unit: "",
            source: "heater-short-method",
          },
        ];
  return {
    startUp: startUp as Watts,
    operating: operating as Watts,
    connected: Math.max(startUp, operating) as Watts,
    decidedBy: startUp >= operating ? "start-up" : "operating",
    lossShare,
    margin,
    warnings,
  };
}

/**
 * Heat to bring a mass from one temperature to another: mass × specificHeat × (to − from).
 * @param input.mass - mass, kg, more than 0
 * @param input.specificHeat - mean specific heat over the range, J/(kg·K), more than 0
 * @param input.from - temperature before, °C
 * @param input.to - temperature after, °C
 * @returns the heat, J; negative when it cools
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of specific heat
 * @example
 * ```ts
 * const heat = chargeHeat({
 *   mass: kilograms(1.5), specificHeat: joulesPerKilogramKelvin(1500), from: celsius(25), to: celsius(125),
 * });
 * chargePower({ heat, time: minutes(10), efficiency: 0.5 }) // => 750
 * ```
 * @since 0.1.0
 */
export function chargeHeat(input: {
  readonly mass: Kilograms;
  readonly specificHeat: JoulesPerKilogramKelvin;
  readonly from: Celsius;
  readonly to: Celsius;
}): Joules {
  given(input);
  checkScale("mass", input.mass, "kg");
  checkScale("specificHeat", input.specificHeat, "J/(kg·K)");
  checkTemperature("from", input.from);
  checkTemperature("to", input.to);
  return (input.mass * input.specificHeat * (input.to - input.from)) as Joules;
}

/**
 * Power to bring a heat into a charge within a time: heat / (time × efficiency).
 * @param input.heat - heat into the charge, J, more than 0
 * @param input.time - time for it, s, more than 0
 * @param input.efficiency - share of the electric power that reaches the charge, more than 0, up to 1; 1 if left out
 * @returns electric power, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of power and efficiency
 * @example
 * ```ts
 * chargePower({ heat: kilowattHours(62), time: hours(2) }) // => 31000
 * ```
 * @since 0.1.0
 */
export function chargePower(input: {
  readonly heat: Joules;
  readonly time: Seconds;
  readonly efficiency?: number;
}): Watts {
  given(input);
  const { heat, time, efficiency = 1 } = input;
  checkScale("heat", heat, "J");
  checkScale("time", time, "s");
  checkScale("efficiency", efficiency);
  checkBetween("efficiency", efficiency, 0, 1);
  return (heat / (time * efficiency)) as Watts;
}

/**
 * Heat of work passing through: massFlow × specificHeat × (to − from).
 * @param input.massFlow - mass through the oven, kg/s, more than 0
 * @param input.specificHeat - mean specific heat over the range, J/(kg·K), more than 0
 * @param input.from - temperature coming in, °C
 * @param input.to - temperature going out, °C
 * @returns heat flow, W
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First law for a steady stream
 * @example
 * ```ts
 * throughputPower({
 *   massFlow: kilogramsPerHour(100), specificHeat: joulesPerKilogramKelvin(500), from: celsius(20), to: celsius(200),
 * }) // => 2500
 * ```
 * @since 0.1.0
 */
export function throughputPower(input: {
  readonly massFlow: KilogramsPerSecond;
  readonly specificHeat: JoulesPerKilogramKelvin;
  readonly from: Celsius;
  readonly to: Celsius;
}): Watts {
  given(input);
  checkScale("massFlow", input.massFlow, "kg/s");
  checkScale("specificHeat", input.specificHeat, "J/(kg·K)");
  checkTemperature("from", input.from);
  checkTemperature("to", input.to);
  return (input.massFlow * input.specificHeat * (input.to - input.from)) as Watts;
}
