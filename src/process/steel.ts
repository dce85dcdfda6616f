/** Heat in carbon steel: it takes more and more, and ten times as much around 735 °C. */
import type { BeyondTable } from "../material/index.ts";
import {
  type Celsius,
  checkFinite,
  checkOneOf,
  fail,
  given,
  type JoulesPerKilogram,
  type JoulesPerKilogramKelvin,
} from "../quantity/index.ts";

const LOWEST = 20;
const HIGHEST = 1200;
/** Where one branch of the law ends and the next begins; a breakpoint belongs to the upper branch. */
export const STEEL_BREAKS: readonly number[] = [600, 735, 900];

/** One branch of the law: specific heat, and its integral up to a constant, J/kg. */
interface Branch {
  readonly specificHeat: (t: number) => number;
  readonly integral: (t: number) => number;
}

const BRANCHES: readonly Branch[] = [
  {
    specificHeat: (t) => 425 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6)),
    integral: (t) => t * (425 + t * (0.773 / 2 + t * (-1.69e-3 / 3 + (t * 2.22e-6) / 4))),
  },
  {
    specificHeat: (t) => 666 + 13002 / (738 - t),
    integral: (t) => 666 * t - 13002 * Math.log(738 - t),
  },
  {
    specificHeat: (t) => 545 + 17820 / (t - 731),
    integral: (t) => 545 * t + 17820 * Math.log(t - 731),
  },
  { specificHeat: () => 650, integral: (t) => 650 * t },
];

const branchAt = (t: number): number => STEEL_BREAKS.filter((edge) => t >= edge).length;

/** Temperatures that the law is read between, °C. */
export function steelRange(beyond: BeyondTable | undefined): readonly [number, number] {
  const policy = checkOneOf("beyondTable", beyond ?? "refuse", ["refuse", "extrapolate"]);
  // Downwards only: the cubic stays smooth below 20 °C, while above 1200 °C the steel begins to melt.
  return [policy === "extrapolate" ? -50 : LOWEST, HIGHEST];
}

/** Refuses what lies outside the law. */
export function checkSteel(path: string, t: Celsius, beyond: BeyondTable | undefined): void {
  checkFinite(path, t, "°C");
  const [low, high] = steelRange(beyond);
  if (!(t >= low && t <= high)) {
    fail({
      code: "outside-table",
      path,
      expected: `${low} to ${high} °C (EN 1993-1-2)`,
      received: t,
      unit: "°C",
    });
  }
}

/**
 * Specific heat of carbon steel: 425 + 0.773 T − 1.69e-3 T² + 2.22e-6 T³ from 20 °C, 666 + 13002/(738 − T) from 600 °C,
 * 545 + 17820/(T − 731) from 735 °C, 650 J/(kg·K) from 900 °C, with T in °C.
 *
 * Some copies print 13.002 and 17.820, a thousands mark read as a decimal one.
 * @param input.temperature - steel temperature, °C, 20 to 1200
 * @param input.beyondTable - `refuse` (default), or `extrapolate` to continue the first branch down to −50 °C
 * @returns specific heat, J/(kg·K)
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`, `outside-table`
 * @source EN 1993-1-2:2005, 3.4.1.2
 * @example
 * ```ts
 * steelSpecificHeat({ temperature: celsius(200) }) // => 529.76
 * ```
 * @since 0.1.0
 */
export function steelSpecificHeat(input: {
  readonly temperature: Celsius;
  readonly beyondTable?: BeyondTable;
}): JoulesPerKilogramKelvin {
  given(input);
  checkSteel("temperature", input.temperature, input.beyondTable);
  const branch = BRANCHES[branchAt(input.temperature)] as Branch;
  return branch.specificHeat(input.temperature) as JoulesPerKilogramKelvin;
}

/** Heat per kilogram between two temperatures, both inside the law. */
function between(from: number, to: number): number {
  if (to < from) return -between(to, from);
  let heat = 0;
  let low = from;
  for (let index = branchAt(from); ; index += 1) {
    const edge = STEEL_BREAKS[index];
    const high = edge === undefined ? to : Math.min(to, edge);
    const { integral } = BRANCHES[index] as Branch;
    heat += integral(high) - integral(low);
    if (high === to) return heat;
    low = high;
  }
}

/**
 * Heat that one kilogram of carbon steel takes up between two temperatures: the law of {@link steelSpecificHeat},
 * integrated in closed form. Negative when it cools.
 * @param input.from - temperature before, °C, 20 to 1200
 * @param input.to - temperature after, °C, 20 to 1200
 * @param input.beyondTable - `refuse` (default), or `extrapolate` to continue the first branch down to −50 °C
 * @returns heat per mass, J/kg; divided by the difference it is the mean specific heat
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`, `outside-table`
 * @source EN 1993-1-2:2005, 3.4.1.2, integrated
 * @example
 * ```ts
 * steelHeatContent({ from: celsius(20), to: celsius(200) }) / 180 // => 489.951
 * ```
 * @since 0.1.0
 */
export function steelHeatContent(input: {
  readonly from: Celsius;
  readonly to: Celsius;
  readonly beyondTable?: BeyondTable;
}): JoulesPerKilogram {
  given(input);
  checkSteel("from", input.from, input.beyondTable);
  checkSteel("to", input.to, input.beyondTable);
  return between(input.from, input.to) as JoulesPerKilogram;
}
