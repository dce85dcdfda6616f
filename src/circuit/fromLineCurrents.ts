/** The three branches of a star or a delta from what a clamp shows on the three lines: the energised module weighed from outside. */
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  checkOneOf,
  fail,
  given,
  type LineVolts,
  type Ohms,
  type Open,
  type Watts,
} from "../quantity/index.ts";
import type { Connection } from "./connection.ts";
import {
  between,
  corners,
  type Delta,
  deltaOf,
  doubleArea,
  equalised,
  type Three,
} from "./lineCurrentTriangles.ts";

/**
 * A branch by its two lines in a delta, by its line in a star.
 * @since 0.1.0
 */
export type BranchByLines = "L1-L2" | "L2-L3" | "L3-L1" | "L1" | "L2" | "L3";

/**
 * What a resistance comes to, and between which values clamps of the stated accuracy leave it.
 * @since 0.1.0
 */
export interface ResistanceBand {
  /** Hot resistance as the readings have it, Ω; `"open"` where nothing flows. */
  readonly resistance: Ohms | Open;
  /** Least value, with every clamp reading off by its accuracy either way, Ω. */
  readonly low: Ohms;
  /** Largest value; `"open"` where the clamps cannot tell it from an open branch. */
  readonly high: Ohms | Open;
}

/**
 * What three line currents say of a module's branches.
 * @since 0.1.0
 */
export type BranchesFromCurrents =
  | {
      /** Three resistances, and no others, give these currents. */
      readonly outcome: "solved";
      /** The branches, in the order of the lines. */
      readonly branches: readonly (ResistanceBand & {
        /** L1-L2, L2-L3, L3-L1 of a delta; L1, L2, L3 of a star. */
        readonly branch: BranchByLines;
      })[];
      /** Heat of the module by the readings as they stand, W; resistances cut at 0 or shown as open make up a little more. */
      readonly power: Watts;
    }
  | {
      /** A star with no current in one line: its branch is open, the other two lie in series, and only their sum shows. */
      readonly outcome: "one branch open";
      /** Line of the open branch. */
      readonly open: "L1" | "L2" | "L3";
      /** The other two branches in series. */
      readonly inSeries: ResistanceBand;
    }
  | {
      /** A star whose clamps leave room for an open branch: what the other two are one by one cannot be told. */
      readonly outcome: "not told from one open";
      /** Line of the least current: the branch that may be open. */
      readonly least: "L1" | "L2" | "L3";
      /** The other two branches in series. */
      readonly inSeries: ResistanceBand;
    }
  | {
      /** No line carries current: all branches open, or not energised. */
      readonly outcome: "nothing flows";
    }
  | {
      /** No three resistances give these currents, whichever way the clamps are off by their accuracy. */
      readonly outcome: "does not fit";
      /**
       * `"closes no triangle"`: one current is more than the other two together, so a reading is wrong, or current leaves by neutral or
       * earth. `"negative resistance"`: they close one, but not of resistances between these lines; a voltage was read at another time,
       * a line label is swapped, the star has its neutral, or a controller chops the current.
       */
      readonly why: "closes no triangle" | "negative resistance";
    };

const LINES = ["L1", "L2", "L3"] as const;
const SIDES = ["L1-L2", "L2-L3", "L3-L1"] as const;

/** Readings are never better than rounding and an open branch's current never worse known: an accuracy below this counts as this. */
const LEAST_ACCURACY = 1e-9;

/** Part of the largest below which a conductance is nothing but rounding. */
const NOTHING = 1e-9;

/** Whether currents part a star's arms: where they lie in one line an arm is open, and the other two show only together. */
const partsArms = ({ areas, power }: Delta): boolean => areas > 0 && power > 0;

const isStar = ({ conductances, power }: Delta): boolean =>
  power > 0 && Math.min(...conductances) >= -NOTHING * Math.max(...conductances);

/**
 * A star whose clamps leave room for an open arm. With L3 the line of least current, V12 = I1·R1 − I2·R2 and I1 + I2 + I3 = 0 give
 * V12/max(I1, I2) ≤ R1 + R2 ≤ V12/(max(I1, I2) − I3), whatever the arms are.
 */
