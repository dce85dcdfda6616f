/**
 * Notes: what a person adds to a function for the catalogue, typed against the function. The compiler refuses a note on an input that is not
 * there, a missing one, a range on a name, a unit that is not the tag's, a default that is not one of the names.
 */
import type { UnitTag } from "../quantity/index.ts";

/**
 * What a number without a unit stands for.
 * @since 0.1.0
 */
export type PlainNumber = "ratio" | "count" | "degrees" | "number";

/**
 * Limits of a number in its unit; the function itself refuses what lies outside.
 * @since 0.1.0
 */
export interface Range {
  /** Lowest allowed. */
  readonly min?: number;
  /** Highest allowed. */
  readonly max?: number;
  /** Must be more than this. */
  readonly above?: number;
  /** Must be less than this. */
  readonly below?: number;
}

type Present<T> = Exclude<T, undefined | null>;

/** Tagged: the unit may be repeated for the reader, and must then be right. Untagged: what the number stands for must be said. */
type UnitNote<T> = [T] extends [UnitTag<infer U>]
  ? { readonly unit?: U; readonly is?: never }
  : { readonly is: PlainNumber; readonly unit?: string };

interface Symbolled {
  /** Symbol in the TeX formula. */
  readonly symbol: string;
}

type NumberNote<T> = Range & Symbolled & UnitNote<T> & { readonly default?: number };

interface NameNote<T> {
  readonly default?: T;
  readonly symbol?: never;
}

/** A number, or a name such as "open" in its place. */
type MixedNote<T> = Range & Symbolled & UnitNote<Extract<T, number>> & { readonly default?: T };

interface ListNote<E> {
  /** Fewest items. */
  readonly least?: number;
  /** Most items. */
  readonly most?: number;
  /** Note on the items. */
  readonly each?: Note<E>;
}

interface FieldsNote<T> {
  /** Notes on some of the fields; a public type has its notes in `src/catalogue/shapes`. */
  readonly fields?: FieldNotes<T>;
}

/** Notes on fields: of a union, on the fields of any of its members. */
type FieldNotes<T> = T extends object ? { readonly [K in keyof T]?: Note<T[K]> } : never;

/** The note that a value of type T may carry. */
export type Note<T> = NoteOf<Present<T>>;

type NoteOf<T> = [T] extends [boolean]
  ? { readonly default?: boolean }
  : [T] extends [number]
    ? NumberNote<T>
    : [T] extends [string]
      ? NameNote<T>
      : [T] extends [number | string]
        ? MixedNote<T>
        : [T] extends [readonly (infer E)[]]
          ? ListNote<E>
          : [T] extends [object]
            ? FieldsNote<T>
            : ValueNote;

// biome-ignore lint/suspicious/noExplicitAny: a function of any arguments.
type AnyFunction = (...args: any[]) => unknown;

/** Distributes, so that fields of every member of an intersection or union are known. */
type KeysOf<T> = T extends unknown ? keyof T : never;
type ValueAt<T, K> = T extends unknown ? (K extends keyof T ? T[K] : never) : never;

/** One record argument: its fields. Otherwise the arguments, by whatever names they have: a tuple has no names for the compiler. */
type InputNotes<F extends AnyFunction> =
  Parameters<F> extends [infer Only]
    ? [Present<Only>] extends [number | string | boolean | readonly unknown[]]
      ? { readonly [name: string]: Note<Only> }
      : { readonly [K in KeysOf<Present<Only>>]-?: Note<ValueAt<Present<Only>, K>> }
    : { readonly [name: string]: Note<Parameters<F>[number]> };

/** Symbols of what comes out. */
export type OutputNote<T> = OutputNoteOf<Present<T>>;

type OutputNoteOf<T> = [T] extends [number]
  ? Symbolled & UnitNote<T>
  : [T] extends [string | boolean]
    ? { readonly symbol?: never }
    : [T] extends [number | string]
      ? Symbolled & UnitNote<Extract<T, number>>
      : [T] extends [readonly (infer E)[]]
        ? { readonly each?: OutputNote<E> }
        : { readonly fields?: OutputFields<T> };

type OutputFields<T> = {
  readonly [K in KeysOf<T>]?: OutputNote<ValueAt<T, K>>;
};

/**
 * What kind of calculation it is.
 *
 * - `physics`: a law; `lookup`: a printed table or rule, which comes with its basis; `judgement`: a verdict; `transform`: the same
 *   thing in another form
 * @since 0.1.0
 */
export type EntryKind = "physics" | "lookup" | "judgement" | "transform";

/** A law has a formula, or a method where no single formula says it. */
type Law =
  | { readonly kind: "physics"; readonly tex: string; readonly method?: never }
  | { readonly kind: "physics"; readonly method: string; readonly tex?: never }
  | { readonly kind: "lookup" | "judgement" | "transform"; readonly tex?: string; readonly method?: string };

/** All that is written by hand about one function. The order of the inputs is the order of a cell's arguments. */
export type EntryNote<F extends AnyFunction> = Law & {
  readonly inputs: InputNotes<F>;
  /** Formula in plain text where the docstring has none. */
  readonly text?: string;
  readonly cautions?: readonly string[];
  /** Name in a sheet, where the function's own is taken by another room. */
  readonly sheetName?: string;
} & ([Present<ReturnType<F>>] extends [number | string]
    ? string extends Present<ReturnType<F>>
      ? { readonly output?: OutputNote<ReturnType<F>> }
      : { readonly output: OutputNote<ReturnType<F>> }
    : { readonly output?: OutputNote<ReturnType<F>> });

/** Notes on the functions of a room, by name. */
export type RoomNotes<M> = { readonly [K in keyof M]?: M[K] extends AnyFunction ? EntryNote<M[K]> : never };

/**
 * What a person has added to a value: once its type has been checked, any note.
 * @since 0.1.0
 */
export interface ValueNote extends Range {
  /** TeX symbol of a number. */
  readonly symbol?: string;
  /** Unit of a number without a unit tag. */
  readonly unit?: string;
  /** What a number without a unit stands for. */
  readonly is?: PlainNumber;
  /** What is taken when it is left out. */
  readonly default?: unknown;
  /** Fewest items of a list. */
  readonly least?: number;
  /** Most items of a list. */
  readonly most?: number;
  /** Note on the items of a list. */
  readonly each?: ValueNote;
  /** Notes on the fields of a record. */
  readonly fields?: Readonly<Record<string, ValueNote>>;
}

/** An entry's note once its type has done its work. */
export interface AnyEntryNote {
  readonly kind: EntryKind;
  readonly tex?: string;
  readonly method?: string;
  readonly text?: string;
  readonly inputs: Readonly<Record<string, ValueNote>>;
  readonly output?: ValueNote;
  readonly cautions?: readonly string[];
  readonly sheetName?: string;
}
