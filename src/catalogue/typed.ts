/** What people type where a program would say it otherwise. */

const PERCENT = /^\s*([+−-]?\d{1,9}(?:\.\d{1,12})?)\s?%\s*$/u;

/** A ratio written in per cent; any other text is not a number. */
export function ratioIn(value: string): number | string {
  const digits = PERCENT.exec(value)?.[1];
  return digits === undefined ? value : Number(`${digits.replace("−", "-")}e-2`);
}

/** What the drawing or the plate has for star and delta. */
const CONNECTIONS: Readonly<Record<string, string>> = {
  wye: "star",
  y: "star",
  star: "star",
  delta: "delta",
  Δ: "delta",
  δ: "delta",
};

/** The trade's other words for star and delta are read where people enter them, in capitals or not. */
export const inOurWords = (value: unknown, names: readonly unknown[]): unknown => {
  if (typeof value !== "string" || names.includes(value) || !names.includes("star")) return value;
  const name = CONNECTIONS[value.trim().toLowerCase()];
  return name !== undefined && names.includes(name) ? name : value;
};
