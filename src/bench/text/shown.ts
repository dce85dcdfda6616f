/** Figures as a job sheet shows them; never in powers of ten. */

/** A ratio to three digits. */
export function ratioText(ratio: number): string {
  return ratio < 100 ? ratio.toPrecision(3) : ratio.toFixed(0);
}
