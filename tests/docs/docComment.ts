/** Reads a documentation comment from its raw text: summary, block tags, fenced code. */

export interface DocComment {
  readonly summary: string;
  readonly tags: readonly { readonly name: string; readonly text: string }[];
}

/**
 * Splits a `/** … *​/` comment. Tags inside code fences and inline code are text, not tags; a tag may also
 * follow the summary on one line.
 */
export function parseDocComment(raw: string): DocComment {
  const lines = raw
    .replace(/^\/\*\*/, "")
    .replace(/\*\/$/, "")
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, ""));
  const parts: { name: string; text: string[] }[] = [{ name: "", text: [] }];
  let fenced = false;
  for (const line of lines) {
    const isFence = /^\s*```/.test(line);
    if (isFence) fenced = !fenced;
    let rest = line;
    if (!fenced && !isFence) {
      // Blank out inline code and {@link …} so that an @ inside them does not start a tag.
      const masked = line.replace(/`[^`]*`|\{@[^}]*\}/g, (hit) => "#".repeat(hit.length));
      let cursor = 0;
      for (const hit of masked.matchAll(/(?:^|\s)@([a-zA-Z]+)/g)) {
        const at = (hit.index ?? 0) + hit[0].indexOf("@");
        parts.at(-1)?.text.push(line.slice(cursor, at));
        parts.push({ name: hit[1] as string, text: [] });
        cursor = at + 1 + (hit[1] as string).length;
      }
      rest = line.slice(cursor);
    }
    parts.at(-1)?.text.push(rest);
  }
  const [summary, ...tags] = parts.map(({ name, text }) => ({ name, text: text.join("\n").trim() }));
  return { summary: summary?.text ?? "", tags };
}

/** Fenced code blocks of a text, by language word. */
export function codeBlocks(text: string, language: string): string[] {
  return [...text.matchAll(/^[ \t]*```(\S*)[^\n]*\n([\s\S]*?)^[ \t]*```[ \t]*$/gm)]
    .filter((hit) => hit[1] === language)
    .map((hit) => hit[2] as string);
}
