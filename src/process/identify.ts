/** Loss and heat capacity of an oven from what it did: two readings on the way up. */
import {
  type Celsius,
  fail,
  given,
  type JoulesPerKelvin,
  type Kelvins,
  type Seconds,
  type Warning,
  type Watts,
  type WattsPerKelvin,
} from "../quantity/index.ts";
import { checkScale, checkScaleOrZero, checkTemperature } from "./scale.ts";

/**
 * An oven identified from readings.
 * @since 0.1.0
 */
export interface IdentifiedOven {
  /** Time constant, s. */
  readonly timeConstant: Seconds;
  /** Temperature it will end at if the power stays, °C. */
  readonly ultimate: Celsius;
  /** Final rise above ambient, K. */
  readonly finalRise: Kelvins;
  /** Loss per kelvin above ambient, W/K; `null` without the power. */
  readonly lossConductance: WattsPerKelvin | null;
  /** Heat capacity, J/K; `null` without the power. */
  readonly heatCapacity: JoulesPerKelvin | null;
  /** How far the final rise moves for one kelvin more in the second reading, K per K. */
  readonly riseSensitivity: number;
  /** Says when the readings are too straight to lean on. */
  readonly warnings: readonly Warning[];
}

/** Above this ratio of the two rises the curve is nearly straight: one kelvin of reading moves the end by six. */
const NEARLY_STRAIGHT = 1.6;

/** Least rise that a reading can stand on, K: a thousandth of a kelvin is below any oven thermometer. */
const LEAST_RISE = 1e-3;
/** Least bend over the first rise: below it one kelvin of reading moves the end by more than ten thousand. */
const LEAST_BEND = 0.01;

/**
 * Time constant, ultimate temperature and, with the power, loss and heat capacity of an oven from two readings at t and 2t of
 * a start from ambient: timeConstant = t/ln[r1/(r2 − r1)], finalRise = r1²/(2·r1 − r2), with r the rises above ambient.
 *
 * Steady power from a uniform cold start, one temperature for everything. Take t as long as the job allows: the straighter
 * the curve, the less it says.
 * @param input.ambient - room temperature and temperature at the start, °C
 * @param input.time - time of the first reading, s, more than 0; the second is at twice that time
 * @param input.first - oven temperature at that time, °C, 0.001 K or more above ambient
 * @param input.second - oven temperature at twice that time, °C, above the first
 * @param input.power - steady heat into the oven meanwhile, W, more than 0; without it loss and capacity stay unknown
 * @returns the oven's constants, and how firm they are
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `not-identifiable` when the bend
 *   2·r1 − r2 is less than a hundredth of r1
 * @source First-order heating, two equally spaced readings; textbooks of electric drives
 * @example
 * ```ts
 * const { timeConstant, finalRise } = ovenFromTwoReadings({
 *   ambient: celsius(20), time: minutes(40), first: celsius(50), second: celsius(65),
 * });
 * [toMinutes(timeConstant), finalRise] // => [57.7078, 60]
 * ```
 * @since 0.1.0
 */
