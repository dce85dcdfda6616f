/** Notes on the named shapes of the room `numeric`. The unit of a complex number is that of the field it stands in. */
import type { Complex } from "../../numeric/index.ts";
import type { Note, ValueNote } from "../note.ts";

const complex: Note<Complex> = {
  fields: {
    re: { symbol: "\\operatorname{Re} z", is: "number" },
    im: { symbol: "\\operatorname{Im} z", is: "number" },
  },
};

export const NUMERIC_SHAPES: Readonly<Record<string, ValueNote>> = {
  "numeric.Complex": complex as ValueNote,
};
