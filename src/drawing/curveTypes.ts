/** What a chart of curves is asked for. */
import { checkBetween, checkOneOf, checkPositive, fail, given } from "../quantity/index.ts";
import type { PictureStyle } from "./diagramTypes.ts";
import type { Point } from "./geometry.ts";
import { cleanText, namedText } from "./text.ts";

/**
 * An axis of a chart.
 * @since 0.1.0
 */
export interface CurveAxis {
  /** What it shows, such as `"Temperature"`. */
  readonly label: string;
  /** Unit that the numbers are in. */
  readonly unit?: string;
  /** Linear if left out; a logarithmic axis takes values above 0 only. */
  readonly scale?: "linear" | "log";
  /** A value that the axis must hold besides the data. */
  readonly from?: number;
  /** Another one. */
  readonly to?: number;
}

/**
 * A band between two curves at one place.
 * @since 0.1.0
 */
export interface BandPoint {
  /** Place along the x axis. */
  readonly x: number;
  /** Lower edge. */
  readonly low: number;
  /** Upper edge, `low` or more. */
  readonly high: number;
}

/**
 * A curve, a band, or a curve in its band.
 * @since 0.1.0
 */
export interface CurveSeries {
  /** What stands beside it in the key. */
  readonly label: string;
  /** Its points in the order they are joined. */
  readonly points?: readonly Point[];
  /** Its band, in the order of x. */
  readonly band?: readonly BandPoint[];
  /** Marks every point: for values from a table. Off if left out. */
  readonly marked?: boolean;
}

/**
 * What a chart shows.
 * @since 0.1.0
 */
export interface CurveInput extends PictureStyle {
  /** Heading. */
  readonly title: string;
  /** The axis to the right. */
  readonly x: CurveAxis;
  /** The axis upwards. */
  readonly y: CurveAxis;
  /** Curves and bands, 1 to 12. */
  readonly series: readonly CurveSeries[];
  /** Levels to compare with: a set point, a limit. */
  readonly levels?: readonly {
    /** Its name. */
    readonly label: string;
    /** Its value on the upright axis. */
    readonly y: number;
  }[];
  /** A remark under the picture: source, caution. */
  readonly note?: string;
  /** The picture in words; made from the data if left out. */
  readonly description?: string;
  /** Width, 280 to 4000; 720 if left out. Below 560 the key stands under the curves. */
  readonly width?: number;
}

const MOST_SERIES = 12;
const MOST_POINTS = 20_000;
const LARGEST = 1e100;

/** A series checked and cleaned. */
export interface CheckedSeries {
  readonly label: string;
  readonly points: readonly Point[];
  readonly band: readonly BandPoint[];
  readonly marked: boolean;
}

/** A chart checked and cleaned. */
export interface CheckedChart {
  readonly title: string;
  readonly x: CurveAxis & { readonly caption: string };
  readonly y: CurveAxis & { readonly caption: string };
  readonly series: readonly CheckedSeries[];
  readonly levels: readonly { readonly label: string; readonly y: number }[];
  readonly note: string;
}

function listed<T>(path: string, value: readonly T[] | undefined, most: number): readonly T[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) fail({ code: "wrong-type", path, expected: "a list", received: value });
  if (value.length > most) {
    fail({ code: "out-of-range", path, expected: `at most ${most} entries`, received: value.length });
  }
  return value;
}

/** Numbers whose differences and ratios float64 can hold; above 0 on a logarithmic axis. */
function checkNumber(scale: CurveAxis["scale"], path: string, value: number): void {
  if (scale === "log") checkPositive(path, value);
  checkBetween(path, value, scale === "log" ? 1 / LARGEST : -LARGEST, LARGEST);
}

function checkedAxis(path: string, axis: CurveAxis): CheckedChart["x"] {
  const { label, unit, scale = "linear", from, to } = given(axis, path);
  checkOneOf(`${path}.scale`, scale, ["linear", "log"]);
  for (const [name, value] of [
    ["from", from],
    ["to", to],
  ] as const) {
    if (value === undefined) continue;
    checkNumber(scale, `${path}.${name}`, value);
  }
  const said = namedText(`${path}.label`, label);
  const caption = unit === undefined ? said : `${said}, ${cleanText(`${path}.unit`, unit)}`;
  return { ...axis, scale, caption };
}

/** Checks what a chart is asked for. */
export function checkedChart(input: CurveInput): CheckedChart {
  const [x, y] = [checkedAxis("x", input.x), checkedAxis("y", input.y)];
  const number = (axis: CurveAxis, path: string, value: number): void => checkNumber(axis.scale, path, value);
  const series = listed("series", input.series, MOST_SERIES).map((one, i): CheckedSeries => {
    const path = `series.${i}`;
    const { label, points, band, marked = false } = given(one, path);
    const line = listed(`${path}.points`, points, MOST_POINTS);
    const area = listed(`${path}.band`, band, MOST_POINTS);
    if (line.length + area.length === 0) {
      fail({ code: "missing", path: `${path}.points`, expected: "points or a band", received: points });
    }
    line.forEach((point, k) => {
      number(x, `${path}.points.${k}.x`, given(point, `${path}.points.${k}`).x);
      number(y, `${path}.points.${k}.y`, point.y);
    });
    area.forEach((point, k) => {
      const at = `${path}.band.${k}`;
      number(x, `${at}.x`, given(point, at).x);
      number(y, `${at}.low`, point.low);
      number(y, `${at}.high`, point.high);
      if (point.high < point.low) {
        fail({
          code: "inconsistent",
          path: `${at}.high`,
          expected: `low, ${point.low}, or more`,
          received: point.high,
        });
      }
    });
    return { label: namedText(`${path}.label`, label), points: line, band: area, marked: marked === true };
  });
  if (series.length === 0) {
    fail({ code: "missing", path: "series", expected: "at least one curve", received: input.series });
  }
  const levels = listed("levels", input.levels, MOST_SERIES).map((one, i) => {
    number(y, `levels.${i}.y`, given(one, `levels.${i}`).y);
    return { label: namedText(`levels.${i}.label`, one.label), y: one.y };
  });
  const title = namedText("title", input.title);
  return { title, x, y, series, levels, note: cleanText("note", input.note ?? "") };
}
