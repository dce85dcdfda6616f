/** Entries of the room `bench`: which fault explains the readings, what to measure next, and both as text. */
import { diagnose, diagnosisText, nextMeasurements } from "../../../bench/index.ts";
import { DEAD_WORK, LIVE_WORK } from "../../cautions.ts";
import { describeRoom, type Entry } from "../../describe.ts";

const question = {
  module: {},
  readings: { most: 10_000 },
  instruments: {},
  supply: { fields: { lineVoltage: { symbol: "V", min: 1e-3, max: 1e6 } } },
  spread: {},
  priors: {},
  depth: { default: "single" },
  alternatives: { most: 100 },
} as const;

const NOT_A_PROOF =
  "A ranking of what explains the readings, not a proof: a fault that is not on the list cannot come out of it. The maker, the local code and a licensed electrician decide what is done.";

export const diagnosesEntries = (): readonly Entry[] =>
  describeRoom(
    "bench",
    { diagnose, nextMeasurements, diagnosisText },
    {
      diagnose: {
        kind: "physics",
        tex: "p(h \\mid y) = \\frac{p(h)\\,p(y \\mid h)}{\\sum_k p(k)\\,p(y \\mid k)}, \\quad p(y \\mid h) = \\int p(\\theta \\mid h)\\; \\mathcal{N}\\!\\left(y;\\, f_h(\\theta),\\, D + N N^{\\mathsf T}\\right) \\mathrm{d}\\theta",
        text: "p(h|y) = p(h)·p(y|h) / Σ p(k)·p(y|k); p(y|h) = ∫ p(θ|h)·N(y; f_h(θ), D + N·Nᵀ) dθ",
        inputs: question,
        cautions: [NOT_A_PROOF, DEAD_WORK, LIVE_WORK],
      },
      nextMeasurements: {
        kind: "physics",
        tex: "I = \\sum_g p_g \\int p(y \\mid g)\\, \\log_2 \\frac{p(y \\mid g)}{p(y)}\\, \\mathrm{d}y",
        text: "I = Σ p_g·∫ p(y|g)·log2(p(y|g)/p(y)) dy",
        inputs: { ...question, candidates: { most: 10_000 } },
        output: {
          each: { fields: { expectedInformation: { symbol: "I", is: "number", unit: "bit" } } },
        },
        cautions: [NOT_A_PROOF, DEAD_WORK, LIVE_WORK],
      },
      diagnosisText: {
        kind: "transform",
        inputs: { asked: {}, diagnosis: {}, next: { most: 10_000 } },
        cautions: [NOT_A_PROOF, DEAD_WORK, LIVE_WORK],
      },
    },
  );
