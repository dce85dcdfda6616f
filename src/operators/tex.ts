/** Symbols, numbers and units in TeX, mathematics mode. */

const GREEK: Readonly<Record<string, string>> = {
  α: "\\alpha",
  β: "\\beta",
  γ: "\\gamma",
  δ: "\\delta",
  ε: "\\varepsilon",
  η: "\\eta",
  θ: "\\theta",
  ϑ: "\\vartheta",
  κ: "\\kappa",
  λ: "\\lambda",
  μ: "\\mu",
  µ: "\\mu",
  ν: "\\nu",
  ρ: "\\rho",
  σ: "\\sigma",
  τ: "\\tau",
  φ: "\\varphi",
  χ: "\\chi",
  ψ: "\\psi",
  ω: "\\omega",
  Γ: "\\Gamma",
  Δ: "\\Delta",
  Θ: "\\Theta",
  Λ: "\\Lambda",
  Σ: "\\Sigma",
  Φ: "\\Phi",
  Ψ: "\\Psi",
  Ω: "\\Omega",
};

const plainDigits = (text: string): string =>
  text.replace(/[₀-₉]/g, (digit) => String(digit.charCodeAt(0) - 0x2080));

const letter = (one: string): string => GREEK[one] ?? one;

/** A symbol of text in TeX: the first letter, and the rest as its subscript; Δ stands before its letter. */
export function symbolTex(symbol: string): string {
  const [first = "", ...others] = [...symbol];
  const rest = plainDigits(others.join("").replace(/^_/, ""));
  if (first === "Δ" && rest !== "") return `\\Delta ${symbolTex(rest)}`;
  if (rest === "") return letter(first);
  if (/^\d+$/.test(rest)) return `${letter(first)}_{${rest}}`;
  return `${letter(first)}_{${[...rest].length === 1 ? letter(rest) : `\\mathrm{${rest}}`}}`;
}

/** Words in mathematics mode, with what TeX would read as a command written out. */
export function wordsTex(text: string): string {
  const escaped = text.replace(/[\\{}$&#%_^~]/g, (one) => {
    if (one === "\\") return "\\textbackslash ";
    return one === "^" || one === "~" ? " " : `\\${one}`;
  });
  return `\\text{${escaped}}`;
}

/** A unit symbol: upright letters, raised digits, °, Ω and µ by their commands. */
function unitTex(unit: string): string {
  return unit
    .replace(/[a-zA-Z]+|./gsu, (part) => {
      if (/^[a-zA-Z]/.test(part)) return `\\mathrm{${part}}`;
      if (part === "·") return "{\\cdot}";
      if (part === "°") return "{}^{\\circ}";
      if (part === "²" || part === "³") return `^{${part === "²" ? 2 : 3}}`;
      if (part === "%") return "\\%";
      if (part === " ") return "\\ ";
      return GREEK[part] === undefined ? part : `${GREEK[part]} `;
    })
    .trim();
}

/** A quantity as the library writes it, in TeX: the exponent as a power of ten, a thin space before the unit. */
export function quantityTex(text: string): string {
  const parts = /^([-\u2212]?[\d.]+(?:e[-+]?\d+)?)\s?(.*)$/.exec(text);
  const [, number, unit] = parts as unknown as readonly [string, string, string];
  const [digits = "", exponent] = number.replace("\u2212", "-").split("e");
  const power = exponent === undefined ? "" : `\\times 10^{${Number(exponent)}}`;
  return `${digits}${power}${unit === "" ? "" : `\\,${unitTex(unit)}`}`;
}
