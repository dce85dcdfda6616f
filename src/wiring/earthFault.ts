/** The loop that a fault to earth closes, the current it draws, and whether the device opens at it in time. */
import others from "../../shared/tables/iec-disconnection-other.json" with { type: "json" };
import times from "../../shared/tables/iec-disconnection-times.json" with { type: "json" };
import { judge, type Verdict } from "../decision/index.ts";
import {
  type Amperes,
  checkBetween,
  checkOneOf,
  fail,
  given,
  type Meters,
  type Ohms,
  type OhmsPerMeter,
  type Seconds,
  type Volts,
} from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { atMost, checkMeasured, checkMeasuredOrZero, parallelCount } from "./limit.ts";
import { type CodeResult, codeResult, DEFERRAL } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";

/**
 * An earth-fault loop.
 * @since 0.1.0
 */
export interface EarthFaultLoop {
  /** Impedance Zs of the loop (Ω). */
  readonly impedance: Ohms;
  /** Current of a bolted fault to the frame at its end (A). */
  readonly current: Amperes;
  /** Resistive part of the loop (Ω). */
  readonly resistance: Ohms;
  /** Reactive part of the loop (Ω). */
  readonly reactance: Ohms;
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
}

const LOOP_CAUTIONS: readonly string[] = [
  "A computed loop knows no loose joint and no paint under a bond: before the module is used again the loop is measured, or its continuity, by a qualified person.",
  "A fault inside an element, part of the way along its coil, draws less, down to nothing at a star point: not every earth fault opens the device.",
];

/**
 * Impedance of the loop of line, frame, protective conductor and source, and the current that a bolted fault draws:
 * impedance = √(R² + X²), current = voltageFactor·voltageToEarth/impedance, R and X those of source, line and protective conductor added up.
 *
 * Take conductors as hot as the fault finds and leaves them: the least current is what the device must clear. For lines in a steel raceway the
 * return is more reactive than the wire alone.
 * @param input.voltageToEarth - nominal voltage of a line to earth U0 (V), more than 0
 * @param input.sourceResistance - of the loop before the circuit, measured or from the operator (Ω), 0 or more
 * @param input.sourceReactance - the same, reactive (Ω), 0 or more; 0 if left out
 * @param input.length - of the circuit, one way (m), 0 or more
 * @param input.lineResistancePerLength - of one line conductor (Ω/m), 0 or more
 * @param input.protectiveResistancePerLength - of the protective conductor (Ω/m), 0 or more
 * @param input.lineReactancePerLength - of one line conductor (Ω/m), 0 or more; 0 if left out
 * @param input.protectiveReactancePerLength - of the protective conductor (Ω/m), 0 or more; 0 if left out
 * @param input.conductorsPerLine - line conductors in parallel; 1 if left out
 * @param input.protectiveConductors - protective conductors in parallel; 1 if left out
 * @param input.voltageFactor - 0.8 to 1.2: 0.95 where the supply may be that much low; 1 if left out
 * @returns impedance Zs (Ω) and current (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` for a loop without any impedance
 * @source Ohm's law; IEC 60364-4-41, 411.4.4
 * @example
 * ```ts
 * const { impedance, current } = earthFaultLoop({
 *   voltageToEarth: volts(230), sourceResistance: ohms(0.35), length: meters(40),
 *   lineResistancePerLength: ohmsPerKilometer(2.2), protectiveResistancePerLength: ohmsPerKilometer(3.7),
 * });
 * [impedance, current] // => [0.586, 392.491468]
 * ```
 * @since 0.1.0
 */