export function ovenFromTwoReadings(input: {
  readonly ambient: Celsius;
  readonly time: Seconds;
  readonly first: Celsius;
  readonly second: Celsius;
  readonly power?: Watts;
}): IdentifiedOven {
  given(input);
  const { ambient, time, first, second, power } = input;
  checkTemperature("ambient", ambient);
  checkTemperature("first", first);
  checkTemperature("second", second);
  checkScale("time", time, "s");
  if (power !== undefined) checkScale("power", power, "W");
  const r1 = first - ambient;
  const r2 = second - ambient;
  if (!(r1 >= LEAST_RISE))
    fail({
      code: "out-of-range",
      path: "first",
      expected: `${LEAST_RISE} K or more above ambient, ${ambient}`,
      received: first,
      unit: "°C",
    });
  if (!(r2 > r1))
    fail({
      code: "out-of-range",
      path: "second",
      expected: `more than the first, ${first}`,
      received: second,
      unit: "°C",
    });
  const most = first + r1 * (1 - LEAST_BEND);
  if (!(second <= most)) {
    fail({
      code: "not-identifiable",
      path: "second",
      expected: `a curve that bends: at most ${most} °C, or the losses do not show`,
      received: second,
      unit: "°C",
    });
  }
  const timeConstant = time / Math.log(r1 / (r2 - r1));
  const bend = 2 * r1 - r2;
  const finalRise = (r1 * r1) / bend;
  const lossConductance = power === undefined ? null : power / finalRise;
  const warnings: readonly Warning[] =
    r2 / r1 > NEARLY_STRAIGHT
      ? [
          {
            code: "approximate",
            path: "second",
            message: `The curve is nearly straight: one kelvin more in the second reading moves the final rise by ${((r1 * r1) / (bend * bend)).toFixed(1)} K. Read again later.`,
          },
        ]
      : [];
  return {
    timeConstant: timeConstant as Seconds,
    ultimate: (ambient + finalRise) as Celsius,
    finalRise: finalRise as Kelvins,
    lossConductance: lossConductance as WattsPerKelvin | null,
    heatCapacity: lossConductance === null ? null : ((lossConductance * timeConstant) as JoulesPerKelvin),
    riseSensitivity: (r1 * r1) / (bend * bend),
    warnings,
  };
}

/**
 * Lowest and highest temperature of an oven that a controller switches on and off in a fixed rhythm, once it has settled.
 * @param input.coldTemperature - where it would end with the power off for ever, °C
 * @param input.hotTemperature - where it would end with the power on for ever, °C, above the cold one
 * @param input.timeConstant - of the oven, s, more than 0
 * @param input.onTime - time on in each cycle, s, more than 0
 * @param input.offTime - time off in each cycle, s, 0 or more
 * @returns lowest, highest and mean temperature of the settled cycle, °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source First-order heating under periodic duty; textbooks of electric drives
 * @example
 * ```ts
 * const { lowest, highest } = cyclicTemperature({
 *   coldTemperature: celsius(15), hotTemperature: celsius(104.4243),
 *   timeConstant: seconds(60), onTime: seconds(10), offTime: seconds(20),
 * });
 * [lowest.toFixed(2), highest.toFixed(2)] // => ["40.00", "49.89"]
 * ```
 * @since 0.1.0
 */
export function cyclicTemperature(input: {
  readonly coldTemperature: Celsius;
  readonly hotTemperature: Celsius;
  readonly timeConstant: Seconds;
  readonly onTime: Seconds;
  readonly offTime: Seconds;
}): {
  /** At the end of the off time, °C. */
  readonly lowest: Celsius;
  /** At the end of the on time, °C. */
  readonly highest: Celsius;
  /** Mean over the cycle, °C. */
  readonly mean: Celsius;
} {
  given(input);
  const { coldTemperature: cold, hotTemperature: hot, timeConstant, onTime, offTime } = input;
  checkTemperature("coldTemperature", cold);
  checkTemperature("hotTemperature", hot);
  checkScale("timeConstant", timeConstant, "s");
  checkScale("onTime", onTime, "s");
  checkScaleOrZero("offTime", offTime, "s");
  if (!(hot > cold))
    fail({
      code: "out-of-range",
      path: "hotTemperature",
      expected: `more than the cold one, ${cold}`,
      received: hot,
      unit: "°C",
    });
  const whole = -Math.expm1(-(onTime + offTime) / timeConstant);
  const heating = -Math.expm1(-onTime / timeConstant) / whole;
  const highest = cold + (hot - cold) * heating;
  return {
    lowest: (cold + (hot - cold) * heating * Math.exp(-offTime / timeConstant)) as Celsius,
    highest: highest as Celsius,
    mean: (cold + ((hot - cold) * onTime) / (onTime + offTime)) as Celsius,
  };
}
