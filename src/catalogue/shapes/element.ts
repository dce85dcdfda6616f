/** Notes on the named shapes of the room `element`, shared by every entry that takes one. */
import type { WhatIf } from "../../element/index.ts";
import type { Note, ValueNote } from "../note.ts";

const change: Note<WhatIf> = {
  fields: {
    powerRatio: { symbol: "k_P", is: "ratio", min: 0 },
    airSpeedRatio: { symbol: "k_v", is: "ratio", min: 0 },
  },
};

export const ELEMENT_SHAPES: Readonly<Record<string, ValueNote>> = {
  "element.WhatIf": change as ValueNote,
};
