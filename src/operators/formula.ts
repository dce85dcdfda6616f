/** Formulas as tokens: which symbols they speak of, and the same formula with the numbers put in. */
import { fail } from "../quantity/index.ts";

/** A symbol and what stands in its place. */
export interface Replacement {
  /** What the symbol belongs to, for messages and for the list of symbols used. */
  readonly name: string;
  readonly symbol: string;
  readonly tex: string;
  readonly value: { readonly text: string; readonly tex: string };
  /** A bare number of 0 or more needs no brackets beside a sign. */
  readonly plain: boolean;
}

const TEXT_TOKEN = /\s+|\p{L}[\p{L}\p{M}\p{Nd}_₀-₉ₐ-ₜ′]*|\d+(?:\.\d+)?(?:e[-+]?\d+)?|./gsu;
const TEX_TOKEN = /\s+|\\(?:mathrm|text|operatorname)\{[^{}]*\}|\\[a-zA-Z]+|\\.|\d+(?:\.\d+)?|./gsu;

function tokensOf(text: string, isTex: boolean): readonly string[] {
  const tokens: string[] = text.match(isTex ? TEX_TOKEN : TEXT_TOKEN) ?? [];
  if (!isTex) return tokens;
  // `C_t` and `C_{t}` are one symbol: every subscript of one token gets its braces.
  return tokens.flatMap((token, i) =>
    tokens[i - 1] === "_" && token !== "{" && !isSpace(token) && !/^\d\d/.test(token)
      ? ["{", token, "}"]
      : [token],
  );
}
const isSpace = (token: string | undefined): boolean => token !== undefined && /^\s/.test(token);

/** Words that a formula may use without anyone bearing them. */
const WORDS: readonly string[] = [
  "sin",
  "cos",
  "tan",
  "asin",
  "acos",
  "atan",
  "sinh",
  "cosh",
  "tanh",
  "ln",
  "lg",
  "log",
  "exp",
  "sqrt",
  "min",
  "max",
  "abs",
  "π",
  "e",
];

/** Index after the group or token that starts at `at`. */
function afterGroup(tokens: readonly string[], at: number): number {
  let i = at;
  while (isSpace(tokens[i])) i += 1;
  if (tokens[i] !== "{") return i + 1;
  for (let depth = 0; i < tokens.length; i += 1) {
    if (tokens[i] === "{") depth += 1;
    if (tokens[i] === "}") depth -= 1;
    if (depth === 0) return i + 1;
  }
  return i;
}

/** Index after the symbol if it stands at `at`, which is no space, spaces inside it aside; undefined if it does not. */
function matchAt(tokens: readonly string[], at: number, symbol: readonly string[]): number | undefined {
  let i = at;
  for (const wanted of symbol) {
    if (isSpace(wanted)) continue;
    while (isSpace(tokens[i])) i += 1;
    if (tokens[i] !== wanted) return undefined;
    i += 1;
  }
  // `R` is not the `R` of `R_{20}` or of R′.
  const next = neighbour(tokens, i, 1);
  return next === "_" || next === "'" ? undefined : i;
}

/** Nearest token that is no space, in steps of −1 or 1. */
function neighbour(tokens: readonly string[], from: number, step: 1 | -1): string | undefined {
  let i = from;
  while (isSpace(tokens[i])) i += step;
  return tokens[i];
}

interface Spelling {
  readonly tokens: readonly string[];
  /** Index of the sign that ends the left side. */
  readonly equals: number;
  readonly isTex: boolean;
}

function spelling(formula: string, isTex: boolean, path: string): Spelling {
  if (typeof formula !== "string") {
    fail({ code: "missing", path, expected: "a formula", received: formula });
  }
  const tokens = tokensOf(formula, isTex);
  const equals = tokens.indexOf("=");
  if (equals <= 0) {
    fail({ code: "malformed-text", path, expected: "a left side, = and a right side", received: formula });
  }
  return { tokens, equals, isTex };
}

function bracketed(
  tokens: readonly string[],
  from: number,
  to: number,
  one: Replacement,
  isTex: boolean,
): string {
  const [before, after] = [neighbour(tokens, from - 1, -1), neighbour(tokens, to, 1)];
  const value = isTex ? one.value.tex : one.value.text;
  const raised = after !== undefined && /^[\^²³⁴⁵⁶⁷⁸⁹⁰¹⁻]$/.test(after);
  const enclosed = (before === "(" && after === ")") || (isTex && before === "{" && after === "}");
  const alone = before === "=" && after === undefined;
  if (!raised && (enclosed || alone || one.plain)) return value;
  return isTex ? `\\left(${value}\\right)` : `(${value})`;
}

/** The right side with every symbol replaced; the left side as it is. Names of what was replaced go into `used`. */
function substituted(
  { tokens, equals, isTex }: Spelling,
  replacements: readonly Replacement[],
  used: Set<string>,
): string {
  const symbols = replacements
    .map((one) => ({ one, symbol: tokensOf(isTex ? one.tex : one.symbol, isTex) }))
    // The longest first: R_{20} before R.
    .sort((a, b) => b.symbol.length - a.symbol.length);
  let out = "";
  let i = 0;
  while (i < tokens.length) {
    const token = tokens[i] as string;
    const found =
      i <= equals || isSpace(token)
        ? undefined
        : symbols
            .map(({ one, symbol }) => ({ one, end: matchAt(tokens, i, symbol) }))
            .find(({ end }) => end !== undefined);
    if (found?.end !== undefined) {
      used.add(found.one.name);
      out += bracketed(tokens, i, found.end, found.one, isTex);
      i = found.end;
      continue;
    }
    // What stands in a subscript is part of a name.
    const end = isTex && token === "_" ? afterGroup(tokens, i + 1) : i + 1;
    out += tokens.slice(i, end).join("");
    i = end;
  }
  return out;
}

/** Refuses a text formula that speaks of a symbol nobody bears: a slip that would be printed as it stands. */
function checkSymbols({ tokens, equals }: Spelling, known: readonly string[], path: string): void {
  for (const token of tokens.slice(equals + 1)) {
    if (!/^\p{L}/u.test(token) || WORDS.includes(token) || known.includes(token)) continue;
    fail({ code: "unknown-name", path, expected: `only symbols of ${known.join(", ")}`, received: token });
  }
}

/** Both spellings with the numbers put in; they must speak of the same quantities. */
export function substitution(
  formula: { readonly text: string; readonly tex: string },
  replacements: readonly Replacement[],
  known: readonly string[],
  path: string,
): { readonly text: string; readonly tex: string } {
  const text = spelling(formula?.text, false, `${path}.text`);
  const tex = spelling(formula?.tex, true, `${path}.tex`);
  checkSymbols(text, known, `${path}.text`);
  const [inText, inTex] = [new Set<string>(), new Set<string>()];
  const result = {
    text: substituted(text, replacements, inText),
    tex: substituted(tex, replacements, inTex),
  };
  const odd = replacements.find(({ name }) => inText.has(name) !== inTex.has(name));
  if (odd !== undefined) {
    const [there, missing] = inText.has(odd.name) ? ["text", "tex"] : ["tex", "text"];
    fail({
      code: "inconsistent",
      path: `${path}.${missing}`,
      expected: `${odd.name}, as in the ${there}`,
      received: missing === "tex" ? formula.tex : formula.text,
    });
  }
  return result;
}
