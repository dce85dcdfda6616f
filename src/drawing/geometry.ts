/** Boxes and segments. */
import type { PlacedText } from "./svg.ts";
import { textWidth } from "./text.ts";

/**
 * An upright rectangle in the picture's units, y downwards.
 * @since 0.1.0
 */
export interface Box {
  /** Left edge. */
  readonly x: number;
  /** Upper edge. */
  readonly y: number;
  /** Width. */
  readonly width: number;
  /** Height. */
  readonly height: number;
}

/**
 * A point in the picture's units, y downwards.
 * @since 0.1.0
 */
export interface Point {
  /** Rightwards. */
  readonly x: number;
  /** Downwards. */
  readonly y: number;
}

/** Box around a centre. */
export function around(x: number, y: number, halfWidth: number, halfHeight: number): Box {
  return { x: x - halfWidth, y: y - halfHeight, width: 2 * halfWidth, height: 2 * halfHeight };
}

/** Bounds of a line of text: by the widest face, with room for accents and descenders. */
export function textBox(placed: PlacedText): Box {
  const { text, x, y, anchor, size, bold } = placed;
  const width = textWidth(text, size, bold);
  const left = anchor === "start" ? x : anchor === "middle" ? x - width / 2 : x - width;
  return { x: left, y: y - 0.95 * size, width, height: 1.2 * size };
}

/** Whether two boxes share more than an edge. */
export function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
