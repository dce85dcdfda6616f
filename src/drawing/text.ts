/** Text on its way into a picture: cleaned, escaped, measured from above, shortened. */
import { fail } from "../quantity/index.ts";

/** What XML 1.0 forbids, what browsers do not show, and what would turn the reading direction of a label. */
function unusable(code: number): boolean {
  return (
    code < 0x20 ||
    (code >= 0x7f && code <= 0x9f) ||
    (code >= 0xd800 && code <= 0xdfff) ||
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069) ||
    (code >= 0xfdd0 && code <= 0xfdef) ||
    (code & 0xfffe) === 0xfffe
  );
}

/** Text from a user as one line that XML can hold: white space becomes a space, what it cannot hold U+FFFD. */
export function cleanText(path: string, value: unknown): string {
  if (typeof value !== "string") {
    const code = value === undefined || value === null ? "missing" : "wrong-type";
    fail({ code, path, expected: "text", received: value });
  }
  let out = "";
  for (const char of value as string) {
    const code = char.codePointAt(0) as number;
    const space = (code >= 9 && code <= 13) || code === 0x85 || code === 0x2028 || code === 0x2029;
    out += space ? " " : unusable(code) ? "\uFFFD" : char;
  }
  return out.replace(/ {2,}/g, " ").trim();
}

/** The same for a title or label: something must be left to read. */
export function namedText(path: string, value: unknown): string {
  const text = cleanText(path, value);
  if (text === "") fail({ code: "missing", path, expected: "text that shows", received: value });
  return text;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text as XML character data, good in an attribute too. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (char) => ENTITIES[char] as string);
}

/**
 * Advance widths of U+0020 to U+007E in hundredths of the font size, two digits each (00 is 100), rounded up, of DejaVu Sans, which is among the widest
 * sans-serif faces in use; measured in a browser. A reader's own face is hardly ever wider.
 */
const ASCII =
  "3241468464967828393950843237323464646464646464646464343484848454006969707764587876303066568775796179706462746999696269393439845050626455646236646428285828986462646442534064608260605364346484";
const OTHERS: Readonly<Record<string, number>> = {
  "\u00a0": 32,
  "°": 50,
  "±": 84,
  "²": 41,
  "³": 41,
  "·": 32,
  "×": 84,
  µ: 64,
  Ω: 77,
  "−": 84,
  "…": 100,
  "–": 50,
  "—": 100,
};
/** Added to every character of a bold text: the largest step seen among those above. */
const BOLD = 14;
/** Width taken, and then forced by `textLength`, for a character that no table here knows. */
const UNKNOWN = 120;

function charWidth(char: string): number | undefined {
  const code = char.codePointAt(0) as number;
  if (code >= 0x20 && code <= 0x7e) return Number(ASCII.slice(2 * code - 64, 2 * code - 62)) || 100;
  const known = OTHERS[char];
  if (known !== undefined) return known;
  // Latin, Greek and Cyrillic letters: the widest measured in each block.
  if (code >= 0xa1 && code <= 0x17f) return 108;
  if (code >= 0x386 && code <= 0x44f) return 122;
  return undefined;
}

/** Whether every character is in the tables, so that {@link textWidth} is a bound without being forced. */
export function isMeasured(text: string): boolean {
  for (const char of text) if (charWidth(char) === undefined) return false;
  return true;
}

/** Upper bound of the width of a line of text. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const char of text) sum += (charWidth(char) ?? UNKNOWN) + (bold ? BOLD : 0);
  return (sum * size) / 100;
}

/** The text, or as much of its beginning as fits with an ellipsis behind it; before `tail`, if that is its end and fits. */
export function shortened(text: string, room: number, size: number, bold = false, tail = ""): string {
  if (textWidth(text, size, bold) <= room) return text;
  const end = text.endsWith(tail) && textWidth(`${tail}…`, size, bold) < 0.8 * room ? `…${tail}` : "…";
  const chars = [...text.slice(0, text.length - (end.length - 1))];
  while (chars.length > 1 && textWidth(`${chars.join("").trimEnd()}${end}`, size, bold) > room) chars.pop();
  return `${chars.join("").trimEnd()}${end}`;
}

/** Lines of at most the given width, at most so many, broken at spaces; what does not fit is shortened. */
export function wrapped(
  text: string,
  room: number,
  size: number,
  bold = false,
  most: number = Number.POSITIVE_INFINITY,
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, bold) > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  const all = [...lines, line].filter((one) => one !== "");
  const kept = all.length <= most ? all : [...all.slice(0, most - 1), all.slice(most - 1).join(" ")];
  return kept.map((one) => shortened(one, room, size, bold));
}
