/** A report as Markdown (CommonMark with tables): no HTML in it, and nothing of a user's text becomes markup. */
import { cleanText } from "../text.ts";
import type { Block, Cell, ReportDocument, TableBlock } from "./document.ts";

/**
 * Text as Markdown that shows it as it is. CommonMark lets a backslash stand before any ASCII punctuation (0.31.2, 2.4); besides
 * what it reads as markup itself, marks of common extensions are taken: tables, bare addresses, strike-through, formulas.
 */
function inline(text: string): string {
  return cleanText("text", text)
    .replace(/[\\`*_[\]<>|~&#$@!{}^]/g, "\\$&")
    .replace(/:(?=\/\/)/g, "\\:")
    .replace(/\b(www)\./gi, "$1\\.");
}

/** The same at the beginning of a line, where a number or a sign would begin a list or underline a heading. */
function line(text: string): string {
  return inline(text)
    .replace(/^(\d{1,9})([.)])(?=\s|$)/, "$1\\$2")
    .replace(/^[-+=]/, "\\$&");
}

function cellText({ text, tone }: Cell): string {
  const shown = inline(text);
  return tone === "bad" && shown !== "" ? `**${shown}**` : shown;
}

function tableLines({ caption, columns, rows }: TableBlock): string {
  const row = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    `*${inline(caption)}*`,
    "",
    row(columns.map(({ heading }) => inline(heading))),
    row(columns.map(({ numeric }) => (numeric ? "---:" : "---"))),
    ...rows.map((cells) => row(cells.map(cellText))),
  ].join("\n");
}

function blockText(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return line(block.text);
    case "list":
      return block.items
        .map((item, i) => `${block.ordered === true ? `${i + 1}.` : "-"} ${line(item)}`)
        .join("\n");
    case "caution":
      return block.items.map((item) => `> **Caution:** ${inline(item)}`).join("\n>\n");
    case "table":
      return tableLines(block);
    case "picture":
      return `*${inline(block.title)}, in words:* ${inline(block.description)}`;
  }
}

/** Writes the report as Markdown. */
export function markdownOf(report: ReportDocument): string {
  const facts = report.facts.map(([name, text]) => `- ${inline(name)}: ${inline(text)}`).join("\n");
  const pieces = [
    `# ${line(report.title)}`,
    facts,
    "## The answer",
    blockText({ kind: "list", items: report.answer, ordered: true }),
    "## Cautions",
    blockText({ kind: "caution", items: report.cautions }),
    ...report.parts.flatMap(({ title, sections }) => [
      `## ${line(title)}`,
      ...sections.flatMap((section) => [`### ${line(section.title)}`, ...section.blocks.map(blockText)]),
    ]),
    "---",
    line(report.footer),
  ];
  return `${pieces.filter((piece) => piece !== "").join("\n\n")}\n`;
}
