/** Places labels in a plot so that they lie on nothing, as far as there is a place for them. */
import { type Box, overlap, type Point, textBox } from "./geometry.ts";
import type { PlacedText } from "./svg.ts";

/** A straight line that a label must not lie on. */
export interface Obstacle {
  readonly from: Point;
  readonly to: Point;
}

/** Whether a line touches a box: by clipping it to the box. */
function touches({ from, to }: Obstacle, box: Box): boolean {
  let [near, far] = [0, 1];
  const axes = [
    [from.x, to.x - from.x, box.x, box.x + box.width],
    [from.y, to.y - from.y, box.y, box.y + box.height],
  ] as const;
  for (const [start, run, low, high] of axes) {
    if (run === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [a, b] = [(low - start) / run, (high - start) / run];
    near = Math.max(near, Math.min(a, b));
    far = Math.min(far, Math.max(a, b));
  }
  return near <= far;
}

/** Remembers what lies in a plot. */
export class LabelPlacer {
  private readonly boxes: Box[] = [];
  constructor(
    private readonly bounds: Box,
    private readonly lines: readonly Obstacle[],
  ) {}

  /** Keeps a place free of later labels. */
  block(box: Box): void {
    this.boxes.push(box);
  }

  /** The first candidate that lies on nothing, or the one that lies on least; its place is taken. */
  place(candidates: readonly PlacedText[]): PlacedText {
    let best = candidates[0] as PlacedText;
    let least = Number.POSITIVE_INFINITY;
    for (const one of candidates) {
      const box = textBox(one);
      const { x, y, width, height } = this.bounds;
      const outside =
        box.x < x || box.y < y || box.x + box.width > x + width || box.y + box.height > y + height;
      // Another label is worse than a line.
      const cost =
        (outside ? 100 : 0) +
        10 * this.boxes.filter((other) => overlap(box, other)).length +
        this.lines.filter((line) => touches(line, box)).length;
      if (cost < least) [best, least] = [one, cost];
      if (cost === 0) break;
    }
    this.boxes.push(textBox(best));
    return best;
  }
}

/** Candidates around a point, on the side that leads away from a centre first. */
export function around8(
  text: string,
  at: Point,
  away: Point,
  look: Pick<PlacedText, "size" | "bold" | "full">,
): readonly PlacedText[] {
  const { size } = look;
  const start = Math.atan2(at.y - away.y, at.x - away.x);
  return [10, 18, 28].flatMap((distance) =>
    [0, 1, -1, 2, -2, 3, -3, 4].map((turn): PlacedText => {
      const angle = start + (turn * Math.PI) / 4;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const anchor = dx > 0.38 ? "start" : dx < -0.38 ? "end" : "middle";
      const x = at.x + dx * distance;
      const y = at.y + dy * (distance + (Math.abs(dy) > 0.7 ? 4 : 0)) + 0.36 * size;
      return { text, x, y, anchor, ...look };
    }),
  );
}
