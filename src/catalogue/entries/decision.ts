/** Entries of the room `decision`. */
import { compareQuoted, decimalProduct, judge, roundDecimal } from "../../decision/index.ts";
import { describeRoom, type Entry } from "../describe.ts";

export const decisionEntries = (): readonly Entry[] =>
  describeRoom(
    "decision",
    { compareQuoted, decimalProduct, roundDecimal, judge },
    {
      compareQuoted: {
        kind: "judgement",
        inputs: { left: { symbol: "a", is: "number" }, right: { symbol: "b", is: "number" } },
        output: { symbol: "c", is: "number" },
      },
      decimalProduct: {
        kind: "transform",
        tex: "p = x \\cdot k",
        text: "value × factor",
        inputs: { value: { symbol: "x", is: "number" }, factor: { symbol: "k", is: "number" } },
        output: { symbol: "p", is: "number" },
      },
      roundDecimal: {
        kind: "transform",
        inputs: {
          value: { symbol: "x", is: "number" },
          places: { symbol: "n", is: "count", min: 0, max: 12 },
        },
        output: { symbol: "x_n", is: "number" },
      },
      judge: {
        kind: "judgement",
        inputs: {
          value: { symbol: "x", is: "number" },
          halfWidth: { symbol: "U", is: "number", min: 0 },
          rule: {},
          low: { symbol: "x_{\\min}", is: "number" },
          high: { symbol: "x_{\\max}", is: "number" },
        },
        output: {
          fields: {
            value: { symbol: "x", is: "number" },
            halfWidth: { symbol: "U", is: "number" },
            low: { symbol: "x_{\\min}", is: "number" },
            high: { symbol: "x_{\\max}", is: "number" },
            margin: { symbol: "m", is: "number" },
          },
        },
      },
    },
  );