function nearlyOpen(v: Three, i: Three, accuracy: number, ohms: number): BranchesFromCurrents {
  const least = Math.min(...i);
  const k = i.indexOf(least);
  const [one, other] = [i[(k + 1) % 3] as number, i[(k + 2) % 3] as number];
  const across = (v[(k + 1) % 3] as number) * ohms;
  const larger = Math.max(one, other);
  const left = larger * (1 - accuracy) - least * (1 + accuracy);
  const inSeries: ResistanceBand = {
    resistance: ((2 * across) / (one + other)) as Ohms,
    low: (across / (larger * (1 + accuracy))) as Ohms,
    high: left > NOTHING ? ((across / left) as Ohms) : "open",
  };
  const line = LINES[k] as "L1" | "L2" | "L3";
  return least === 0
    ? { outcome: "one branch open", open: line, inSeries }
    : { outcome: "not told from one open", least: line, inSeries };
}

/** Arms of the star, or what else these currents are. */
function armsOf(
  v: Three,
  i: Three,
  centre: Delta,
  accuracy: number,
  ohms: number,
): readonly (ResistanceBand | null)[] | BranchesFromCurrents {
  const off = Math.max(accuracy, LEAST_ACCURACY);
  const ends = corners(i, off).map((one) => deltaOf(v, one));
  if (![centre, ...ends].every(partsArms)) {
    const within = [...between(i, off), ...equalised(i, off)];
    return within.some((one) => isStar(deltaOf(v, one)))
      ? nearlyOpen(v, i, accuracy, ohms)
      : { outcome: "does not fit", why: "negative resistance" };
  }
  const all = accuracy === 0 ? [centre] : [centre, ...ends];
  return LINES.map((_, k) => {
    const resistances = all.map(({ conductances, areas }) => (conductances[(k + 1) % 3] as number) / areas);
    const [least, most] = [Math.min(...resistances), Math.max(...resistances)];
    if (most < -NOTHING) return null;
    const shown = (r: number): Ohms => (Math.max(0, r) * ohms) as Ohms;
    return { resistance: shown(resistances[0] as number), low: shown(least), high: shown(most) };
  });
}

/** Sides of the delta. */
function sidesOf(
  v: Three,
  i: Three,
  centre: Delta,
  accuracy: number,
  ohms: number,
): readonly (ResistanceBand | null)[] | BranchesFromCurrents {
  if (!(centre.power > 0)) return { outcome: "does not fit", why: "closes no triangle" };
  // Currents that take no power in these voltages are no currents of resistances.
  const ends = corners(i, accuracy)
    .map((one) => deltaOf(v, one))
    .filter(({ power }) => power > 0);
  const nothing = NOTHING * Math.max(...centre.conductances);
  const shown = (g: number): Ohms | Open => (g > nothing ? ((ohms / g) as Ohms) : "open");
  return SIDES.map((_, k) => {
    const all = [centre, ...ends].map(({ conductances }) => conductances[k] as number);
    const [least, most] = [Math.min(...all), Math.max(...all)];
    if (most < -nothing) return null;
    return {
      resistance: shown(all[0] as number),
      low: (ohms / Math.max(most, nothing)) as Ohms,
      high: shown(least),
    };
  });
}

function checked(input: Parameters<typeof branchesFromLineCurrents>[0]) {
  const { connection, v12, v23, v31, l1, l2, l3, accuracy = 0 } = given(input);
  checkOneOf("connection", connection, ["star", "delta"]);
  for (const [name, value] of Object.entries({ v12, v23, v31 })) checkMeasurable(name, value, "V");
  for (const [name, value] of Object.entries({ l1, l2, l3 })) checkMeasurableOrZero(name, value, "A");
  checkBetween("accuracy", accuracy, 0, 0.2);
  const [volts, amperes] = [Math.max(v12, v23, v31), Math.max(l1, l2, l3)];
  const v: Three = [v12 / volts, v23 / volts, v31 / volts];
  // A triangle this flat is a supply that has lost a line: two branches then lie in series, and three readings cannot part them.
  if (!(doubleArea(v) > 1e-6)) {
    fail({
      code: "inconsistent",
      path: "v12",
      expected:
        "three voltages that close a triangle (each less than the other two together): all lines alive",
      received: `${v12}, ${v23}, ${v31} V`,
    });
  }
  return { connection, v, volts, currents: [l1, l2, l3] as Three, amperes, accuracy };
}

