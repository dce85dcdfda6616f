/** The layout of a connection diagram: tried in several packings, the first that fits and is flattest is taken. */
import { checkBetween, given } from "../quantity/index.ts";
import { DiagramCanvas } from "./diagramCanvas.ts";
import { type Column, measureColumn } from "./diagramColumn.ts";
import { type DrawnColumn, drawColumn } from "./diagramDraw.ts";
import { type Feed, placeFeed } from "./diagramFeed.ts";
import { type DrawnAs, describeDiagram, drawKey, liveNote, namesInFull } from "./diagramKey.ts";
import { LANE, MARGIN, NOTE, type Packing, TITLE } from "./diagramMetrics.ts";
import type { DiagramInput, DiagramLayout } from "./diagramTypes.ts";
import { type DiagramWords, diagramWords } from "./diagramWords.ts";
import type { Box } from "./geometry.ts";
import { builtModule, type ModuleTree, moduleTree } from "./moduleTree.ts";
import { namedText, wrapped } from "./text.ts";

const WIDTH = 960;
const NARROWEST = 280;
const WIDEST = 4000;
const COLUMN_GAP = 26;
const MOST_COLUMNS = 6;
/** Closer and closer packings: of each line the flattest that fits is taken, and the next line is tried where none does. */
const PACKINGS: readonly (readonly Omit<Packing, "columns">[])[] = [
  [
    { stacked: false, labelRoom: 260, nodeRoom: 150 },
    { stacked: false, labelRoom: 150, nodeRoom: 90 },
  ],
  [{ stacked: true, labelRoom: 92, nodeRoom: 70 }],
  [{ stacked: true, labelRoom: 64, nodeRoom: 54 }],
];
const FRAME = 10;

interface Scene {
  readonly title: string;
  readonly tree: ModuleTree;
  readonly words: DiagramWords;
  readonly earthed: boolean;
  readonly symbols: DrawnAs;
}

/** Vertical wires beside the panels, from the rail that feeds them to the last bank that they serve. */
function drawLanes(canvas: DiagramCanvas, feed: Feed, columns: readonly DrawnColumn[]): void {
  const rails = new Map(feed.rails.map((rail) => [rail.net, rail]));
  const reach = new Map<string, number[]>();
  for (const { lanes } of columns) {
    for (const [net, { x, taps }] of lanes) {
      const rail = rails.get(net);
      const ys = rail === undefined ? taps : [rail.y, ...taps];
      canvas.wire(net, { x, y: Math.min(...ys) }, { x, y: Math.max(...ys) });
      reach.set(net, [...(reach.get(net) ?? []), x]);
    }
  }
  for (const { net, x, y } of feed.rails) {
    const xs = reach.get(net) ?? [];
    const from = x ?? Math.min(...xs);
    if (xs.length > 0) canvas.wire(net, { x: from, y }, { x: Math.max(...xs), y });
  }
}

function drawTitle(canvas: DiagramCanvas, title: string, room: number): number {
  const lines = wrapped(title, room, TITLE, true);
  lines.forEach((text, i) => {
    const y = MARGIN + TITLE + i * (TITLE + 6);
    canvas.text({ role: "title", about: "", text, x: MARGIN, y, anchor: "start", size: TITLE, bold: true });
  });
  return MARGIN + lines.length * (TITLE + 6) + 6;
}

function drawEarth(canvas: DiagramCanvas, frame: Box): number {
  const x = frame.x + 22;
  const y = frame.y + frame.height;
  const box = { x: x - 11, y: y + 8, width: 22, height: 22 };
  const pins = [{ net: "PE", x, y: y + 8 }];
  canvas.symbols.push({ kind: "protective earth", about: "PE", state: null, x, y: y + 19, box, pins });
  canvas.wire("PE", { x, y }, { x, y: y + 8 });
  canvas.text({
    role: "node",
    about: "PE",
    text: "PE",
    x: x + 17,
    y: y + 23,
    anchor: "start",
    size: 12,
    bold: true,
  });
  return y + 34;
}

