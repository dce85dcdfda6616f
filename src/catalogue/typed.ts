/** What people type where a program would say it otherwise. */

const PERCENT = /^\s*([+−-]?\d{1,9}(?:\.\d{1,12})?)\s?%\s*$/u;

/** A ratio written in per cent; any other text is not a number. */
export function ratioIn(value: string): number | string {
  const digits = PERCENT.exec(value)?.[1];
  return digits === undefined ? value : Number(`${digits.replace("−", "-")}e-2`);
}

/** The trade's other word for a star is read where people enter it. */
export const inOurWords = (value: unknown, names: readonly unknown[]): unknown =>
  value === "wye" && !names.includes("wye") && names.includes("star") ? "star" : value;
