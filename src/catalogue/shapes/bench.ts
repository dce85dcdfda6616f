/** Notes on the named shapes of the room `bench`, shared by every entry that takes one. */
import type {
  DiagnosedFault,
  Diagnosis,
  DiagnosisInput,
  Explanation,
  ExplanationGroup,
  FaultEstimate,
  FaultPriors,
  FieldReading,
  Instrument,
  LeadedOhmmeter,
  MeasurementProposal,
  MeterAccuracy,
  PredictedReading,
  Spread,
  TerminalOhms,
} from "../../bench/index.ts";
import type { Note, ValueNote } from "../note.ts";
import { RECORD_SHAPES } from "./benchRecord.ts";

const ofReading = { symbol: "p", is: "ratio", min: 0, max: 0.5 } as const;

const accuracy: Note<MeterAccuracy> = {
  fields: { ofReading, digits: { symbol: "n", is: "number", min: 0 } },
};
const terminalOhms: Note<TerminalOhms> = {
  fields: { reads: { symbol: "y", min: 0 }, standardUncertainty: { symbol: "u", above: 0 } },
};
const accurate = {
  ofReading: { symbol: "p", is: "ratio", min: 0 },
  digits: { symbol: "n", is: "number", min: 0 },
  resolution: { symbol: "d", is: "number", above: 0 },
} as const;
const instrument: Note<Instrument> = { fields: accurate };
const ohmmeter: Note<LeadedOhmmeter> = {
  fields: { ...accurate, leads: { fields: { shorted: { symbol: "R_0", min: 0, max: 1e6 } } } },
};
const diagnosedFault: Note<DiagnosedFault> = { fields: { reading: { symbol: "r", is: "number", min: 0 } } };
const fieldReading: Note<FieldReading> = { fields: { reads: { symbol: "y", min: 0, max: 1e15 } } };
const question: Note<DiagnosisInput> = {
  fields: {
    supply: { fields: { lineVoltage: { symbol: "V", min: 1e-3, max: 1e6 } } },
    depth: { default: "single" },
  },
};
const ratio = (symbol: string, max: number, usual: number) =>
  ({ symbol, is: "ratio", min: 0, max, default: usual }) as const;
const spread: Note<Spread> = {
  fields: {
    common: {
      fields: {
        low: { symbol: "\\delta_{\\min}", is: "ratio", min: -0.9, max: 10 },
        high: { symbol: "\\delta_{\\max}", is: "ratio", min: -0.9, max: 10 },
      },
    },
    individual: ratio("s_e", 1, 0.02),
    temperatureFactor: {
      fields: {
        value: { symbol: "C_t", is: "ratio", min: 0.1, max: 10 },
        standardUncertainty: { symbol: "u(C_t)", is: "ratio", min: 0, max: 1 },
      },
    },
    leadsUpTo: { symbol: "R_{0,\\max}", min: 0, max: 1000, default: 0.5 },
    lineVoltage: ratio("s_V", 0.5, 0.03),
    unbalance: ratio("s_u", 0.2, 0.005),
    joint: ratio("s_j", 10, 0.3),
  },
};
const prior = (usual: number) => ({ symbol: "p", is: "ratio", min: 0, below: 1, default: usual }) as const;
const priors: Note<FaultPriors> = {
  fields: {
    elementOpen: prior(0.02),
    shortedTurns: prior(0.005),
    offValue: prior(0.01),
    joint: prior(0.01),
    openJoint: prior(0.003),
    misLinked: prior(0.005),
    lostLine: prior(0.01),
    earthFault: prior(0.003),
    earthedTerminal: prior(0.002),
    unfedBank: prior(0.01),
    unfedBankLine: prior(0.003),
    otherRating: prior(0.005),
    feedConnected: prior(0.005),
    supplyUnbalance: prior(0.01),
    misread: prior(0.001),
  },
};
const probability = { symbol: "p", is: "ratio", min: 0, max: 1 } as const;
const diagnosis: Note<Diagnosis> = { fields: { groups: { least: 1 } } };
const group: Note<ExplanationGroup> = { fields: { probability, explanations: { least: 1 } } };
const explanation: Note<Explanation> = {
  fields: {
    wiring: { symbol: "w", is: "count", min: 0 },
    probability,
    prior: { symbol: "p_0", is: "ratio", min: 0, max: 1 },
    logLikelihood: { symbol: "\\ln L", is: "number" },
    chiSquare: { symbol: "\\chi^2", is: "number" },
    degreesOfFreedom: { symbol: "\\nu", is: "number" },
    pValue: { symbol: "p", is: "ratio", min: 0, max: 1 },
  },
};
const estimate: Note<FaultEstimate> = {
  fields: {
    fault: { symbol: "k", is: "count", min: 0 },
    value: { symbol: "\\theta", is: "number" },
    low: { symbol: "\\theta_{\\min}", is: "number" },
    high: { symbol: "\\theta_{\\max}", is: "number" },
  },
};
const predicted: Note<PredictedReading> = {
  fields: {
    reads: { symbol: "y", is: "number" },
    predicted: { symbol: "f", is: "number" },
    deviation: { symbol: "z", is: "number" },
  },
};
const proposal: Note<MeasurementProposal> = {
  fields: {
    expectedInformation: { symbol: "I", is: "number", unit: "bit" },
    predictions: {
      each: {
        fields: {
          low: { symbol: "y_{\\min}", is: "number" },
          high: { symbol: "y_{\\max}", is: "number" },
        },
      },
    },
  },
};

export const BENCH_SHAPES: Readonly<Record<string, ValueNote>> = {
  ...RECORD_SHAPES,
  "bench.MeterAccuracy": accuracy as ValueNote,
  "bench.TerminalOhms": terminalOhms as ValueNote,
  "bench.Instrument": instrument as ValueNote,
  "bench.LeadedOhmmeter": ohmmeter as ValueNote,
  "bench.DiagnosedFault": diagnosedFault as ValueNote,
  "bench.FieldReading": fieldReading as ValueNote,
  "bench.DiagnosisInput": question as ValueNote,
  "bench.Spread": spread as ValueNote,
  "bench.FaultPriors": priors as ValueNote,
  "bench.Diagnosis": diagnosis as ValueNote,
  "bench.ExplanationGroup": group as ValueNote,
  "bench.Explanation": explanation as ValueNote,
  "bench.FaultEstimate": estimate as ValueNote,
  "bench.PredictedReading": predicted as ValueNote,
  "bench.MeasurementProposal": proposal as ValueNote,
};
