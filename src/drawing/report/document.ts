/** What a report consists of, whichever way it is written out: parts, sections, and blocks of plain text in them. */

/** What a word means for the reader: said in colour or weight besides, never instead. */
export type Tone = "good" | "bad" | "doubt";

/** One cell of a table: plain text, as yet unescaped. */
export interface Cell {
  readonly text: string;
  readonly tone?: Tone;
}

export interface TableBlock {
  readonly kind: "table";
  readonly caption: string;
  /** The first column names the row. */
  readonly columns: readonly { readonly heading: string; readonly numeric: boolean }[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A picture in two layouts of the same content, and in words for where there are no pictures. */
export interface PictureBlock {
  readonly kind: "picture";
  readonly title: string;
  readonly description: string;
  readonly wide: string;
  readonly narrow: string;
}

export type Block =
  | { readonly kind: "paragraph"; readonly text: string }
  | { readonly kind: "list"; readonly items: readonly string[]; readonly ordered?: boolean }
  | { readonly kind: "caution"; readonly items: readonly string[] }
  | TableBlock
  | PictureBlock;

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A section with what is said where there is nothing for it; nothing is said where it would be out of place. */
export interface Draft extends Section {
  readonly missing: string | null;
}

export interface Part {
  readonly id: string;
  readonly title: string;
  readonly sections: readonly Section[];
}

export interface ReportDocument {
  readonly title: string;
  /** Equipment, people and day: name and text. */
  readonly facts: readonly (readonly [string, string])[];
  readonly answer: readonly string[];
  readonly cautions: readonly string[];
  readonly parts: readonly Part[];
  readonly footer: string;
}

export const paragraph = (text: string): Block => ({ kind: "paragraph", text });

/** A list, or nothing where there is nothing to list. */
export const list = (items: readonly string[], ordered = false): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: "list", items, ordered }];

/** Cautions of one section, or nothing. */
export const caution = (items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: "caution", items }];

/** A table, or nothing without rows. A heading that begins with `#` stands over numbers. */
export function table(
  caption: string,
  headings: readonly string[],
  rows: readonly (readonly (Cell | string)[])[],
): readonly TableBlock[] {
  if (rows.length === 0) return [];
  return [
    {
      kind: "table",
      caption,
      columns: headings.map((text) => ({ heading: text.replace(/^#/, ""), numeric: text.startsWith("#") })),
      rows: rows.map((row) => row.map((cell) => (typeof cell === "string" ? { text: cell } : cell))),
    },
  ];
}

/** A table without those columns that say nothing in any row; the first stays. */
export function slim(blocks: readonly TableBlock[]): readonly TableBlock[] {
  return blocks.map((block) => {
    const kept = block.columns.map((_, c) => c === 0 || block.rows.some((row) => row[c]?.text !== ""));
    return {
      ...block,
      columns: block.columns.filter((_, c) => kept[c]),
      rows: block.rows.map((row) => row.filter((_, c) => kept[c])),
    };
  });
}
