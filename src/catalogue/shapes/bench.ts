/** Notes on the named shapes of the room `bench`, shared by every entry that takes one. */
import type {
  MeterAccuracy,
  RecordBank,
  RecordJoint,
  RecordMeter,
  RecordNameplate,
  RecordReading,
  RecordSupply,
  RecordWiring,
  TerminalOhms,
} from "../../bench/index.ts";
import type { Note, ValueNote } from "../note.ts";

/** A quantity of a record: text as read, or a number in this unit. */
const quoted = (symbol: string, unit: string) => ({ symbol, is: "number", unit, above: 0 }) as const;
const quotedOrZero = (symbol: string, unit: string) => ({ symbol, is: "number", unit, min: 0 }) as const;
const count = (symbol: string) => ({ symbol, is: "count", min: 1, max: 10_000, default: 1 }) as const;
const ofReading = { symbol: "p", is: "ratio", min: 0, max: 0.5 } as const;

const accuracy: Note<MeterAccuracy> = {
  fields: { ofReading, digits: { symbol: "n", is: "number", min: 0 } },
};
const terminalOhms: Note<TerminalOhms> = {
  fields: { reads: { symbol: "y", min: 0 }, standardUncertainty: { symbol: "u", above: 0 } },
};
const nameplate: Note<RecordNameplate> = {
  fields: { power: quoted("P", "W"), voltage: quoted("V", "V") },
};
const bank: Note<RecordBank> = {
  fields: { elementsInParallel: count("p"), elementsInSeries: count("s") },
};
const wiring: Note<RecordWiring> = {
  fields: { banks: { most: 1000 }, neutral: { default: "floating" } },
};
const supply: Note<RecordSupply> = {
  fields: { v12: quoted("V_{12}", "V"), v23: quoted("V_{23}", "V"), v31: quoted("V_{31}", "V") },
};
const meter: Note<RecordMeter> = {
  fields: {
    ofReading,
    digits: { symbol: "n", is: "number", min: 0, max: 1000 },
    resolution: quoted("d", "Ω"),
    leads: { fields: { shorted: quotedOrZero("R_0", "Ω") } },
  },
};
const reading: Note<RecordReading> = { fields: { reads: quotedOrZero("y", "Ω") } };
const joint: Note<RecordJoint> = {
  fields: { drop: quotedOrZero("U", "V"), current: quoted("I", "A") },
};

export const BENCH_SHAPES: Readonly<Record<string, ValueNote>> = {
  "bench.MeterAccuracy": accuracy as ValueNote,
  "bench.TerminalOhms": terminalOhms as ValueNote,
  "bench.RecordNameplate": nameplate as ValueNote,
  "bench.RecordBank": bank as ValueNote,
  "bench.RecordWiring": wiring as ValueNote,
  "bench.RecordSupply": supply as ValueNote,
  "bench.RecordMeter": meter as ValueNote,
  "bench.RecordReading": reading as ValueNote,
  "bench.RecordJoint": joint as ValueNote,
};
