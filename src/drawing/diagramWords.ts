/** What is printed beside each symbol: label, value, state; checked, cleaned, and shortened to the room there is. */
import type { Branch } from "../circuit/index.ts";
import {
  type CanonicalUnit,
  checkFinite,
  checkOneOf,
  fail,
  formatQuantity,
  given,
  type Quantity,
} from "../quantity/index.ts";
import type { DiagramInput, DiagramState, DiagramValue } from "./diagramTypes.ts";
import type { ModuleTree } from "./moduleTree.ts";
import { cleanText, namedText } from "./text.ts";

const STATES = ["within", "outside", "undecided", "open", "shorted", "hot joint", "lost"] as const;

/** The words of one symbol. */
export interface Words {
  readonly label: string;
  /** End of the label that must survive shortening: an element's place in its bank. */
  readonly tail: string;
  readonly value: string;
  readonly state: DiagramState | null;
}

/** The words of a whole diagram. */
export interface DiagramWords {
  /** By element or joint. */
  readonly of: (id: string) => Words;
  /** Label of a bank, line or star point. */
  readonly name: (id: string, otherwise: string) => string;
  /** Label of the star point that a node belongs to. */
  readonly starName: (net: string) => string;
  /** Whether a line is said to be lost or open. */
  readonly lineState: (line: string) => DiagramState | null;
}

/** A value as text, with the sign of a minus and a space that does not break. */
function valueText(path: string, shown: DiagramValue | string): string {
  if (typeof shown === "string") return cleanText(path, shown);
  const { value, unit, significantDigits } = given(shown, path);
  checkFinite(`${path}.value`, value);
  const text = formatQuantity<CanonicalUnit>(value as Quantity<CanonicalUnit>, {
    unit,
    significantDigits: significantDigits ?? 4,
    engineering: true,
    trueMinus: true,
    nonBreakingSpace: true,
  });
  // Digits that nobody asked for say nothing when they are zeros.
  return significantDigits === undefined
    ? text.replace(/(\.\d*?)0+(?!\d)/, "$1").replace(/\.(?!\d)/, "")
    : text;
}

function ownState({ resistance }: Branch, isElement: boolean): DiagramState | null {
  if (resistance === "open") return "open";
  return isElement && resistance === 0 ? "shorted" : null;
}

function entries<T>(path: string, record: Readonly<Record<string, T>> | undefined): [string, T][] {
  return record === undefined ? [] : Object.entries(given(record, path));
}

function checkStateFits(path: string, state: DiagramState, kind: string): void {
  const fits =
    kind === "line" ? state === "lost" : state !== "lost" && (state !== "hot joint" || kind === "joint");
  if (fits) return;
  const expected =
    kind === "line"
      ? '"lost" for a line'
      : `a state of ${kind === "joint" ? "a joint" : "an element"}: within, outside, undecided, open, shorted${kind === "joint" ? ", hot joint" : ""}`;
  fail({ code: "inconsistent", path, expected, received: state });
}

/** Resolves what is printed, refusing names that the module does not have. */
export function diagramWords(input: DiagramInput, tree: ModuleTree): DiagramWords {
  const elements = tree.strings.flatMap((string) => string.elements);
  const kinds = new Map<string, string>([
    ...elements.map(({ id }) => [id, "element"] as const),
    ...tree.joints.map(({ id }) => [id, "joint"] as const),
  ]);
  const nodes = new Map<string, string>([
    ...tree.lines.map(({ net }) => [net, "line"] as const),
    ...tree.stars.map(({ net }) => [net, "star point"] as const),
    ...tree.banks.map(({ id }) => [id, "bank"] as const),
  ]);
  const known = (path: string, id: string, ...maps: readonly ReadonlyMap<string, string>[]): string => {
    for (const map of maps) {
      const kind = map.get(id);
      if (kind !== undefined) return kind;
    }
    const names = maps.flatMap((map) => [...map.keys()]).slice(0, 40);
    return fail({ code: "unknown-name", path, expected: `one of ${names.join(", ")}`, received: id });
  };
  const values = new Map<string, string>();
  for (const [id, value] of entries("values", input.values)) {
    known(`values.${id}`, id, kinds);
    values.set(id, valueText(`values.${id}`, value));
  }
  const states = new Map<string, DiagramState>();
  const lines = new Map(tree.lines.map(({ net }) => [net, "line"]));
  for (const [id, state] of entries("states", input.states)) {
    const kind = known(`states.${id}`, id, kinds, lines);
    checkOneOf(`states.${id}`, state, STATES);
    checkStateFits(`states.${id}`, state, kind);
    states.set(id, state);
  }
  const labels = new Map<string, string>();
  for (const [id, label] of entries("labels", input.labels)) {
    known(`labels.${id}`, id, kinds, nodes);
    labels.set(id, namedText(`labels.${id}`, label));
  }
  const tails = new Map(
    tree.strings.flatMap(({ bank, elements: some }) =>
      some.map(({ id }) => [id, id.slice(tree.banks[bank]?.id.length)] as const),
    ),
  );
  const words = new Map<string, Words>();
  for (const branch of [...elements, ...tree.joints]) {
    const { id, resistance } = branch;
    const state = states.get(id) ?? ownState(branch, kinds.get(id) === "element");
    // The state's word already says that a branch is open.
    const own = resistance === "open" ? "" : valueText(id, { value: resistance, unit: "Ω" });
    const value = input.values === undefined ? own : (values.get(id) ?? "");
    const tail = labels.has(id) ? "" : (tails.get(id) ?? "");
    words.set(id, { label: labels.get(id) ?? cleanText("module", id), tail, value, state });
  }
  return {
    of: (id) => words.get(id) as Words,
    name: (id, otherwise) => labels.get(id) ?? cleanText("module", otherwise),
    starName: (net) => {
      const root = tree.stars.find(function holds(node): boolean {
        return node.net === net || node.limbs.some(holds);
      });
      const name = root?.net ?? net;
      return labels.get(name) ?? cleanText("module", name);
    },
    lineState: (line) => states.get(line) ?? null,
  };
}
