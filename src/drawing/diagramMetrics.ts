/** Sizes of a connection diagram, in the picture's units (px at full size). */

/** Size of labels, values and states; of bank headings; of the title; of notes. */
export const TEXT = 12;
export const HEADING = 13;
export const TITLE = 17;
export const NOTE = 11;

export const MARGIN = 16;
/** Between parallel wires, and between a wire and what is beside it. */
export const LANE = 13;
export const STUB = 9;
/** Half sizes of symbols. */
export const ELEMENT = { x: 23, y: 7.5 } as const;
export const JOINT = 7;
export const BAR = { x: 20, y: 6 } as const;
export const MARK = 5;
/** From the axis of a row up to the top of its label, and to its baseline; down to the baselines of value and state. */
export const ABOVE = 26;
export const LABEL_UP = 13.5;
export const VALUE_DOWN = 22;
export const STATE_DOWN = 37;
export const GAP = 8;
/** Heading of a bank's panel; each further line of it, and how many there may be. */
export const HEAD = 30;
export const HEAD_LINE = 16;
export const HEAD_LINES = 3;
/** Before the name of a bank in its heading; between the name and what the bank is. */
export const HEAD_LEFT = 21;
export const HEAD_GAP = 8;
export const PANEL_PAD = 8;

/** How closely one attempt at a layout packs. */
export interface Packing {
  /** Banks side by side. */
  readonly columns: number;
  /** States under values instead of beside them. */
  readonly stacked: boolean;
  /** Longest label of an element or joint; of a line or star point. */
  readonly labelRoom: number;
  readonly nodeRoom: number;
}

/** From the axis of a row down to the bottom of its last text. */
export const below = ({ stacked }: Packing): number => (stacked ? STATE_DOWN : VALUE_DOWN) + 4;
