/** What stands under a diagram: key of the symbols, the caution, and the description for those who do not see it. */
import type { BankPlan } from "../circuit/index.ts";
import type { DiagramCanvas } from "./diagramCanvas.ts";
import { BAR, JOINT, MARGIN, NOTE } from "./diagramMetrics.ts";
import type { SymbolKind } from "./diagramTypes.ts";
import type { DiagramWords, Words } from "./diagramWords.ts";
import { around } from "./geometry.ts";
import type { ModuleTree } from "./moduleTree.ts";
import { textWidth } from "./text.ts";

const KEYED: readonly SymbolKind[] = ["joint", "jumper bar", "conductor"];
/** More branches than this are told by their faults only. */
const TOLD = 60;

/** What one resistor of the picture stands for. */
export type DrawnAs = "elements" | "branches";

/** Draws the key of those symbols that carry no word of their own; returns where it ends. */
export function drawKey(canvas: DiagramCanvas, top: number, room: number): number {
  const used = KEYED.filter((kind) => canvas.symbols.some((symbol) => symbol.kind === kind));
  let x = MARGIN;
  let y = top;
  used.forEach((kind, i) => {
    const half = kind === "joint" ? { x: JOINT, y: JOINT } : BAR;
    const wide = 2 * half.x + 6 + textWidth(kind, NOTE);
    if (i === 0) y += 12;
    else if (x + wide > MARGIN + room) {
      x = MARGIN;
      y += 20;
    }
    const symbol = { kind, about: "", state: null, x: x + half.x, y } as const;
    canvas.symbols.push({ ...symbol, box: around(symbol.x, y, half.x, half.y), pins: [] });
    const at = { x: x + 2 * half.x + 6, y: y + 4, anchor: "start", size: NOTE } as const;
    canvas.text({ role: "key", about: "", text: kind, ...at });
    x += wide + 18;
  });
  return used.length > 0 ? y + 8 : y;
}

/** Shortened names told in full under the picture, at most so many; those left out have their titles. */
const MOST_NAMES = 16;

/** Labels that the picture shortens, in full. Elements and star points are told by their ends and the heading of their bank. */
export function namesInFull(canvas: DiagramCanvas, tree: ModuleTree, words: DiagramWords): readonly string[] {
  const told = new Set<string>();
  for (const { role, about, text, full } of canvas.texts) {
    if (full === undefined || full === text || (role !== "label" && role !== "node" && role !== "heading"))
      continue;
    if (role === "label" && words.of(about).tail !== "") continue;
    if (role === "node" && tree.banks.some(({ id }) => full === `S-${id}`)) continue;
    told.add(role === "heading" ? full : `${text} is ${full}`);
  }
  const all = [...told];
  return all.length <= MOST_NAMES
    ? all
    : [...all.slice(0, MOST_NAMES - 1), `and ${all.length - MOST_NAMES + 1} more`];
}

interface Told extends Words {
  readonly id: string;
}

function everyWord(tree: ModuleTree, words: DiagramWords): readonly Told[] {
  const branches = [...tree.strings.flatMap(({ elements }) => elements), ...tree.joints];
  return branches.map(({ id }) => ({ id, ...words.of(id) }));
}

/** The caution that a picture of a fault carries. */
export function liveNote(tree: ModuleTree, words: DiagramWords): string {
  const states = new Set(everyWord(tree, words).map(({ state }) => state));
  const lost = tree.lines.some(({ net }) => words.lineState(net) !== null);
  if (!lost && !["open", "shorted", "hot joint"].some((state) => states.has(state as Words["state"])))
    return "";
  return "A break or a lost line does not make a module dead: isolate all lines, lock out and prove dead before touching it. The local code and a licensed electrician decide.";
}

function bankSentence(tree: ModuleTree, words: DiagramWords, bank: number, symbols: DrawnAs): string {
  const { id, connection, elementsInParallel = 1, elementsInSeries = 1 } = tree.banks[bank] as BankPlan;
  const strings = `${elementsInParallel === 1 ? "" : `${elementsInParallel} in parallel, `}${elementsInSeries === 1 ? "" : `${elementsInSeries} in series, `}`;
  return `${words.name(id, `Bank ${id}`)}: ${connection}, ${strings}${3 * elementsInParallel * elementsInSeries} ${symbols}.`;
}

/** The diagram in sentences. */
export function describeDiagram(tree: ModuleTree, words: DiagramWords, symbols: DrawnAs): string {
  const banks = tree.banks.map((_, bank) => bankSentence(tree, words, bank, symbols));
  const stars = tree.banks.filter(({ connection }) => connection === "star").length;
  const star =
    stars === 0
      ? ""
      : tree.onNeutral
        ? "Star points on the neutral."
        : stars === 1
          ? "Star point floating."
          : `Star points ${tree.starPoints}.`;
  const lost = tree.lines.filter(({ net }) => words.lineState(net) !== null);
  const all = everyWord(tree, words);
  const told = all.length <= TOLD ? all : all.filter(({ state }) => state !== null);
  const list = told.map(({ label, value, state }) =>
    [label, value, state ?? ""].filter((part) => part !== "").join(" "),
  );
  const lines = lost.map(({ net }) => `Line ${words.name(net, net)} lost.`);
  const note = liveNote(tree, words);
  return [...banks, star, ...lines, list.length > 0 ? `${list.join("; ")}.` : "", note]
    .filter((part) => part !== "")
    .join(" ");
}
