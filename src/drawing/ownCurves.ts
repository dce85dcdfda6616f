/** The curves of this library's own subjects, each a thin layer over {@link curveChart}. */
import { type NutFactorCondition, nutFactorRange, preloadBand, riseAtCurrent } from "../joint/index.ts";
import { type AlloyDataset, temperatureFactorSpread } from "../material/index.ts";
import { heatUpOptions, type OvenPlan, ovenAfter } from "../process/index.ts";
import {
  type Amperes,
  type Celsius,
  checkNonNegative,
  checkPositive,
  fail,
  given,
  type Kelvins,
  type Meters,
  type NewtonMeters,
  type Newtons,
  type Seconds,
  type Watts,
} from "../quantity/index.ts";
import { curveChart } from "./curveChart.ts";
import type { CurveSeries } from "./curveTypes.ts";
import type { PictureStyle } from "./diagramTypes.ts";

const STEPS = 48;

/**
 * What every chart of this room takes besides its data.
 * @since 0.1.0
 */
export interface ChartStyle extends PictureStyle {
  /** Heading; one of its own if left out. */
  readonly title?: string;
  /** Width, 280 to 4000; 720 if left out. */
  readonly width?: number;
}

/** Evenly spaced numbers from low to high, both included. */
function steps(low: number, high: number, count = STEPS): number[] {
  return Array.from({ length: count + 1 }, (_, i) => (i === count ? high : low + ((high - low) * i) / count));
}

function style({ title, width, theme, id }: ChartStyle, own: string) {
  return {
    title: title ?? own,
    ...(width === undefined ? {} : { width }),
    ...(theme === undefined ? {} : { theme }),
    ...(id === undefined ? {} : { id }),
  };
}

function checkList(path: string, value: unknown, expected: string): void {
  if (!Array.isArray(value) || value.length === 0) {
    fail({ code: "missing", path, expected, received: value });
  }
}

/**
 * Chart of the temperature factor Ct of several datasets, each at the rows of its table, and the band between the lowest and
 * the highest wherever at least two reach.
 * @param input.datasets - datasets with a Ct table, 1 to 11; of one alloy to see how far sources disagree
 * @param input.title - heading; one of its own if left out
 * @param input.width - width, 280 to 4000; 720 if left out
 * @param input.theme - light or dark; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture
 * @throws ElectroheatError `missing` for a dataset without Ct, and as {@link curveChart}
 * @source the datasets' own
 * @example
 * ```ts
 * const svg = temperatureFactorChart({ datasets: [NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I] });
 * svg.includes("spread of the sources") // => true
 * ```
 * @since 0.1.0
 */
export function temperatureFactorChart(
  input: { readonly datasets: readonly AlloyDataset[] } & ChartStyle,
): string {
  const { datasets } = given(input);
  checkList("datasets", datasets, "at least one dataset");
  const curves = datasets.map((dataset, i) => {
    const table = dataset?.temperatureFactor;
    if (table === undefined) {
      const expected = "a dataset with a Ct table";
      return fail({
        code: "missing",
        path: `datasets.${i}.temperatureFactor`,
        expected,
        received: undefined,
      });
    }
    const points = table.temperatures.map((x, k) => ({ x, y: table.values[k] as number }));
    return { label: dataset.id, points, marked: true } satisfies CurveSeries;
  });
  const all = [...new Set(curves.flatMap(({ points }) => points.map(({ x }) => x)))].sort((a, b) => a - b);
  const band = all.flatMap((x) => {
    const { lowest: low, highest: high, rows } = temperatureFactorSpread({ datasets, temperature: x });
    return rows.length > 1 ? [{ x, low, high }] : [];
  });
  const spread = band.length > 1 ? [{ label: "spread of the sources", band }] : [];
  return curveChart({
    ...style(input, "Temperature factor Ct by source"),
    x: { label: "Wire temperature", unit: "°C", from: 0 },
    y: { label: "Ct, resistance over that at 20 °C" },
    series: [...curves, ...spread],
  });
}

