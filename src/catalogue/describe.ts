/** Entries: facts from the types, prose from the docstrings and notes by hand, put together by the function's own name. */

import { factsOf } from "./facts.ts";
import type { AnyEntryNote, EntryKind, RoomNotes, ValueNote } from "./note.ts";
import type { FunctionFacts, Shape } from "./shape.ts";

/** One input of an entry. */
export interface Input {
  readonly name: string;
  readonly shape: Shape;
  readonly optional: boolean;
  readonly note: ValueNote;
}

/** One public calculation, ready to be checked and called. */
export interface Entry {
  /** `room.functionName`. */
  readonly id: string;
  readonly room: string;
  readonly name: string;
  readonly kind: EntryKind;
  /** In the order of a cell's arguments. */
  readonly inputs: readonly Input[];
  /** Shapes and notes of the inputs, as of the fields of one record. */
  readonly shapes: Readonly<Record<string, Shape>>;
  readonly notes: Readonly<Record<string, ValueNote>>;
  readonly takes: FunctionFacts["takes"];
  /** Names of the inputs in the order of declaration, which is that of a function's arguments. */
  readonly declared: readonly string[];
  readonly output: Shape;
  readonly note: AnyEntryNote;
  readonly call: (...args: unknown[]) => unknown;
}

function inputsOf(id: string, facts: FunctionFacts, note: AnyEntryNote): readonly Input[] {
  const known = new Map(
    Object.entries(facts.inputs).map(([key, shape]) => {
      const optional = key.endsWith("?");
      return [optional ? key.slice(0, -1) : key, { shape, optional }] as const;
    }),
  );
  const inputs = Object.entries(note.inputs).map(([name, one]): Input => {
    const found = known.get(name);
    // The compiler cannot see the names of arguments; it has checked those of fields already.
    if (found === undefined) throw new Error(`${id} has no input ${name}: ${[...known.keys()].join(", ")}`);
    return { name, shape: found.shape, optional: found.optional, note: one };
  });
  if (inputs.length !== known.size) throw new Error(`${id}: every input needs a note`);
  return inputs;
}

/**
 * Entries of a room from the notes on its functions.
 * @param room - name of the room
 * @param module - its door, for the functions themselves
 * @param notes - notes by function name, typed against the functions
 */
export function describeRoom<M extends object>(
  room: string,
  module: M,
  notes: RoomNotes<M>,
): readonly Entry[] {
  return Object.entries(notes as unknown as Readonly<Record<string, AnyEntryNote>>).map(
    ([name, note]): Entry => {
      const id = `${room}.${name}`;
      const facts = factsOf(room).functions[name];
      if (facts === undefined) throw new Error(`${id} has no facts: run npm run facts`);
      return {
        id,
        room,
        name,
        kind: note.kind,
        inputs: inputsOf(id, facts, note),
        shapes: facts.inputs,
        notes: note.inputs,
        takes: facts.takes,
        declared: Object.keys(facts.inputs).map((key) => key.replace("?", "")),
        output: facts.output,
        note,
        call: (module as Readonly<Record<string, Entry["call"]>>)[name] as Entry["call"],
      };
    },
  );
}