/** A packing measured: what it would take, before its banks are drawn. */
interface Attempt {
  readonly packing: Packing;
  readonly canvas: DiagramCanvas;
  readonly columns: readonly Column[];
  readonly feed: Feed;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

function attempt(scene: Scene, packing: Packing, wanted: number): Attempt {
  const { tree, words, title } = scene;
  const canvas = new DiagramCanvas();
  const perColumn = Math.ceil(tree.banks.length / packing.columns);
  const columns: Column[] = [];
  for (let i = 0; i < tree.banks.length; i += perColumn) {
    const banks = tree.banks.map((_, bank) => bank).slice(i, i + perColumn);
    columns.push(measureColumn(tree, banks, words, packing));
  }
  const tied = columns.filter(({ rightNets }) => rightNets.length > 0).length > 1;
  const afterTitle = drawTitle(canvas, title, wanted - 2 * MARGIN);
  const feed = placeFeed({ canvas, tree, words, packing, top: afterTitle, starRail: tied });
  const pad = scene.earthed ? FRAME : 0;
  const top = feed.bottom + 14 + pad;
  const left = Math.max(feed.right, feed.terminalX + LANE) + pad;
  const right = columns.reduce((x, column) => x + column.width + COLUMN_GAP, left) - COLUMN_GAP;
  const titleRight = Math.max(...canvas.texts.map(({ box }) => box.x + box.width));
  const width = Math.max(NARROWEST, right + pad + MARGIN, titleRight + MARGIN);
  const bottom = top + Math.max(...columns.map(({ height }) => height));
  return { packing, canvas, columns, feed, left, right, width, top, bottom };
}

/** Draws the packing that was chosen. */
function finished(scene: Scene, chosen: Attempt): DiagramLayout {
  const { tree, words, title } = scene;
  const { packing, canvas, columns, feed, left, right, width, top } = chosen;
  let x = left;
  const drawn = columns.map((column) => {
    const one = drawColumn({ column, x, top, tree, canvas, words, packing });
    x += column.width + COLUMN_GAP;
    return one;
  });
  drawLanes(canvas, feed, drawn);
  let bottom = chosen.bottom;
  let frame: Box | null = null;
  if (scene.earthed) {
    const around = { x: left - FRAME, y: top - FRAME };
    frame = { ...around, width: right - left + 2 * FRAME, height: bottom - top + 2 * FRAME };
    bottom = drawEarth(canvas, frame);
  }
  bottom = drawKey(canvas, bottom + 10, width - 2 * MARGIN);
  const notes = [...namesInFull(canvas, tree, words), liveNote(tree, words)];
  for (const text of notes.flatMap((note) => wrapped(note, width - 2 * MARGIN, NOTE))) {
    bottom += NOTE + 6;
    canvas.text({ role: "note", about: "", text, x: MARGIN, y: bottom, anchor: "start", size: NOTE });
  }
  const description = describeDiagram(tree, words, scene.symbols);
  const { texts, symbols, marks, wires } = canvas;
  const panels = drawn.flatMap((one) => one.panels);
  const height = bottom + MARGIN;
  return {
    width,
    height,
    title,
    description,
    texts,
    symbols,
    marks,
    wires,
    dots: canvas.dots(),
    panels,
    frame,
  };
}

/**
 * Lays a connection diagram out: every text, symbol, wire and dot with its place, as data. What {@link connectionDiagram}
 * draws, for those who draw it themselves or check it.
 *
 * Elements lie in rows from their line on the left to the star point, or back to the next line, on the right. Joints that several
 * banks share stand on the rail of their line, the others in their bank.
 * @param input.module - the module, as planned or as built
 * @param input.values - values by element or joint; the module's resistances if left out
 * @param input.states - states by element, joint or line; what the module says stands where nothing is given
 * @param input.labels - other labels by element, joint, bank, line or star point
 * @param input.title - heading
 * @param input.width - width to lay it out for, 280 to 4000; 960 if left out
 * @param input.protectiveEarth - draws the frame and its protective earth; off if left out
 * @returns the layout; wider than asked for where the module needs it
 * @throws ElectroheatError as {@link connectionDiagram}
 * @source IEC 60617 (symbols), IEC 60445 (marks of lines, neutral and protective earth)
 * @example
 * ```ts
 * const module: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
 * diagramLayout({ module }).symbols.filter(({ kind }) => kind === "element").map(({ about }) => about)
 * // => ["A-L1", "A-L2", "A-L3"]
 * ```
 * @since 0.1.0
 */
export function diagramLayout(input: DiagramInput): DiagramLayout {
  return layoutOf(input, "elements");
}

/** The same for a picture whose resistors may stand for whole branches. */
export function layoutOf(input: DiagramInput, symbols: DrawnAs): DiagramLayout {
  const { module, title = "Connection diagram", width = WIDTH, protectiveEarth = false } = given(input);
  checkBetween("width", width, NARROWEST, WIDEST);
  const tree = moduleTree(builtModule(module));
  const words = diagramWords(input, tree);
  const heading = namedText("title", title);
  const scene: Scene = { title: heading, tree, words, earthed: protectiveEarth === true, symbols };
  const most = Math.min(MOST_COLUMNS, tree.banks.length);
  const attempts: Attempt[] = [];
  for (const some of PACKINGS) {
    for (const packing of some) {
      for (let columns = 1; columns <= most; columns += 1) {
        attempts.push(attempt(scene, { columns, ...packing }, width));
      }
    }
    const fitting = attempts.filter((one) => one.width <= width);
    // Of two that are equally high the one with longer labels and fewer columns.
    if (fitting.length > 0) {
      return finished(
        scene,
        fitting.reduce((a, b) => (b.bottom < a.bottom ? b : a)),
      );
    }
  }
  return finished(
    scene,
    attempts.reduce((a, b) => (b.width < a.width ? b : a)),
  );
}