/**
 * Chart of the heat-up of one oven by several powers: as it was, and with an element lost; with the set point, and a remark on
 * each power that reaches it or never does.
 * @param input.oven - the oven
 * @param input.powers - name and power of each way of running, the healthy one first, 1 to 12
 * @param input.target - set point, °C
 * @param input.start - temperature of everything at the start, °C; ambient if left out
 * @param input.duration - time shown, s; a quarter more than the slowest that arrives if left out, or 4 times the fastest
 *   where one never does
 * @param input.title - heading; one of its own if left out
 * @param input.width - width, 280 to 4000; 720 if left out
 * @param input.theme - light or dark; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture. Each curve ends at the set point, where the controller would begin to throttle
 * @throws ElectroheatError as `heatUpOptions`; `missing` for no duration where no power arrives
 * @source First law; see `ovenAfter`
 * @example
 * ```ts
 * const oven: OvenPlan = {
 *   ambient: celsius(20), lossConductance: wattsPerKelvin(40), structure: kilojoulesPerKelvin(200),
 * };
 * const powers = [{ name: "healthy", power: kilowatts(12) }, { name: "one element open", power: kilowatts(6) }];
 * heatUpChart({ oven, powers, target: celsius(200) }).includes("one element open: never") // => true
 * ```
 * @since 0.1.0
 */
export function heatUpChart(
  input: {
    readonly oven: OvenPlan;
    readonly powers: readonly { readonly name: string; readonly power: Watts }[];
    readonly target: Celsius;
    readonly start?: Celsius;
    readonly duration?: Seconds;
  } & ChartStyle,
): string {
  const { oven, powers, target, start } = given(input);
  const from = start === undefined ? {} : { start };
  const options = heatUpOptions({ oven, powers, target, ...from });
  const times = options.flatMap(({ time }) => (time === "never" ? [] : [time]));
  const natural = times.length === options.length ? 1.25 * Math.max(...times) : 4 * Math.min(...times);
  const duration = input.duration ?? natural;
  if (!Number.isFinite(duration)) {
    fail({
      code: "missing",
      path: "duration",
      expected: "a duration: no power reaches the set point",
      received: undefined,
      unit: "s",
    });
  }
  checkPositive("duration", duration, "s");
  const minutes = duration < 3 * 3600;
  const per = minutes ? 60 : 3600;
  const series = options.map(({ name, power, time }): CurveSeries => {
    const arrives = time !== "never" && time <= duration;
    const end = arrives ? time : duration;
    const points = steps(0, end).map((t) => {
      if (t === 0) return { x: 0, y: start ?? oven.ambient };
      if (arrives && t === end) return { x: t / per, y: target };
      return { x: t / per, y: ovenAfter({ oven, power, time: t as Seconds, ...from }).temperature };
    });
    const said =
      time === "never" ? "never" : `${(time / per).toFixed(minutes ? 0 : 1)} ${minutes ? "min" : "h"}`;
    return { label: `${name}: ${said}`, points };
  });
  return curveChart({
    ...style(input, "Heat-up to the set point"),
    x: { label: "Time at full power", unit: minutes ? "min" : "h", to: duration / per },
    // Room above the set point, whose line would lie on the edge.
    y: {
      label: "Oven temperature",
      unit: "°C",
      to: target + 0.05 * Math.abs(target - (start ?? oven.ambient)),
    },
    series,
    levels: [{ label: `set point ${target} °C`, y: target }],
    note: "One temperature for oven and load; a cure time counts from the load, which lags. Prove air flow and overtemperature protection before running degraded.",
  });
}

/**
 * Chart of the rise of joints against current: the band between the exponents 1.6 and 2, and the curve of a bare copper bar,
 * 1.83, through what was seen.
 * @param input.joints - name, rise (K) and current (A) of each joint as seen, 1 to 12
 * @param input.upTo - highest current shown (A), more than 0: the full load
 * @param input.title - heading; one of its own if left out
 * @param input.width - width, 280 to 4000; 720 if left out
 * @param input.theme - light or dark; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture
 * @throws ElectroheatError as `riseAtCurrent` and {@link curveChart}
 * @source as `riseAtFullLoad`
 * @example
 * ```ts
 * const joints = [{ name: "A-L1 stud", rise: kelvins(22), current: amperes(40) }];
 * jointRiseChart({ joints, upTo: amperes(66) }).includes(">A-L1 stud</text>") // => true
 * ```
 * @since 0.1.0
 */