export function earthFaultLoop(input: {
  readonly voltageToEarth: Volts;
  readonly sourceResistance: Ohms;
  readonly sourceReactance?: Ohms;
  readonly length: Meters;
  readonly lineResistancePerLength: OhmsPerMeter;
  readonly protectiveResistancePerLength: OhmsPerMeter;
  readonly lineReactancePerLength?: OhmsPerMeter;
  readonly protectiveReactancePerLength?: OhmsPerMeter;
  readonly conductorsPerLine?: number;
  readonly protectiveConductors?: number;
  readonly voltageFactor?: number;
}): EarthFaultLoop {
  given(input);
  const { voltageToEarth, length, sourceReactance = 0, voltageFactor = 1 } = input;
  const { lineReactancePerLength = 0, protectiveReactancePerLength = 0 } = input;
  checkMeasured("voltageToEarth", voltageToEarth, "V");
  checkMeasuredOrZero("sourceResistance", input.sourceResistance, "Ω");
  checkMeasuredOrZero("sourceReactance", sourceReactance, "Ω");
  checkMeasuredOrZero("length", length, "m");
  checkMeasuredOrZero("lineResistancePerLength", input.lineResistancePerLength, "Ω/m");
  checkMeasuredOrZero("protectiveResistancePerLength", input.protectiveResistancePerLength, "Ω/m");
  checkMeasuredOrZero("lineReactancePerLength", lineReactancePerLength, "Ω/m");
  checkMeasuredOrZero("protectiveReactancePerLength", protectiveReactancePerLength, "Ω/m");
  checkBetween("voltageFactor", voltageFactor, 0.8, 1.2);
  const lines = parallelCount(input.conductorsPerLine);
  const returns = parallelCount(input.protectiveConductors, "protectiveConductors");
  const along = (line: number, protective: number): number => length * (line / lines + protective / returns);
  const resistance =
    input.sourceResistance + along(input.lineResistancePerLength, input.protectiveResistancePerLength);
  const reactance = sourceReactance + along(lineReactancePerLength, protectiveReactancePerLength);
  const impedance = Math.hypot(resistance, reactance);
  if (!(impedance > 0)) {
    fail({
      code: "inconsistent",
      path: "sourceResistance",
      expected: "an impedance somewhere in the loop",
      received: input.sourceResistance,
      unit: "Ω",
    });
  }
  return {
    impedance: impedance as Ohms,
    current: ((voltageFactor * voltageToEarth) / impedance) as Amperes,
    resistance: resistance as Ohms,
    reactance: reactance as Ohms,
    deferral: DEFERRAL,
    cautions: LOOP_CAUTIONS,
  };
}

const EDITION = "IEC 60364-4-41:2005";

/**
 * Longest time in which a fault to earth must be disconnected, alternating current: a final circuit up to 32 A by its voltage to earth, any
 * other circuit in 5 s (TN) or 1 s (TT).
 *
 * Editions from 2017 count final circuits with socket-outlets up to 63 A to the first; a module that is wired in keeps 32 A (from memory).
 * @param input.system - "TN" for frames on a protective conductor from the source, "TT" for frames on an electrode of their own
 * @param input.voltageToEarth - nominal voltage of a line to earth U0 (V), more than 50
 * @param input.circuit - "final to 32 A" or "other"
 * @returns longest time (s)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `outside-table` up to 50 V
 * @source IEC 60364-4-41:2005, 411.3.2.2, Table 41.1; 411.3.2.3 and 411.3.2.4 from memory
 * @example
 * ```ts
 * disconnectionTime({ system: "TN", voltageToEarth: volts(230), circuit: "final to 32 A" }).value // => 0.4
 * ```
 * @since 0.1.0
 */
export function disconnectionTime(input: {
  readonly system: "TN" | "TT";
  readonly voltageToEarth: Volts;
  readonly circuit: "final to 32 A" | "other";
}): CodeResult<Seconds> {
  given(input);
  const { voltageToEarth } = input;
  const system = checkOneOf("system", input.system, ["TN", "TT"]);
  const circuit = checkOneOf("circuit", input.circuit, ["final to 32 A", "other"]);
  checkMeasured("voltageToEarth", voltageToEarth, "V");
  const first = times.rows[0] as Row;
  if (atMost(voltageToEarth, cellAt(times, first, "above") as number)) {
    fail({
      code: "outside-table",
      path: "voltageToEarth",
      expected: `more than ${cellAt(times, first, "above")}`,
      received: voltageToEarth,
      unit: "V",
    });
  }
  const final = circuit === "final to 32 A";
  const table = final ? times : others;
  const row = table.rows.find((one: Row) => {
    if (!final) return one[0] === system;
    const to = cellAt(times, one, "to");
    return to === null || atMost(voltageToEarth, to as number);
  }) as Row;
  const column = final ? system : "time";
  const [above, to] = [cellAt(times, row, "above"), cellAt(times, row, "to")];
  const band = to === null ? `above ${above} V` : `above ${above} to ${to} V`;
  return codeResult({
    value: cellAt(table, row, column) as Seconds,
    unit: "s",
    cells: [
      describeCell({
        system: "IEC",
        edition: EDITION,
        from: labelledIec(table),
        row,
        rowName: final ? band : system,
        column,
      }),
    ],
    baseConditions: ["alternating current, fault of negligible impedance to frame or protective conductor"],
    governing: final ? "voltage to earth" : "kind of circuit",
    cautions:
      system === "TT"
        ? [
            "Where frames stand on an electrode of their own, a residual-current device disconnects as a rule: loops are seldom low enough for a fuse.",
          ]
        : [],
  });
}