/**
 * Hot resistances of the three branches of one energised module from its three line currents and three line voltages.
 *
 * I1² = V12²·G12² + V31²·G31² + (V12² + V31² − V23²)·G12·G31 and two like it hold for a delta. Taken as triangles they have one
 * solution: the currents close a triangle of known area, and with it G12 = [I1² + I2² − I3² + (V23² + V31² − V12²)·A]/(2·P), where
 * A is the area of the triangle of currents over that of the voltages and 2·P² = ΣI1²·(V12² + V31² − V23²) + 16 times the product
 * of the two areas. A star follows from the delta that draws the same: R1 = G23/A.
 *
 * Assumes resistances, full conduction, all readings at one time, and a star point that is tied to nothing else: with the neutral
 * on it each branch is its own voltage over its own current. The currents do not tell a star from a delta, and several banks come out
 * as the one that draws the same. The accuracy matters: clamps good for ±2 % leave each branch of a balanced delta to about ±6 %
 * when all three are off in the worst way. Readings on a live module are for qualified people.
 * @param input.connection - `"delta"`, or `"star"` with its star point not on the neutral
 * @param input.v12 - voltage L1 to L2 while the currents were read, V, more than 0
 * @param input.v23 - voltage L2 to L3, V, more than 0
 * @param input.v31 - voltage L3 to L1, V, more than 0
 * @param input.l1 - current of line L1 by a clamp, A, 0 or more
 * @param input.l2 - current of line L2, A, 0 or more
 * @param input.l3 - current of line L3, A, 0 or more
 * @param input.accuracy - half-width of each clamp reading as a ratio, 0 to 0.2 (0.02 for ±2 %); left out, the readings are taken for
 *   exact, and every band is the resistance itself
 * @returns the three resistances, each with the band that the clamps leave (all eight ways in which three can be off), and the power;
 *   or what else these currents mean, by name
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `inconsistent` when the voltages close no triangle
 * @source line-currents-derived
 * @example
 * ```ts
 * const found = branchesFromLineCurrents({
 *   connection: "delta", v12: volts(474), v23: volts(474), v31: volts(474),
 *   l1: amperes(63.9), l2: amperes(64.4), l3: amperes(61.2),
 * });
 * found.outcome === "solved" && found.branches.map(({ resistance }) => resistance) // => [12.2434, 13.3046, 13.5273]
 * ```
 * @since 0.1.0
 */
export function branchesFromLineCurrents(input: {
  readonly connection: Connection;
  readonly v12: LineVolts;
  readonly v23: LineVolts;
  readonly v31: LineVolts;
  readonly l1: Amperes;
  readonly l2: Amperes;
  readonly l3: Amperes;
  readonly accuracy?: number;
}): BranchesFromCurrents {
  const { connection, v, volts, currents, amperes, accuracy } = checked(input);
  if (amperes === 0) return { outcome: "nothing flows" };
  const i = currents.map((x) => x / amperes) as unknown as Three;
  const sum = i[0] + i[1] + i[2];
  const off = Math.max(accuracy, LEAST_ACCURACY);
  // The largest is 1: it may be the other two together, if their clamps read low and its own high.
  if (1 - off > (sum - 1) * (1 + off)) return { outcome: "does not fit", why: "closes no triangle" };
  const ohms = volts / amperes;
  const centre = deltaOf(v, i);
  const found = (connection === "delta" ? sidesOf : armsOf)(v, i, centre, accuracy, ohms);
  if ("outcome" in found) return found;
  const names = connection === "delta" ? SIDES : LINES;
  const branches = found.flatMap((one, k) =>
    one === null ? [] : [{ branch: names[k] as BranchByLines, ...one }],
  );
  return branches.length < 3
    ? { outcome: "does not fit", why: "negative resistance" }
    : { outcome: "solved", branches, power: (centre.power * volts * amperes) as Watts };
}
