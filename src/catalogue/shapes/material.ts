/** Notes on the named shapes of the room `material`: datasets, which may be the caller's own. */
import type {
  AlloyDataset,
  AlloyResistivity,
  ConductorDataset,
  LinearResistivity,
  MeanExpansion,
} from "../../material/index.ts";
import type { Note, ValueNote } from "../note.ts";

const temperature = { symbol: "\\vartheta" } as const;
const temperatures = { each: temperature } as const;
/** A property as a table against temperature or as one figure. */
const property = (symbol: string) =>
  ({ fields: { value: { symbol }, temperature, temperatures, values: { each: { symbol } } } }) as const;
const density = { fields: { value: { symbol: "\\varrho" } } } as const;
const meltingPoint = { fields: { value: { symbol: "\\vartheta_m" } } } as const;

const alloy: Note<AlloyDataset> = {
  fields: {
    temperatureFactor: { fields: { temperatures, values: { each: { symbol: "C_t", is: "ratio" } } } },
    density,
    specificHeat: property("c"),
    thermalConductivity: property("\\lambda"),
    emissivity: { fields: { value: { symbol: "\\varepsilon", is: "ratio" } } },
    meltingPoint,
    maximumElementTemperature: { fields: { value: { symbol: "\\vartheta_{\\max}" } } },
  },
};
const alloyResistivity: Note<AlloyResistivity> = {
  fields: { value: { symbol: "\\rho_{20}" }, tolerance: { symbol: "\\Delta\\rho" } },
};
const conductor: Note<ConductorDataset> = {
  fields: {
    resistivity: {
      fields: { temperatures: { least: 1, each: temperature }, values: { each: { symbol: "\\rho" } } },
    },
    tolerance: { symbol: "\\delta", is: "ratio" },
    density,
    specificHeat: property("c"),
    thermalConductivity: property("\\lambda"),
    meltingPoint,
  },
};
const line: Note<LinearResistivity> = {
  fields: {
    resistivity: { symbol: "\\rho_0", above: 0 },
    reference: { symbol: "\\vartheta_0" },
    coefficient: { symbol: "\\alpha" },
  },
};
const expansion: Note<MeanExpansion> = {
  fields: {
    value: { symbol: "\\bar\\alpha_l" },
    from: { symbol: "\\vartheta_1" },
    to: { symbol: "\\vartheta_2" },
  },
};

export const MATERIAL_SHAPES: Readonly<Record<string, ValueNote>> = {
  "material.AlloyDataset": alloy as ValueNote,
  "material.AlloyResistivity": alloyResistivity as ValueNote,
  "material.ConductorDataset": conductor as ValueNote,
  "material.LinearResistivity": line as ValueNote,
  "material.MeanExpansion": expansion as ValueNote,
};
