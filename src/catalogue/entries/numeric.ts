/** Entries of the room `numeric`: the calculations, not the solvers that take functions. */
import {
  angleDegrees,
  chiSquareSurvival,
  complementaryErrorFunction,
  complexDifference,
  complexProduct,
  complexQuotient,
  complexScaled,
  complexSum,
  leastSquares,
  modulus,
  phasor,
} from "../../numeric/index.ts";
import { describeRoom, type Entry } from "../describe.ts";

/** A part of a complex number. */
const part = { symbol: "z", is: "number" } as const;
const complex = { fields: { re: part, im: part } } as const;

export const numericEntries = (): readonly Entry[] =>
  describeRoom(
    "numeric",
    {
      complementaryErrorFunction,
      chiSquareSurvival,
      phasor,
      modulus,
      angleDegrees,
      complexSum,
      complexDifference,
      complexProduct,
      complexScaled,
      complexQuotient,
      leastSquares,
    },
    {
      complementaryErrorFunction: {
        kind: "physics",
        tex: "\\operatorname{erfc}(x) = 1 - \\frac{2}{\\sqrt{\\pi}} \\int_0^x e^{-t^2}\\,dt",
        inputs: { x: { symbol: "x", is: "number", min: 0 } },
        output: { symbol: "\\operatorname{erfc}(x)", is: "ratio" },
      },
      chiSquareSurvival: {
        kind: "physics",
        tex: "Q(\\chi^2|\\nu) = Q(\\chi^2|\\nu-2) + \\frac{(\\chi^2/2)^{\\nu/2-1} e^{-\\chi^2/2}}{\\Gamma(\\nu/2)}",
        inputs: {
          chiSquare: { symbol: "\\chi^2", is: "number", min: 0 },
          degreesOfFreedom: { symbol: "\\nu", is: "count", min: 1, max: 10_000 },
        },
        output: { symbol: "Q", is: "ratio" },
      },
      phasor: {
        kind: "transform",
        tex: "z = |z| (\\cos\\varphi + j \\sin\\varphi)",
        text: "z = magnitude·(cos φ + j sin φ)",
        inputs: {
          magnitude: { symbol: "|z|", is: "number" },
          degrees: { symbol: "\\varphi", is: "degrees" },
        },
        output: complex,
      },
      modulus: {
        kind: "transform",
        tex: "|z| = \\sqrt{a^2 + b^2}",
        inputs: { re: { symbol: "a", is: "number" }, im: { symbol: "b", is: "number" } },
        output: { symbol: "|z|", is: "number" },
      },
      angleDegrees: {
        kind: "transform",
        tex: "\\varphi = \\operatorname{atan2}(b, a)",
        text: "φ = atan2(im, re)",
        inputs: { re: { symbol: "a", is: "number" }, im: { symbol: "b", is: "number" } },
        output: { symbol: "\\varphi", is: "degrees" },
      },
      complexSum: {
        kind: "transform",
        tex: "z = a + b",
        text: "z = a + b",
        inputs: { a: complex, b: complex },
        output: complex,
      },
      complexDifference: {
        kind: "transform",
        tex: "z = a - b",
        text: "z = a − b",
        inputs: { a: complex, b: complex },
        output: complex,
      },
      complexProduct: {
        kind: "transform",
        tex: "z = a \\cdot b",
        text: "z = a·b",
        inputs: { a: complex, b: complex },
        output: complex,
      },
      complexScaled: {
        kind: "transform",
        tex: "k \\cdot z",
        text: "factor·z",
        inputs: { z: complex, factor: { symbol: "k", is: "number" } },
        output: complex,
      },
      complexQuotient: {
        kind: "transform",
        tex: "z = a / b",
        text: "z = a/b",
        inputs: { a: complex, b: complex },
        output: complex,
      },
      leastSquares: {
        kind: "physics",
        tex: "\\hat b = \\operatorname{arg\\,min}_b \\sum_i \\left(\\frac{y_i - (X b)_i}{u_i}\\right)^2",
        inputs: {
          design: { least: 1, each: { least: 1, each: { symbol: "X", is: "number" } } },
          observed: { least: 1, each: { symbol: "y", is: "number" } },
          uncertainty: { least: 1, each: { symbol: "u", is: "number", above: 0 } },
        },
      },
    },
  );
