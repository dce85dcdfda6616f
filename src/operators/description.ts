/** What shown working needs to know of a calculation. Entries of a catalogue fit, and so does a literal of your own. */

/**
 * A formula in two spellings that say the same.
 * @since 0.1.0
 */
export interface FormulaText {
  /** Plain text with a left side: `P = V²/R`. Symbols that stand next to each other need a sign between them (`V·I`). */
  readonly text: string;
  /** TeX, mathematics mode, with the same left side: `P = \frac{V^2}{R}`. */
  readonly tex: string;
}

/**
 * A named quantity of a calculation.
 * @since 0.1.0
 */
export interface DescribedQuantity {
  /** Symbol in the text of the formula: a letter, with letters, digits or subscripts after it (`R`, `R20`, `ΔT`, `R_hot`). */
  readonly symbol: string;
  /** Symbol in its TeX; left out, the first letter with the rest as a subscript. */
  readonly tex?: string;
  /** Canonical unit the number is held in; `1` for a ratio or a count. */
  readonly unit: string;
}

/**
 * An input of a calculation.
 * @since 0.1.0
 */
export interface DescribedInput extends DescribedQuantity {
  /** Name of the field of the argument. */
  readonly name: string;
  /** Value taken where the field is left out. */
  readonly default?: unknown;
}

/**
 * A constant that a formula speaks of.
 * @since 0.1.0
 */
export interface DescribedConstant extends DescribedQuantity {
  /** What it is. */
  readonly name: string;
  /** Its value, in `unit`. */
  readonly value: number;
}

/**
 * An intermediate value on the way to the result.
 * @since 0.1.0
 */
export interface DescribedStep<I extends object> extends DescribedQuantity {
  /** What it is. */
  readonly name: string;
  /** Its formula, in symbols of inputs, constants and earlier steps. */
  readonly formula: FormulaText;
  /** The value, from the argument and the values of earlier steps by name. */
  value(input: I, earlier: Readonly<Record<string, number>>): number;
}

/**
 * An output of a calculation.
 * @since 0.1.0
 */
export interface DescribedOutput extends DescribedQuantity {
  /** Name of the field of the result, dots leading into records; left out, the result itself. */
  readonly name?: string;
  /** Its formula, where it is not that of the calculation. */
  readonly formula?: FormulaText;
}

/**
 * A calculation in words, symbols and sources: what {@link showWorking} writes its lines from.
 * @since 0.1.0
 */
export interface CalculationDescription<I extends object = object> {
  /** Id of the calculation. */
  readonly id: string;
  /** One line of what it computes. */
  readonly title?: string;
  /** Formula of the first output; left out for a look-up, which has none. */
  readonly formula?: FormulaText;
  /** Inputs, in the order in which they are listed. */
  readonly inputs: readonly DescribedInput[];
  /** Constants of the formulas. */
  readonly constants?: readonly DescribedConstant[];
  /** Intermediate values, in the order in which they are worked out. */
  readonly steps?: readonly DescribedStep<I>[];
  /** Outputs, at least one. */
  readonly outputs: readonly DescribedOutput[];
  /** Ids of the sources. */
  readonly sources: readonly string[];
}
