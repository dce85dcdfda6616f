/** The feed of a diagram: terminals, joints that several banks share, and the rails that lead to the banks. */
import type { Branch } from "../circuit/index.ts";
import { isShared } from "./diagramBank.ts";
import type { DiagramCanvas } from "./diagramCanvas.ts";
import { wordsWidth } from "./diagramCanvas.ts";
import { ABOVE, BAR, below, GAP, JOINT, MARGIN, type Packing, TEXT } from "./diagramMetrics.ts";
import type { DiagramWords, Words } from "./diagramWords.ts";
import type { ModuleTree, TreeNode } from "./moduleTree.ts";
import { shortened, textWidth } from "./text.ts";

const PLAIN_PITCH = 22;

interface Rail {
  /** Node of the terminal, or null for a rail that starts at another one. */
  readonly terminal: string | null;
  readonly parent: Rail | null;
  readonly depth: number;
  readonly chain: readonly { readonly joint: Branch | null; readonly nets: readonly [string, string] }[];
  readonly net: string;
  y: number;
}

/** The feed as placed: where each rail begins and how high it lies. */
export interface Feed {
  readonly rails: readonly {
    readonly net: string;
    /** null where the rail only ties wires of the banks together. */
    readonly x: number | null;
    readonly y: number;
  }[];
  /** Where the first bank's wires may come down. */
  readonly right: number;
  readonly bottom: number;
  readonly terminalX: number;
}

/** Node between a supply terminal and the break in a line that is lost. */
const supplySide = (line: string): string => `${line} of the supply`;

function collect(tree: ModuleTree, words: DiagramWords, starRail: boolean): Rail[] {
  const rails: Rail[] = [];
  const anyLost = tree.lines.some(({ net }) => words.lineState(net) !== null);
  const build = (start: TreeNode, parent: Rail | null, depth: number, terminal: string | null): void => {
    const chain: Rail["chain"][number][] = [];
    const lost = terminal !== null && words.lineState(terminal) !== null;
    if (lost) chain.push({ joint: null, nets: [supplySide(terminal), terminal] });
    let node = start;
    if (start.joint !== null && parent !== null)
      chain.push({ joint: start.joint, nets: [parent.net, start.net] });
    for (;;) {
      const shared = node.limbs.filter(isShared);
      const own = node.ports.length > 0 || shared.length < node.limbs.length;
      if (own || shared.length !== 1) break;
      const next = shared[0] as TreeNode;
      chain.push({ joint: next.joint, nets: [node.net, next.net] });
      node = next;
    }
    const free = anyLost && terminal !== null && !lost ? 1 : 0;
    const rail: Rail = { terminal, parent, depth: depth + free, chain, net: node.net, y: 0 };
    rails.push(rail);
    for (const limb of node.limbs.filter(isShared)) build(limb, rail, rail.depth + chain.length, null);
  };
  for (const line of tree.lines) build(line, null, 0, line.net);
  for (const star of tree.stars) {
    if (tree.onNeutral || starRail || star.limbs.some(isShared)) {
      build(star, null, tree.onNeutral || !anyLost ? 0 : 1, tree.onNeutral ? star.net : null);
    }
  }
  return rails;
}

/** Places the feed below `top`. `starRail`: the star points of several columns of banks are tied. */
export function placeFeed(input: {
  readonly canvas: DiagramCanvas;
  readonly tree: ModuleTree;
  readonly words: DiagramWords;
  readonly packing: Packing;
  readonly top: number;
  readonly starRail: boolean;
}): Feed {
  const { canvas, tree, words, packing, top, starRail } = input;
  const rails = collect(tree, words, starRail);
  const lostWords: Words = { label: "", tail: "", value: "", state: "lost" };
  const wordsOf = (joint: Branch | null): Words => (joint === null ? lostWords : words.of(joint.id));
  const widths: number[] = [];
  for (const { chain, depth } of rails) {
    chain.forEach(({ joint }, i) => {
      const wide = Math.max(2 * BAR.x, wordsWidth(wordsOf(joint), packing)) + 14;
      widths[depth + i] = Math.max(widths[depth + i] ?? 0, wide);
    });
  }
  const names = rails.map(({ terminal }) =>
    terminal === null ? "" : shortened(words.name(terminal, terminal), packing.nodeRoom, TEXT, true),
  );
  const terminalX = MARGIN + Math.max(...names.map((name) => textWidth(name, TEXT, true))) + 10;
  const columns: number[] = [terminalX + 10];
  // A column that only others use still has its place.
  for (let d = 0; d < widths.length; d += 1) columns.push((columns[d] as number) + (widths[d] ?? 0));
  let y = top;
  rails.forEach((rail, i) => {
    const tall = rail.chain.length > 0;
    y += tall ? ABOVE : i === 0 ? 8 : PLAIN_PITCH / 2;
    rail.y = y;
    y += tall ? below(packing) + GAP / 2 : PLAIN_PITCH / 2;
    const { terminal } = rail;
    if (terminal === null) return;
    const lost = words.lineState(terminal) !== null;
    canvas.terminal(lost ? supplySide(terminal) : terminal, terminalX, rail.y);
    const name = { text: names[i] as string, full: words.name(terminal, terminal) };
    const at = { x: terminalX - 10, y: rail.y + 0.36 * TEXT, anchor: "end" } as const;
    canvas.text({ role: "node", about: terminal, ...name, ...at, size: TEXT, bold: true });
  });
  const placed = rails.map((rail) => {
    let x = rail.terminal !== null ? terminalX + JOINT - 2.5 : (columns[rail.depth] as number) + 4;
    if (rail.parent !== null) {
      const from = { x, y: rail.parent.y };
      canvas.wire(rail.parent.net, from, { x, y: rail.y });
    }
    rail.chain.forEach(({ joint, nets }, i) => {
      const depth = rail.depth + i;
      const centre = ((columns[depth] as number) + (columns[depth + 1] as number)) / 2 + 3;
      const about = joint?.id ?? (rail.terminal as string);
      const kind = joint === null ? "line break" : kindOf(joint);
      const { state } = wordsOf(joint);
      const [near, far] = canvas.between({ kind, about, state, x: centre, y: rail.y }, halfOf(kind), nets);
      canvas.wire(nets[0], { x, y: rail.y }, { x: near.x, y: rail.y });
      canvas.words(about, wordsOf(joint), centre, rail.y, packing);
      x = far.x;
    });
    const ties = rail.terminal === null && rail.parent === null && !rails.some((one) => one.parent === rail);
    return { net: rail.net, x: ties ? null : x, y: rail.y };
  });
  return { rails: placed, right: (columns[widths.length] as number) + 2, bottom: y, terminalX };
}

/** Symbol of a joint by its role. */
export function kindOf({ role }: Branch): "joint" | "jumper bar" | "conductor" {
  return role === "jumper bar" || role === "conductor" ? role : "joint";
}

/** Half sizes of a symbol by what it stands for. */
export function halfOf(kind: "joint" | "jumper bar" | "conductor" | "line break"): {
  readonly x: number;
  readonly y: number;
} {
  return kind === "joint" ? { x: JOINT, y: JOINT } : kind === "line break" ? { x: 10, y: JOINT } : BAR;
}
