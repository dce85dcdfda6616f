/** What a connection diagram is asked for, and its geometry as data. */
import type { HeatingModule, ModulePlan } from "../circuit/index.ts";
import type { CanonicalUnit } from "../quantity/index.ts";
import type { Box, Point } from "./geometry.ts";
import type { PlacedText } from "./svg.ts";
import type { Theme } from "./theme.ts";

/**
 * What is said of an element, a joint or a line. `hot joint` is for joints, jumper bars and conductors, `lost` for lines.
 * @since 0.1.0
 */
export type DiagramState = "within" | "outside" | "undecided" | "open" | "shorted" | "hot joint" | "lost";

/**
 * A value to print: a number in its canonical unit.
 * @since 0.1.0
 */
export interface DiagramValue {
  /** The value in `unit`, finite. */
  readonly value: number;
  /** Canonical unit it is held in; printed with an SI prefix where there is one. */
  readonly unit: CanonicalUnit;
  /** Significant digits, 1 to 17; 4 if left out. */
  readonly significantDigits?: number;
}

/**
 * What a connection diagram shows.
 * @since 0.1.0
 */
export interface DiagramInput {
  /** The module, as planned or as built. */
  readonly module: HeatingModule | ModulePlan;
  /** Values by element or joint: numbers with their unit, or text as it is to stand. Left out: the module's resistances. */
  readonly values?: Readonly<Record<string, DiagramValue | string>>;
  /** States by element, joint or line (`"L1"`). What the module itself says (open, 0 Ω) stands where nothing is given. */
  readonly states?: Readonly<Record<string, DiagramState>>;
  /** Other labels by element, joint, bank, line or star point. Left out: the names in the module. */
  readonly labels?: Readonly<Record<string, string>>;
  /** Heading of the picture; `"Connection diagram"` if left out. */
  readonly title?: string;
  /** Width to lay the picture out for, 280 to 4000; 960 if left out. A module that needs more makes a wider picture. */
  readonly width?: number;
  /** Draws the frame of the module and its protective earth; off if left out. */
  readonly protectiveEarth?: boolean;
}

/**
 * How a diagram is written out.
 * @since 0.1.0
 */
export interface PictureStyle {
  /** Light if left out. */
  readonly theme?: Theme;
  /** Start of the ids in the picture, to be unique on a page; from the content if left out. */
  readonly id?: string;
}

/**
 * What a text of a diagram is.
 * @since 0.1.0
 */
export type TextRole = "title" | "heading" | "label" | "value" | "state" | "node" | "key" | "note";

/**
 * A line of text in a diagram.
 * @since 0.1.0
 */
export interface DiagramText extends PlacedText {
  /** What it is. */
  readonly role: TextRole;
  /** Element, joint, bank or node it belongs to; empty for titles and notes. */
  readonly about: string;
  /** Upper bound of the space it takes. */
  readonly box: Box;
}

/**
 * A symbol's end: where a wire of a node meets it.
 * @since 0.1.0
 */
export interface DiagramPin extends Point {
  /** Node of the network. */
  readonly net: string;
}

/**
 * What a symbol stands for.
 * @since 0.1.0
 */
export type SymbolKind =
  | "element"
  | "joint"
  | "jumper bar"
  | "conductor"
  | "line break"
  | "terminal"
  | "protective earth"
  | "star"
  | "delta";

/**
 * A symbol in a diagram, around its centre.
 * @since 0.1.0
 */
export interface DiagramSymbol extends Point {
  /** What it stands for. */
  readonly kind: SymbolKind;
  /** Element, joint, node or bank. */
  readonly about: string;
  /** State that it is drawn in. */
  readonly state: DiagramState | null;
  /** Space it takes. */
  readonly box: Box;
  /** Its ends. */
  readonly pins: readonly DiagramPin[];
}

/**
 * The mark beside a state's word.
 * @since 0.1.0
 */
export interface DiagramMark extends Point {
  /** State it stands for. */
  readonly state: DiagramState;
  /** Space it takes. */
  readonly box: Box;
}

/**
 * A wire: a path of horizontal and vertical pieces, all on one node.
 * @since 0.1.0
 */
export interface DiagramWire {
  /** Node of the network. */
  readonly net: string;
  /** Corners, at least two. */
  readonly points: readonly Point[];
}

/**
 * A connection diagram as data: everything that is drawn, where, and what it belongs to.
 * @since 0.1.0
 */
export interface DiagramLayout {
  /** Width of the picture. */
  readonly width: number;
  /** Height of the picture. */
  readonly height: number;
  /** Title in full. */
  readonly title: string;
  /** What the picture shows, in sentences. */
  readonly description: string;
  /** All texts. */
  readonly texts: readonly DiagramText[];
  /** All symbols. */
  readonly symbols: readonly DiagramSymbol[];
  /** Marks beside the words of states. */
  readonly marks: readonly DiagramMark[];
  /** All wires. */
  readonly wires: readonly DiagramWire[];
  /** Connection dots. */
  readonly dots: readonly DiagramPin[];
  /** A panel behind each bank. */
  readonly panels: readonly {
    /** The bank. */
    readonly bank: string;
    /** Where it is drawn. */
    readonly box: Box;
  }[];
  /** Frame of the module, where it was asked for. */
  readonly frame: Box | null;
}
