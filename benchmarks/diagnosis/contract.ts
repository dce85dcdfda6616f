/** All that the simulated bench takes from the library's diagnosis: the types of its question and its answer. */
export type {
  DiagnosedFault,
  Diagnosis,
  DiagnosisInput,
  Explanation,
  FaultEstimate,
  FaultPriors,
  FieldMeasurement,
  FieldReading,
  Instrument,
  Instruments,
} from "electroheat/bench";
