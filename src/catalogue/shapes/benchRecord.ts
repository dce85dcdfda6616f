/** Notes on the shapes of a bench record. */
import type {
  RecordAmps,
  RecordBank,
  RecordBars,
  RecordFastening,
  RecordFeed,
  RecordInstrument,
  RecordInsulation,
  RecordJoint,
  RecordNameplate,
  RecordOhmmeter,
  RecordOhms,
  RecordProcess,
  RecordReadings,
  RecordSupply,
  RecordWiring,
} from "../../bench/index.ts";
import type { Note, ValueNote } from "../note.ts";

/** A quantity of a record: text as read, or a number in this unit. */
const quoted = (symbol: string, unit: string) => ({ symbol, is: "number", unit, above: 0 }) as const;
const quotedOrZero = (symbol: string, unit: string) => ({ symbol, is: "number", unit, min: 0 }) as const;
const count = (symbol: string) => ({ symbol, is: "count", min: 1, max: 10_000, default: 1 }) as const;
const temperature = (symbol: string) =>
  ({ symbol, is: "number", unit: "°C", min: -273.15, max: 3000 }) as const;
const ofReading = { symbol: "p", is: "ratio", min: 0, max: 0.5 } as const;

const nameplate: Note<RecordNameplate> = {
  fields: { power: quoted("P", "W"), voltage: quoted("V", "V") },
};
const bank: Note<RecordBank> = {
  fields: { elementsInParallel: count("p"), elementsInSeries: count("s"), power: quoted("P", "W") },
};
const wiring: Note<RecordWiring> = {
  fields: { banks: { most: 1000 }, joints: { most: 1000 }, neutral: { default: "floating" } },
};
const supply: Note<RecordSupply> = {
  fields: {
    v12: quotedOrZero("V_{12}", "V"),
    v23: quotedOrZero("V_{23}", "V"),
    v31: quotedOrZero("V_{31}", "V"),
  },
};
const instrument: Note<RecordInstrument> = {
  fields: {
    ofReading,
    digits: { symbol: "n", is: "number", min: 0, max: 1000 },
    resolution: { symbol: "d", is: "number", above: 0 },
  },
};
const ohmmeter: Note<RecordOhmmeter> = {
  fields: {
    ofReading,
    digits: { symbol: "n", is: "number", min: 0, max: 1000 },
    resolution: quoted("d", "Ω"),
    leads: { fields: { shorted: quotedOrZero("R_0", "Ω") } },
  },
};
const readings: Note<RecordReadings> = {
  fields: {
    ohms: { most: 10_000 },
    currents: { most: 10_000 },
    insulation: { most: 10_000 },
    joints: { most: 10_000 },
  },
};
const ohms: Note<RecordOhms> = { fields: { reads: quotedOrZero("y", "Ω") } };
const amps: Note<RecordAmps> = { fields: { reads: quotedOrZero("I", "A") } };
const insulation: Note<RecordInsulation> = {
  fields: { reads: quotedOrZero("R_i", "Ω"), testVoltage: quoted("U_t", "V") },
};
const joint: Note<RecordJoint> = {
  fields: {
    drop: quotedOrZero("U", "V"),
    current: quoted("I", "A"),
    rise: quotedOrZero("\\Delta\\vartheta", "K"),
    loadRatio: { symbol: "q", is: "ratio", above: 0, max: 1.5, default: 1 },
  },
};
const fastening: Note<RecordFastening> = {
  fields: {
    count: count("n"),
    condition: { default: "dry steel" },
    makerTorque: quoted("T_m", "N·m"),
    applied: quoted("T", "N·m"),
  },
};
const bars: Note<RecordBars> = {
  fields: {
    count: count("n"),
    studs: { symbol: "m", is: "count", min: 2, max: 10_000 },
    pitch: quoted("a", "m"),
    overhang: quoted("e", "m"),
    width: quoted("b", "m"),
    thickness: quoted("t", "m"),
    hole: quoted("d", "m"),
    kerf: { ...quotedOrZero("k", "m"), default: 0.003 },
  },
};
const feed: Note<RecordFeed> = {
  fields: {
    equipment: { default: "process heating" },
    material: { default: "copper" },
    terminals: temperature("\\vartheta_t"),
    conductorsPerLine: { symbol: "p", is: "count", min: 1, max: 100 },
    grouped: { symbol: "n", is: "count", min: 1, max: 10_000 },
    device: quoted("I_n", "A"),
  },
};
const heated: Note<RecordProcess> = {
  fields: {
    target: temperature("\\vartheta_\\mathrm{set}"),
    lossConductance: quoted("G", "W/K"),
    heatCapacity: quoted("C", "J/K"),
    shift: quoted("t", "s"),
    shifts: count("n"),
    tariff: { symbol: "k", is: "number", unit: "per kWh", min: 0 },
  },
};

export const RECORD_SHAPES: Readonly<Record<string, ValueNote>> = {
  "bench.RecordNameplate": nameplate as ValueNote,
  "bench.RecordBank": bank as ValueNote,
  "bench.RecordWiring": wiring as ValueNote,
  "bench.RecordSupply": supply as ValueNote,
  "bench.RecordInstrument": instrument as ValueNote,
  "bench.RecordOhmmeter": ohmmeter as ValueNote,
  "bench.RecordReadings": readings as ValueNote,
  "bench.RecordOhms": ohms as ValueNote,
  "bench.RecordAmps": amps as ValueNote,
  "bench.RecordInsulation": insulation as ValueNote,
  "bench.RecordJoint": joint as ValueNote,
  "bench.RecordFastening": fastening as ValueNote,
  "bench.RecordBars": bars as ValueNote,
  "bench.RecordFeed": feed as ValueNote,
  "bench.RecordProcess": heated as ValueNote,
};