/**
 * An earth-fault loop held against what its device needs.
 * @since 0.1.0
 */
export interface EarthFaultVerdict extends CodeResult<Verdict> {
  /** Largest impedance at which the device still gets its current (Ω). */
  readonly largestImpedance: Ohms;
  /** That less the loop's (Ω): positive where the device opens in time. */
  readonly margin: Ohms;
}

/**
 * Whether a fault to earth draws enough for the device to open in time: impedance · trippingCurrent ≤ voltageFactor · voltageToEarth, of a TN system. Equal
 * is within; decided in decimal, and undecided where the uncertainty of the loop straddles the limit.
 * @param input.impedance - of the loop Zs, measured or from {@link earthFaultLoop} (Ω), more than 0
 * @param input.halfWidth - half-width of its interval (Ω), 0 or more; 0 if left out
 * @param input.trippingCurrent - that opens the device within the time of {@link disconnectionTime}, from its maker's curve (A), more than 0
 * @param input.voltageToEarth - nominal voltage of a line to earth U0 (V), more than 0
 * @param input.voltageFactor - 0.8 to 1.2: 0.95 where the local code has it; 1 if left out
 * @returns "within", "outside" or "undecided", with the largest impedance and the margin
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source IEC 60364-4-41:2005, 411.4.4, from memory
 * @example
 * ```ts
 * const found = earthFaultVerdict({ impedance: ohms(0.586), trippingCurrent: amperes(320), voltageToEarth: volts(230) });
 * [found.value, found.largestImpedance] // => ["within", 0.71875]
 * ```
 * @since 0.1.0
 */
export function earthFaultVerdict(input: {
  readonly impedance: Ohms;
  readonly halfWidth?: Ohms;
  readonly trippingCurrent: Amperes;
  readonly voltageToEarth: Volts;
  readonly voltageFactor?: number;
}): EarthFaultVerdict {
  given(input);
  const { impedance, halfWidth = 0, trippingCurrent, voltageToEarth, voltageFactor = 1 } = input;
  checkMeasured("impedance", impedance, "Ω");
  checkMeasuredOrZero("halfWidth", halfWidth, "Ω");
  checkMeasured("trippingCurrent", trippingCurrent, "A");
  checkMeasured("voltageToEarth", voltageToEarth, "V");
  checkBetween("voltageFactor", voltageFactor, 0.8, 1.2);
  const largest = (voltageFactor * voltageToEarth) / trippingCurrent;
  const { verdict, margin } = judge({
    value: impedance,
    halfWidth,
    high: largest,
    rule: "411.4.4",
  });
  return {
    ...codeResult({
      value: verdict,
      unit: "",
      cells: [
        {
          system: "IEC",
          edition: EDITION,
          table: "411.4.4",
          row: "Zs·Ia over U0",
          column: "at most",
          value: 1,
          unit: "1",
          source: "iec-60364-4-41",
          kind: "published",
          provenance: "memory",
          labelProvenance: "memory",
        },
      ],
      baseConditions: ["TN system, bolted fault at the end of the circuit, conductors hot"],
      governing: "tripping current",
      cautions: [
        "The current of the device itself within that time: read its maker's curve at the slow edge of the band, not its rating.",
        "A loop measured cold grows as conductors warm: allow for it, or measure with a margin that the local code names.",
      ],
    }),
    largestImpedance: largest as Ohms,
    margin: margin as Ohms,
  };
}
