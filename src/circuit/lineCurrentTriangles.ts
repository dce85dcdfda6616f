/** Line currents and line voltages as two triangles: the delta that belongs to them, and what clamps that are off make of it. */

/** What belongs to L1, L2, L3 or to L1-L2, L2-L3, L3-L1. */
export type Three = readonly [number, number, number];

/** Twice the area of a triangle by its sides, without the cancellation of Heron's form; 0 if they close none. */
export function doubleArea(sides: Three): number {
  const [c, b, a] = [...sides].sort((x, y) => x - y) as unknown as Three;
  const product = (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c));
  return product > 0 ? Math.sqrt(product) / 2 : 0;
}

/** Conductances of the delta's sides L1-L2, L2-L3, L3-L1 and what they came from; voltages and currents scaled to at most 1. */
export interface Delta {
  readonly conductances: Three;
  /** Area of the triangle of currents over that of the triangle of voltages: G12·G23 + G23·G31 + G31·G12. */
  readonly areas: number;
  readonly power: number;
}

/**
 * The one delta whose line currents have these sizes. Sums of two sides follow from the power and the two areas:
 * P·(G12 + G31) = I1² + V23²·A, with A the ratio of the areas, and cyclic; P itself from 2P² = Σ I1²·(V12² + V31² − V23²) + 4·D·T.
 */
export function deltaOf(v: Three, i: Three): Delta {
  const [v12, v23, v31] = v.map((x) => x * x) as unknown as Three;
  const [i1, i2, i3] = i.map((x) => x * x) as unknown as Three;
  const [d, t] = [doubleArea(v), doubleArea(i)];
  const twice = i1 * (v12 + v31 - v23) + i2 * (v23 + v12 - v31) + i3 * (v31 + v23 - v12) + 4 * d * t;
  const power = Math.sqrt(Math.max(0, twice) / 2);
  const areas = t / d;
  const conductances: Three = [
    (i1 + i2 - i3 + (v23 + v31 - v12) * areas) / (2 * power),
    (i2 + i3 - i1 + (v31 + v12 - v23) * areas) / (2 * power),
    (i3 + i1 - i2 + (v12 + v23 - v31) * areas) / (2 * power),
  ];
  return { conductances, areas, power };
}

/** All ways in which each of three currents may be one of its values. */
const allWays = ([i1, i2, i3]: Three, factors: readonly number[]): readonly Three[] =>
  factors.flatMap((a) => factors.flatMap((b) => factors.map((c): Three => [i1 * a, i2 * b, i3 * c])));

/** Currents with each clamp off by its accuracy one way or the other. */
export const corners = (i: Three, accuracy: number): readonly Three[] =>
  allWays(i, [1 - accuracy, 1 + accuracy]);

/** The same with two steps between as read and either end. */
export const between = (i: Three, accuracy: number): readonly Three[] =>
  allWays(
    i,
    [-1, -0.5, 0, 0.5, 1].map((part) => 1 + part * accuracy),
  );

/**
 * Currents within the accuracy of which two are equal and the third is as read or at either end: where one arm of a star is nearly open
 * the other two are, to within that arm's own current, and the corners all miss them.
 */
export function equalised(i: Three, accuracy: number): readonly Three[] {
  const low = i.map((x) => x * (1 - accuracy));
  const high = i.map((x) => x * (1 + accuracy));
  return [0, 1, 2].flatMap((k) => {
    const [a, b] = [(k + 1) % 3, (k + 2) % 3];
    const least = Math.max(low[a] as number, low[b] as number);
    const most = Math.min(high[a] as number, high[b] as number);
    if (least > most) return [];
    return [low, i, high].flatMap((third) =>
      [least, (least + most) / 2, most].map((both) => {
        const one = [both, both, both];
        one[k] = third[k] as number;
        return one as unknown as Three;
      }),
    );
  });
}
