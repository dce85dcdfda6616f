/** Reads a documentation comment from its raw text: summary, block tags, fenced code. */

/**
 * @typedef {object} DocComment
 * @property {string} summary
 * @property {readonly { readonly name: string, readonly text: string }[]} tags
 */

/**
 * Splits a documentation comment. Tags inside code fences and inline code are text, not tags; a tag may also
 * follow the summary on one line.
 * @param {string} raw the comment with its marks
 * @returns {DocComment} its parts
 */
export function parseDocComment(raw) {
  const lines = raw
    .replace(/^\/\*\*/, "")
    .replace(/\*\/$/, "")
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, ""));
  /** @type {{ name: string, text: string[] }[]} */
  const parts = [{ name: "", text: [] }];
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
        parts.push({ name: String(hit[1]), text: [] });
        cursor = at + 1 + String(hit[1]).length;
      }
      rest = line.slice(cursor);
    }
    parts.at(-1)?.text.push(rest);
  }
  const [summary, ...tags] = parts.map(({ name, text }) => ({ name, text: text.join("\n").trim() }));
  return { summary: summary?.text ?? "", tags };
}

/**
 * Fenced code blocks of a text, by language word.
 * @param {string} text
 * @param {string} language
 * @returns {string[]} the code in them
 */
export function codeBlocks(text, language) {
  return [...text.matchAll(/^[ \t]*```(\S*)[^\n]*\n([\s\S]*?)^[ \t]*```[ \t]*$/gm)]
    .filter((hit) => hit[1] === language)
    .map((hit) => String(hit[2]));
}