export function jointRiseChart(
  input: {
    readonly joints: readonly { readonly name: string; readonly rise: Kelvins; readonly current: Amperes }[];
    readonly upTo: Amperes;
  } & ChartStyle,
): string {
  const { joints, upTo } = given(input);
  checkPositive("upTo", upTo, "A");
  checkList("joints", joints, "at least one joint");
  const series = joints.map(({ name, rise, current }): CurveSeries => {
    const at = (x: number, exponent: number): number =>
      x === 0 ? 0 : riseAtCurrent({ rise, current, otherCurrent: x as Amperes, exponent });
    const xs = [...new Set([...steps(0, Math.max(upTo, current)), current])].sort((a, b) => a - b);
    const band = xs.map((x) => {
      const ends = [at(x, 1.6), at(x, 2)];
      return { x, low: Math.min(...ends), high: Math.max(...ends) };
    });
    return { label: name, band, points: xs.map((x) => ({ x, y: at(x, 1.83) })) };
  });
  return curveChart({
    ...style(input, "Rise of joints against current"),
    x: { label: "Current", unit: "A" },
    y: { label: "Rise", unit: "K" },
    series,
    note: "Line: exponent 1.83, a bare copper bar; band: 1.6 to 2. A joint whose resistance grows with its temperature can rise faster. Scan under load only by the site's rules; a licensed electrician decides.",
  });
}

/**
 * Chart of preload against torque: for each thread condition the band that its nut factor leaves.
 * @param input.diameter - nominal thread diameter (m), more than 0
 * @param input.conditions - thread conditions by name, or with a range of nut factors of your own, 1 to 12
 * @param input.upTo - highest torque shown (N·m), more than 0
 * @param input.mostPreload - preload not to be passed (N), such as 75 % of proof load; not drawn if left out
 * @param input.title - heading; one of its own if left out
 * @param input.width - width, 280 to 4000; 720 if left out
 * @param input.theme - light or dark; light if left out
 * @param input.id - start of the ids in the picture, unique on the page; from the content if left out
 * @returns the picture
 * @throws ElectroheatError as `preloadBand`, `nutFactorRange` and {@link curveChart}
 * @source as `preloadBand` and `nutFactorRange`
 * @example
 * ```ts
 * const svg = preloadChart({
 *   diameter: millimeters(8), conditions: ["dry steel", { name: "greased, measured", low: 0.13, high: 0.17 }],
 *   upTo: newtonMeters(25), mostPreload: kilonewtons(15),
 * });
 * svg.includes("greased, measured") // => true
 * ```
 * @since 0.1.0
 */
export function preloadChart(
  input: {
    readonly diameter: Meters;
    readonly conditions: readonly (
      | NutFactorCondition
      | { readonly name: string; readonly low: number; readonly high: number }
    )[];
    readonly upTo: NewtonMeters;
    readonly mostPreload?: Newtons;
  } & ChartStyle,
): string {
  const { diameter, conditions, upTo, mostPreload } = given(input);
  checkPositive("upTo", upTo, "N·m");
  if (mostPreload !== undefined) checkNonNegative("mostPreload", mostPreload, "N");
  checkList("conditions", conditions, "at least one thread condition");
  const series = conditions.map((condition, i): CurveSeries => {
    const own = typeof condition === "string";
    const { low, high } = own ? nutFactorRange(condition) : given(condition, `conditions.${i}`);
    const band = steps(0, upTo, 2).map((x) => {
      const at = { torque: x as NewtonMeters, diameter, nutFactorLow: low, nutFactorHigh: high };
      const force = preloadBand(at);
      return { x, low: force.low / 1000, high: force.high / 1000 };
    });
    return { label: `${own ? condition : condition.name}, K ${low} to ${high}`, band };
  });
  return curveChart({
    ...style(input, "Preload against tightening torque"),
    x: { label: "Torque", unit: "N·m" },
    y: { label: "Preload", unit: "kN" },
    series,
    levels: mostPreload === undefined ? [] : [{ label: "most preload", y: mostPreload / 1000 }],
    note: "Holds for a clean turn of the nut. The maker's torque governs; a torque read later on an aged joint says nothing about its preload.",
  });
}
