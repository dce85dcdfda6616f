/** How text reports are laid out: wrapped lines, list items, tables in columns. */

/** Columns of a job sheet. */
export const WIDTH = 96;

/** Text in lines of at most `width` columns, indented. */
export function wrap(text: string, indent: string, width: number = WIDTH): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, indent + line].join("\n");
}

/** A list item. */
export const bullet = (text: string): string => `  - ${wrap(text, "    ").trimStart()}`;
/** A heading with a blank line before it. */
export const heading = (text: string): string => `\n${text.toUpperCase()}`;

/** Columns padded to their widest cell, as many in each row as in the first row; the first is left-aligned, the others right. */
export function table(rows: readonly (readonly string[])[]): string[] {
  const [header] = rows as readonly [readonly string[]];
  const widths = header.map((_, c) => Math.max(...rows.map((row) => [...(row[c] as string)].length)));
  return rows.map((row) => {
    const cells = row.map((cell, c) => {
      const gap = " ".repeat((widths[c] as number) - [...cell].length);
      return c === 0 ? cell + gap : gap + cell;
    });
    return `  ${cells.join("  ")}`.trimEnd();
  });
}
