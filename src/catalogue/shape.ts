/** Shapes: what kind of value an input takes or a result is, as plain data. Written by the generator from the types. */
import type { CanonicalUnit } from "../quantity/index.ts";

/**
 * A number: in a canonical unit, or without a unit ("").
 * @since 0.1.0
 */
export interface NumberShape {
  /** Canonical unit; empty for a number without a unit tag. */
  readonly number: CanonicalUnit | "";
  /** Kind of the quantity, where equal units must not be mixed: `"line-to-line"`, `"cold"`. */
  readonly kind?: string;
}

/**
 * The shape of a value.
 *
 * - `"text"`, `"flag"` (true or false), `"null"`
 * - `"opaque"`: a function or typed array, which no plain value can stand for
 * - `{ number }`; `{ names }` and `{ values }`: one of these texts or numbers
 * - `{ list }`, `{ tuple }`, `{ map }` (free keys), `{ record }` (named fields; a name with `?` may be left out)
 * - `{ ref }`: a named shape, `room.Type`; `{ either }`: one of several
 * @since 0.1.0
 */
export type Shape =
  | "text"
  | "flag"
  | "null"
  | "opaque"
  | NumberShape
  | {
      /** Any of these texts. */
      readonly names: readonly string[];
    }
  | {
      /** Any of these numbers. */
      readonly values: readonly number[];
    }
  | {
      /** Any number of these. */
      readonly list: Shape;
    }
  | {
      /** These, in order. */
      readonly tuple: readonly Shape[];
    }
  | {
      /** Names of the caller's choice, each with one of these. */
      readonly map: Shape;
    }
  | {
      /** These fields. */
      readonly record: Readonly<Record<string, Shape>>;
    }
  | {
      /** A shape by its name. */
      readonly ref: string;
    }
  | {
      /** Any of these. */
      readonly either: readonly Shape[];
    };

/** What the generator found out about one public function. */
export interface FunctionFacts {
  /** Whether its inputs are the fields of its one argument, or its arguments in turn. */
  readonly takes: "fields" | "arguments";
  /** Name → shape, in the order of declaration; a name with `?` may be left out. */
  readonly inputs: Readonly<Record<string, Shape>>;
  readonly output: Shape;
}

/** What the generator found out about one room. */
export interface RoomFacts {
  readonly functions: Readonly<Record<string, FunctionFacts>>;
  /** Named shapes, `room.Type`. */
  readonly shapes: Readonly<Record<string, Shape>>;
}

/** What the docstring of one function says. */
export interface FunctionProse {
  readonly purpose: string;
  readonly formula?: string;
  readonly details?: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly returns: string;
  readonly errors: string;
  readonly source?: string;
  readonly example: string;
  readonly since: string;
}

/** What the docstrings of one room say. */
export interface RoomProse {
  readonly functions: Readonly<Record<string, FunctionProse>>;
  /** Named shape → field → its description. */
  readonly shapes: Readonly<Record<string, Readonly<Record<string, string>>>>;
}
