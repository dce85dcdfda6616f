/** Axes: ticks at 1, 2 and 5 times a power of ten; at decades, and 2 and 5 where few, on a logarithmic one. */

/** An axis ready to draw: from value to a share of its length, and its ticks. */
export interface Scale {
  /** 0 at the low end, 1 at the high end. */
  readonly share: (value: number) => number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

/** A number in its shortest form; 12 digits hide what binary adds to a multiple of 0.1. */
export function tickText(value: number): string {
  return String(Number(value.toPrecision(12)) + 0).replace(/-/g, "−");
}

function niceStep(span: number, most: number): number {
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const lead = rough / power;
  // A hair of slack: 2.0000000000000004 is 2.
  const nice = lead <= 1.000001 ? 1 : lead <= 2.000001 ? 2 : lead <= 5.000001 ? 5 : 10;
  return nice * power;
}

/** A linear axis that holds both values, ended at ticks. */
export function linearScale(low: number, high: number, most: number): Scale {
  // One value, or as good as one: a little room on either side of it.
  const size = Math.max(Math.abs(low), Math.abs(high));
  const pad = high - low > 1e-9 * size && size > 1e-200 ? 0 : size > 1e-200 ? 0.1 * size : 1;
  const step = niceStep(high - low + 2 * pad, most);
  const first = Math.floor((low - pad) / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil((high + pad) / step - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return {
    share: (value) => (value - first * step) / ((last - first) * step),
    ticks: ticks.map((value) => ({ value, text: tickText(value) })),
  };
}

/** A logarithmic axis that holds both values, more than 0, ended at ticks. */
export function logScale(low: number, high: number, most: number): Scale {
  const [first, last] = [Math.floor(Math.log10(low) + 1e-9), Math.ceil(Math.log10(high) - 1e-9)];
  const decades = Math.max(1, last - first);
  const leads = 3 * decades <= most ? [1, 2, 5] : [1];
  const every = Math.ceil(decades / Math.max(1, most));
  const all: number[] = [];
  for (let d = first; d <= first + decades; d += every) {
    for (const lead of leads) all.push(lead * 10 ** d);
  }
  const fits = (value: number, i: number): boolean => {
    const [before, after] = [all[i - 1] ?? 0, all[i + 1] ?? Number.POSITIVE_INFINITY];
    return (after > low * (1 + 1e-9) || value >= low) && (before < high * (1 - 1e-9) || value <= high);
  };
  const fitting = all.filter(fits);
  const ticks = fitting.length > 1 ? fitting : all.slice(0, 2);
  const bottom = Math.log(Math.min(low, ticks[0] as number));
  const top = Math.log(Math.max(high, ticks.at(-1) as number));
  return {
    share: (value) => (Math.log(value) - bottom) / (top - bottom),
    ticks: ticks.map((value) => ({ value, text: tickText(value) })),
  };
}
