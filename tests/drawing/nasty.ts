/** Texts that try to become something else, and what must not be left of any text. */
import * as fc from "fast-check";

export const nasty: readonly string[] = [
  `<script>alert(1)</script>`,
  `"><image href="x" onerror="alert(1)">`,
  `]]>&amp;<!--`,
  "bell\u0007 null\u0000 escape\u001b",
  "lone \ud800 and \udc00",
  "turned \u202eright\u202c \u2066to left\u2069",
  "not a character \uffff \ufdd0",
  "two\nlines\tand tabs\u2028here",
  "漢字 and 🔥 and é",
];

/** Control characters but line feed, marks that turn the reading direction, halves of pairs, non-characters. */
export function hidden(char: string): boolean {
  const code = char.codePointAt(0) as number;
  const ranges = [
    [0, 9],
    [11, 31],
    [0x7f, 0x9f],
    [0x202a, 0x202e],
    [0x2066, 0x2069],
    [0xd800, 0xdfff],
    [0xfdd0, 0xfdef],
    [0xffff, 0xffff],
  ];
  return ranges.some(([low = 0, high = 0]) => code >= low && code <= high);
}

export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.constantFrom(...nasty),
);
