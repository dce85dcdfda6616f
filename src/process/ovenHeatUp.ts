/** Heat-up of an oven whose heat capacity rises with temperature, with an account of where the energy went. */
import { integrateOde } from "../numeric/index.ts";
import {
  type Celsius,
  given,
  type Joules,
  onlyFields,
  type Seconds,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { checkTarget, ultimateOf } from "./lumped.ts";
import { type OvenHeat, type OvenModel, type OvenPlan, ovenModel } from "./oven.ts";
import { checkScale, checkScaleOrZero } from "./scale.ts";

/**
 * Where the energy of a heat-up went: input = loads + structure + walls + air + lost.
 * @since 0.1.0
 */
export interface OvenEnergy extends OvenHeat {
  /** Electric energy put in, J. */
  readonly input: Joules;
  /** Lost to the room and the exhaust, J. */
  readonly lost: Joules;
}

/**
 * Heat-up of an oven to a set point, or why it never comes.
 * @since 0.1.0
 */
export interface OvenHeatUp {
  /** Whether the set point is ever reached. */
  readonly reached: boolean;
  /** Time to it, s, or `"never"`. */
  readonly time: Seconds | "never";
  /** Temperature that this power holds for ever, °C; `"unlimited"` without losses. */
  readonly ultimate: Celsius | "unlimited";
  /** Power that just holds the set point, W. */
  readonly holdingPower: Watts;
  /** Mean loss during heat-up over the loss at set point, 0 to 1; `null` if never reached or without losses. */
  readonly meanLossShare: number | null;
  /** Where the energy went; `null` if the set point is never reached. */
  readonly energy: OvenEnergy | null;
  /** Empty when the sources cover what was asked. */
  readonly warnings: readonly Warning[];
}

/** A temperature a few last digits above or below another: on the other side of a breakpoint, with no heat between. */
const nextTo = (t: number, way: 1 | -1): number => t + way * 4 * Number.EPSILON * Math.max(1, Math.abs(t));

/** Error allowed in each step of the integrations here, relative. */
const TOLERANCE = 1e-12;

/**
 * Time and lost heat from start to target. Along s = (net/loss) × ln[net/(net − loss × rise)] the temperature is known
 * in closed form and the clock runs at capacity/net: smooth up to the very end, where the plain equation stalls.
 */
function heatUp(
  model: OvenModel,
  net: number,
  conductance: number,
  ambient: number,
  start: number,
  target: number,
) {
  const along = (t: number): number => {
    const share = (conductance * (t - start)) / net;
    return share > 1e-9 ? ((t - start) * -Math.log1p(-share)) / share : (t - start) * (1 + share / 2);
  };
  const temperatureAt = (s: number): number => {
    const share = (conductance * s) / net;
    return start + (share > 1e-9 ? (s * -Math.expm1(-share)) / share : s * (1 - share / 2));
  };
  const edges = [start, ...model.breaks.filter((edge) => edge > start && edge < target), target];
  let time = 0;
  let lost = 0;
  for (let i = 0; i + 1 < edges.length; i += 1) {
    const [low, high] = [edges[i] as number, edges[i + 1] as number];
    // Just below the edge, so that the whole piece lies on one branch.
    const inside = high - 1e-12 * Math.max(1, Math.abs(high));
    const [from, to] = [along(low), along(high)];
    if (!(from < to)) continue;
    const scale = ((to - from) * model.capacity(low)) / net;
    const { state } = integrateOde({
      derivative: (s) => {
        const t = Math.max(low, Math.min(temperatureAt(s), inside));
        const rate = model.capacity(t) / net;
        return [rate, conductance * (t - ambient) * rate];
      },
      start: from,
      end: to,
      initial: [0, 0],
      relativeTolerance: TOLERANCE,
      absoluteTolerance: [TOLERANCE * scale, TOLERANCE * scale * net],
    });
    time += state[0] as number;
    lost += state[1] as number;
  }
  return { time, lost };
}

/** Says where the end temperature leaves what the sources of the heat capacity cover. */
function beyondSources(model: OvenModel, ultimate: Celsius | "unlimited"): readonly Warning[] {
  const [, limit] = model.range;
  if (ultimate === "unlimited" || ultimate <= limit) return [];
  return [
    {
      code: "outside-validity",
      path: "ultimate",
      message: `At this power the oven would end hotter than ${limit} °C, where the law of its steel or air ends: the ultimate temperature is arithmetic only. It must not be left on without control.`,
      limit,
      unit: "°C",
    },
  ];
}

/**
 * Heat-up of an oven built from its parts: capacity(T) × dT/dt = power − lossConductance × (T − ambient), integrated up to
 * the set point; carbon steel by EN 1993-1-2, air by its table.
 *
 * One temperature for everything in the oven; a load whose `piece` is given is held against the Biot number. Where the load lags the air, {@link twoNodeHeatUp} with mean specific
 * heats shows by how much.
 * @param input.oven - the oven
 * @param input.power - heat into the oven: what is left of the module, from the network, W, 0 or more
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - temperature of everything at the start, °C; ambient if left out
 * @returns time and energy, or `"never"` with the temperature it will end at
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table` for steel outside 20 to 1200 °C or air
 *   outside its table
 * @source First law; EN 1993-1-2:2005, 3.4.1.2; Incropera, Table A.4
 * @example
 * ```ts
 * const oven: OvenPlan = {
 *   ambient: celsius(20),
 *   lossConductance: wattsPerKelvin(40),
 *   structure: kilojoulesPerKelvin(50),
 *   loads: [{ mass: kilograms(300), specificHeat: "carbon steel" }],
 * };
 * ovenHeatUp({ oven, power: kilowatts(12), target: celsius(200) }).time // => 4557.339
 * ```
 * @since 0.1.0
 */
export function ovenHeatUp(input: {
  readonly oven: OvenPlan;
  readonly power: Watts;
  readonly target: Celsius;
  readonly start?: Celsius;
}): OvenHeatUp {
  onlyFields(given(input, "input", "an oven, a power and a target"), ["oven", "power", "target", "start"]);
  given(input.oven, "oven", "an oven");
  const { oven, power, target, start = oven.ambient } = input;
  const model = ovenModel(oven, start);
  checkScaleOrZero("power", power, "W");
  checkTarget(target, oven.ambient, start);
  const heat = model.heat(start, target);
  const { ambient, lossConductance } = oven;
  const holding = lossConductance * (target - ambient);
  const ultimate = ultimateOf(power, lossConductance, ambient);
  const common = {
    ultimate,
    holdingPower: holding as Watts,
    warnings: [...model.warnings, ...beyondSources(model, ultimate)],
  };
  if (!(power > holding)) {
    return { reached: false, time: "never", ...common, meanLossShare: null, energy: null };
  }
  const net = power - lossConductance * (start - ambient);
  const { time, lost } = heatUp(model, net, lossConductance, ambient, start, target);
  return {
    reached: true,
    time: time as Seconds,
    ...common,
    meanLossShare: holding > 0 ? lost / (holding * time) : null,
    energy: { input: (power * time) as Joules, ...heat, lost: lost as Joules },
  };
}

/**
 * State of an oven after a time.
 * @since 0.1.0
 */
export interface OvenState {
  /** Temperature of everything in it, °C. */
  readonly temperature: Celsius;
  /** Where the energy went since the start. */
  readonly energy: OvenEnergy;
  /** Empty when the sources cover what was asked. */
  readonly warnings: readonly Warning[];
}

/**
 * Temperature of an oven built from its parts after a time at a power, and where the energy went.
 * @param input.oven - the oven
 * @param input.power - heat into the oven, W, 0 or more
 * @param input.time - since the start, s, more than 0
 * @param input.start - temperature of everything at the start, °C; ambient if left out
 * @returns temperature and energy
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table` when it gets hotter than the sources reach
 * @source First law; EN 1993-1-2:2005, 3.4.1.2; Incropera, Table A.4
 * @example
 * ```ts
 * const oven: OvenPlan = {
 *   ambient: celsius(20), lossConductance: wattsPerKelvin(40), structure: kilojoulesPerKelvin(200),
 * };
 * ovenAfter({ oven, power: kilowatts(12), time: hours(1) }).temperature // => 173.974323
 * ```
 * @since 0.1.0
 */
export function ovenAfter(input: {
  readonly oven: OvenPlan;
  readonly power: Watts;
  readonly time: Seconds;
  readonly start?: Celsius;
}): OvenState {
  given(input, "input", "an oven, a power and a time");
  given(input.oven, "oven", "an oven");
  const { oven, power, time, start = oven.ambient } = input;
  const model = ovenModel(oven, start);
  checkScaleOrZero("power", power, "W");
  checkScale("time", time, "s");
  const { lossConductance, ambient } = oven;
  const loss = (t: number): number => lossConductance * (t - ambient);
  const [coldest, hottest] = model.range;
  const upward = power > loss(start);
  const ahead = model.breaks.filter((edge) => (upward ? edge > start : edge < start));
  const edges = upward ? ahead : ahead.reverse();
  const absoluteTolerance = [1e-9, Math.max(1e-9, TOLERANCE * Math.max(power * time, model.capacity(start)))];
  let at = 0;
  // A breakpoint belongs to the branch above it: on the way down begin just below.
  const first = !upward && model.breaks.includes(start) ? nextTo(start, -1) : start;
  let state: readonly number[] = [first, 0];
  // One temperature moves one way only: stop at each kink of the capacity and go on behind it. A trial step may overshoot the
  // kink, or what the sources cover, and keeps to the capacity of its own piece; whether the sources cover the answer is checked
  // at the end, by its heat.
  for (const edge of [...edges, undefined]) {
    const low = upward ? coldest : (edge ?? coldest);
    const high = upward && edge !== undefined ? nextTo(edge, -1) : hottest;
    const capacity = (t: number): number => model.capacity(Math.min(Math.max(t, low), high));
    const piece = integrateOde({
      derivative: (_, [t]) => [(power - loss(t as number)) / capacity(t as number), loss(t as number)],
      start: at,
      end: time,
      initial: state,
      relativeTolerance: TOLERANCE,
      absoluteTolerance,
      ...(edge === undefined ? {} : { event: (_, [t]) => (t as number) - edge }),
    });
    [at, state] = [piece.at, piece.state];
    if (edge === undefined || piece.stopped === "end" || at >= time) break;
    state = [nextTo(edge, upward ? 1 : -1), state[1] as number];
  }
  const temperature = state[0] as Celsius;
  const energy: OvenEnergy = {
    input: (power * time) as Joules,
    ...model.heat(start, temperature),
    lost: state[1] as Joules,
  };
  return { temperature, energy, warnings: model.warnings };
}
