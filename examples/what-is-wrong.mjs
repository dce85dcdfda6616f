// Three as-found sheets of invented modules, from easy to ambiguous: what is wrong, how sure are we, what to measure next.
//   node examples/what-is-wrong.mjs     (after npm run build)
import { diagnose, diagnosisText, nextMeasurements } from "electroheat/bench";
import { amperes, isElectroheatError, ohms, volts } from "electroheat/quantity";

const ohmmeter = { ofReading: 0.005, digits: 3, resolution: 0.01 };
const clamp = { ofReading: 0.02, digits: 5, resolution: 0.1 };
const voltmeter = { ofReading: 0.005, digits: 2, resolution: 0.1 };

/**
 * Ohms, dead.
 * @param {string} from
 * @param {string} to
 * @param {number | "open"} reads
 * @param {string[]} [only]
 */
const pair = (from, to, reads, only) => ({
  kind: /** @type {const} */ ("resistance"),
  from,
  to,
  reads: reads === "open" ? reads : ohms(reads),
  ...(only === undefined ? {} : { only }),
});

/**
 * Amperes of a line.
 * @param {string} at
 * @param {number} reads
 */
const amps = (at, reads) => ({ kind: /** @type {const} */ ("current"), at, reads: amperes(reads) });

/**
 * Volts between lines.
 * @param {string} from
 * @param {string} to
 * @param {number} reads
 */
const between = (from, to, reads) => ({
  kind: /** @type {const} */ ("voltage"),
  from,
  to,
  reads: volts(reads),
});

/** @typedef {{ title: string, asked: import("electroheat/bench").DiagnosisInput }} Sheet */

/**
 * Easy: a grain dryer's two separate stars; the links were lifted and every branch read against its own star point.
 * @type {Sheet}
 */
const grainDryer = {
  title: "Grain dryer, 72 kW at 480 V, two separate stars, links lifted",
  asked: {
    module: {
      banks: [
        { id: "A", connection: "star", elementResistance: ohms(6.12) },
        { id: "B", connection: "star", elementResistance: ohms(6.12) },
      ],
      starPoints: "separate",
    },
    instruments: { ohmmeter: { ...ohmmeter, leads: { shorted: ohms(0.17) } } },
    readings: [
      pair("L1", "S-A", 6.38, ["A"]),
      pair("L2", "S-A", 6.41, ["A"]),
      pair("L3", "S-A", 6.35, ["A"]),
      pair("L1", "S-B", 6.44, ["B"]),
      pair("L2", "S-B", "open", ["B"]),
      pair("L3", "S-B", 6.39, ["B"]),
    ],
  },
};

/**
 * Middling: a paint oven's delta with three elements side by side; only the lines could be read, dead and live.
 * @type {Sheet}
 */
const paintOven = {
  title: "Paint oven, 90 kW at 400 V, delta of three elements a side, read at the lines",
  asked: {
    module: {
      banks: [{ id: "A", connection: "delta", elementResistance: ohms(15.4), elementsInParallel: 3 }],
    },
    instruments: { ohmmeter: { ...ohmmeter, leads: "unknown" }, clamp, voltmeter },
    supply: { lineVoltage: volts(400) },
    readings: [
      pair("L1", "L2", 4.72),
      pair("L2", "L3", 4.08),
      pair("L3", "L1", 4.07),
      between("L1", "L2", 399.1),
      between("L2", "L3", 398.4),
      between("L3", "L1", 399.6),
      amps("L1", 108.6),
      amps("L2", 109.3),
      amps("L3", 128.4),
    ],
  },
};

/**
 * Ambiguous: a shrink tunnel's star, clamped once on a running line: no current in L1. A fuse, the element or a lug?
 * @type {Sheet}
 */
const shrinkTunnel = {
  title: "Shrink tunnel, 30 kW at 480 V, one star, clamped while running",
  asked: {
    module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.38) }] },
    instruments: { clamp },
    supply: { lineVoltage: volts(480) },
    readings: [amps("L1", 0), amps("L2", 31), amps("L3", 31.4)],
  },
};

export const sheets = [grainDryer, paintOven, shrinkTunnel];

/**
 * A sheet's diagnosis as text.
 * @param {Sheet} sheet
 */
export function report({ title, asked }) {
  const diagnosis = diagnose(asked);
  const text = diagnosisText({ asked, diagnosis, next: nextMeasurements(asked) });
  return `${title}\n${"=".repeat([...title].length)}\n${text}`;
}

try {
  console.log(sheets.map(report).join("\n\n\n"));
} catch (error) {
  if (!isElectroheatError(error)) throw error;
  console.error(`A sheet cannot be diagnosed:\n${error.message}`);
  process.exitCode = 1;
}
