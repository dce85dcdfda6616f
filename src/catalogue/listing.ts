/** The catalogue as data: every entry with its inputs, result, formula and cautions. */
import type { Entry, Input } from "./describe.ts";
import { allEntries } from "./entries/index.ts";
import { fieldUnits, outputUnit } from "./evaluate.ts";
import { numberIn, resolved, shapeNames } from "./facts.ts";
import type { EntryKind, ValueNote } from "./note.ts";
import { noteOn, unitOf } from "./read.ts";
import type { Shape } from "./shape.ts";

/**
 * One input of a calculation: its shape, and what is noted of it.
 * @since 0.1.0
 */
export interface CatalogueInput extends ValueNote {
  /** Name in the argument object. */
  readonly name: string;
  /** Shape of what it takes. */
  readonly shape: Shape;
  /** Unit of a number; empty where there is none. */
  readonly unit: string;
  /** Whether it may be left out. */
  readonly optional: boolean;
  /** Whether text with a unit is read: "36 kW" for W, "2/0 AWG" for m². */
  readonly text: boolean;
}

/**
 * A named shape, with what is noted of it.
 * @since 0.1.0
 */
export interface NamedShape {
  /** `room.Type`. */
  readonly name: string;
  /** What it stands for. */
  readonly shape: Shape;
  /** Limits and symbols of what is inside. */
  readonly note: ValueNote;
}

/**
 * One calculation of the catalogue.
 * @since 0.1.0
 */
export interface CatalogueEntry {
  /** `room.functionName`. */
  readonly id: string;
  /** Room, which is also the package entry that exports it. */
  readonly room: string;
  /** Name of the function. */
  readonly name: string;
  /** Name in a sheet, without the prefix that the sheet may put before it. */
  readonly sheetName: string;
  /** Law, lookup, judgement or another form of the same thing. */
  readonly kind: EntryKind;
  /** Whether the function takes the inputs as fields of one record, or as arguments in the order of `declared`. */
  readonly takes: "fields" | "arguments";
  /** Names of the inputs in the order of declaration. */
  readonly declared: readonly string[];
  /** Inputs in the order of a cell's arguments. */
  readonly inputs: readonly CatalogueInput[];
  /** Shape, unit and symbol of the result; units and symbols of its numbers where it is a record. */
  readonly output: {
    /** Shape. */
    readonly shape: Shape;
    /** Unit; empty where there is none. */
    readonly unit: string;
    /** Symbol in the formula. */
    readonly symbol?: string;
    /** The numbers of a record by their path; `null` for any other result. */
    readonly fields: Readonly<
      Record<
        string,
        {
          /** Unit. */
          readonly unit: string;
          /** Symbol in the formula. */
          readonly symbol?: string;
        }
      >
    > | null;
  };
  /** Formula in TeX. */
  readonly tex?: string;
  /** Method, where no single formula says it. */
  readonly method?: string;
  /** Formula in plain text, where the docstring has none. */
  readonly text?: string;
  /** What the reader must know before acting on a result. */
  readonly cautions: readonly string[];
}

function inputOf({ name, shape, optional, note: given }: Input): CatalogueInput {
  const note = noteOn(shape, given);
  const number = numberIn(shape);
  return {
    ...note,
    name,
    shape,
    unit: number === undefined ? "" : unitOf(number, note),
    optional,
    text: number !== undefined && number.number !== "",
  };
}

function outputOf({ output: shape, note: { output: given } }: Entry): CatalogueEntry["output"] {
  const note: ValueNote = noteOn(shape, given);
  const units = fieldUnits(shape, given);
  const symbolled = (symbol: string | undefined) => (symbol === undefined ? {} : { symbol });
  const fields =
    units &&
    Object.fromEntries(
      Object.entries(units).map(([name, unit]) => [
        name,
        { unit, ...symbolled(note.fields?.[name]?.symbol) },
      ]),
    );
  return { shape, unit: outputUnit(shape, note), ...symbolled(note.symbol), fields };
}

/**
 * Every public calculation as data. The file `catalogue.json` in the package holds the same with the words of the docstrings and a JSON
 * Schema of the inputs.
 * @returns the entries, room by room
 * @example
 * ```ts
 * catalogueEntries().find((entry) => entry.name === "lineCurrent")?.inputs.map((input) => [input.name, input.unit])
 * // => [["power", "W"], ["lineVoltage", "V"]]
 * ```
 * @since 0.1.0
 */
export function catalogueEntries(): readonly CatalogueEntry[] {
  return allEntries().map((entry) => {
    const { id, room, name, kind, takes, declared, note } = entry;
    const { tex, method, text, cautions = [], sheetName = name } = note;
    return {
      id,
      room,
      name,
      sheetName,
      kind,
      takes,
      declared,
      inputs: entry.inputs.map(inputOf),
      output: outputOf(entry),
      ...(tex === undefined ? {} : { tex }),
      ...(method === undefined ? {} : { method }),
      ...(text === undefined ? {} : { text }),
      cautions,
    };
  });
}

/**
 * The named shapes that inputs and results refer to, such as `circuit.Network`.
 * @returns the shapes, room by room
 * @example
 * ```ts
 * catalogueShapes().find((one) => one.name === "circuit.Network")?.shape
 * // => { record: { branches: { list: { ref: "circuit.Branch" } } } }
 * ```
 * @since 0.1.0
 */
export function catalogueShapes(): readonly NamedShape[] {
  return shapeNames().map((name) => ({
    name,
    shape: resolved({ ref: name }),
    note: noteOn({ ref: name }, undefined),
  }));
}
