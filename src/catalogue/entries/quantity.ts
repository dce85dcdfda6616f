/** Entries of the room `quantity`: units converted, and wire sizes as text. The constructors and readers are one entry, `convertUnits`. */
import { awgArea, awgDiameter, conductorArea, convertUnits } from "../../quantity/index.ts";
import { describeRoom, type Entry } from "../describe.ts";

export const quantityEntries = (): readonly Entry[] =>
  describeRoom(
    "quantity",
    { convertUnits, awgDiameter, awgArea, conductorArea },
    {
      convertUnits: {
        kind: "transform",
        tex: "y = x\\,\\frac{u_\\mathrm{from}}{u_\\mathrm{to}}, \\quad \\frac{\\vartheta}{°\\mathrm{F}} = \\frac{9}{5}\\,\\frac{\\vartheta}{°\\mathrm{C}} + 32",
        inputs: { value: { symbol: "x", is: "number" }, from: {}, to: {} },
        output: { symbol: "y", is: "number" },
      },
      awgDiameter: {
        kind: "transform",
        tex: "d = 0.005\\,\\mathrm{in} \\cdot 92^{(36 - n)/39}",
        inputs: { size: {} },
        output: { symbol: "d" },
      },
      awgArea: {
        kind: "transform",
        tex: "A = \\frac{\\pi}{4} d^2, \\quad d = 0.005\\,\\mathrm{in} \\cdot 92^{(36 - n)/39}",
        text: "A = π/4 × (0.005 in × 92^((36 − n)/39))²",
        inputs: { size: {} },
        output: { symbol: "A" },
      },
      conductorArea: { kind: "transform", inputs: { text: {} }, output: { symbol: "A" } },
    },
  );
