/** Entries of the room `numeric`: distributions. */
import {
  normalCumulative,
  normalQuantile,
  regularizedIncompleteBeta,
  studentCumulative,
  studentQuantile,
} from "../../numeric/index.ts";
import { describeRoom, type Entry } from "../describe.ts";

const probability = { symbol: "p", is: "ratio", above: 0, below: 1 } as const;
const degreesOfFreedom = { symbol: "\\nu", is: "number", min: 0.1 } as const;
const parameter = (symbol: string) => ({ symbol, is: "number", above: 0, max: 1e7 }) as const;

export const distributionsEntries = (): readonly Entry[] =>
  describeRoom(
    "numeric",
    {
      normalCumulative,
      normalQuantile,
      studentCumulative,
      studentQuantile,
      regularizedIncompleteBeta,
    },
    {
      normalCumulative: {
        kind: "physics",
        tex: "\\Phi(z) = \\tfrac{1}{2} \\operatorname{erfc}\\left(-\\frac{z}{\\sqrt{2}}\\right)",
        inputs: { z: { symbol: "z", is: "number" } },
        output: { symbol: "\\Phi(z)", is: "ratio" },
      },
      normalQuantile: {
        kind: "physics",
        tex: "z = \\Phi^{-1}(p)",
        inputs: { probability },
        output: { symbol: "z", is: "number" },
      },
      studentCumulative: {
        kind: "physics",
        tex: "F(t) = 1 - \\tfrac{1}{2} I_x\\left(\\tfrac{\\nu}{2}, \\tfrac{1}{2}\\right), \\quad x = \\frac{\\nu}{\\nu + t^2}, \\quad t \\ge 0",
        text: "F(t) = 1 − ½·I_x(ν/2, ½), x = ν/(ν + t²), t ≥ 0",
        inputs: { t: { symbol: "t", is: "number" }, degreesOfFreedom },
        output: { symbol: "F(t)", is: "ratio" },
      },
      studentQuantile: {
        kind: "physics",
        tex: "t = F^{-1}(p)",
        text: "t = F⁻¹(p)",
        inputs: { probability, degreesOfFreedom },
        output: { symbol: "t", is: "number" },
      },
      regularizedIncompleteBeta: {
        kind: "physics",
        tex: "I_x(a, b) = \\frac{1}{B(a, b)} \\int_0^x t^{a-1} (1-t)^{b-1}\\,dt",
        inputs: {
          x: { symbol: "x", is: "ratio", min: 0, max: 1 },
          a: parameter("a"),
          b: parameter("b"),
        },
        output: { symbol: "I_x(a, b)", is: "ratio" },
      },
    },
  );
