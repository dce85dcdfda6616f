/** Single phasing and failed switches: what a controller that does not do as told leaves on the elements. */
import { checkOneOf, checkWhole, fail, given, type Warning } from "../quantity/index.ts";
import { type Connection, checkConnection } from "./connection.ts";

/**
 * Ratios to the healthy balanced module with fewer lines conducting.
 * @since 0.1.0
 */
export interface SinglePhasing {
  /** Total power. */
  readonly powerRatio: number;
  /** Current of each line that still conducts; 0 when none does. */
  readonly lineCurrentRatio: number;
  /** Power of each of the three branches, the highest first. */
  readonly branchPowerRatios: readonly [number, number, number];
  /** Current of the neutral over the healthy line current; 0 without a neutral. */
  readonly neutralCurrentRatio: number;
}

/**
 * A balanced module of which only some lines conduct: single phasing. Two lines of three leave half the power, on two
 * branches at 3/4 in a star, on one at full and two at a quarter in a delta; on the neutral each branch stands alone.
 * @param input.connection - star or delta
 * @param input.neutral - whether the star point is on the supply neutral; `floating` for a delta
 * @param input.conductingLines - lines that conduct, whole, 0 to 3
 * @returns ratios to the healthy module
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`, `inconsistent` for a delta on the neutral
 * @source Kirchhoff's laws
 * @example
 * ```ts
 * singlePhasing({ connection: "delta", neutral: "floating", conductingLines: 2 }).branchPowerRatios // => [1, 0.25, 0.25]
 * ```
 * @since 0.1.0
 */
export function singlePhasing(input: {
  readonly connection: Connection;
  readonly neutral: "connected" | "floating";
  readonly conductingLines: number;
}): SinglePhasing {
  given(input);
  const connection = checkConnection(input.connection);
  const neutral = checkOneOf("neutral", input.neutral, ["connected", "floating"]);
  if (connection === "delta" && neutral === "connected") {
    fail({
      code: "inconsistent",
      path: "neutral",
      expected: "floating: a delta has no star point",
      received: neutral,
    });
  }
  checkWhole("conductingLines", input.conductingLines, 0, 3);
  const lines = input.conductingLines;
  if (neutral === "connected") {
    const on = (n: number): number => (lines >= n ? 1 : 0);
    return {
      powerRatio: lines / 3,
      lineCurrentRatio: on(1),
      branchPowerRatios: [on(1), on(2), on(3)],
      neutralCurrentRatio: lines === 1 || lines === 2 ? 1 : 0,
    };
  }
  if (lines === 3)
    return {
      powerRatio: 1,
      lineCurrentRatio: 1,
      branchPowerRatios: [1, 1, 1],
      neutralCurrentRatio: 0,
    };
  if (lines < 2)
    return {
      powerRatio: 0,
      lineCurrentRatio: 0,
      branchPowerRatios: [0, 0, 0],
      neutralCurrentRatio: 0,
    };
  return {
    powerRatio: 0.5,
    lineCurrentRatio: Math.sqrt(3) / 2,
    branchPowerRatios: connection === "star" ? [0.75, 0.75, 0] : [1, 0.25, 0.25],
    neutralCurrentRatio: 0,
  };
}

/**
 * What a controller with failed switches leaves on the module.
 * @since 0.1.0
 */
export interface SwitchFault extends SinglePhasing {
  /** Lines that conduct. */
  readonly conductingLines: number;
  /** Cautions: always one, since a line that is not switched stays live. */
  readonly warnings: readonly Warning[];
}

/**
 * A controller with failed switches: commanded off with some shorted, or commanded full with some open. With two switched lines
 * one shorted switch leaves half the power on with no command.
 * @param input.connection - star or delta
 * @param input.neutral - whether the star point is on the supply neutral; `floating` for a delta
 * @param input.switchedLines - how many lines the controller switches, 2 or 3
 * @param input.failure - `shorted` (commanded off) or `open` (commanded full)
 * @param input.failed - how many switches have failed that way, whole, 0 to switchedLines
 * @returns what still conducts, as ratios to the healthy module at full output, and cautions
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`, `out-of-range`, `inconsistent` for a delta on the neutral
 * @source Kirchhoff's laws
 * @example
 * ```ts
 * switchFault({
 *   connection: "star", neutral: "floating", switchedLines: 2, failure: "shorted", failed: 1,
 * }).powerRatio // => 0.5
 * ```
 * @since 0.1.0
 */
export function switchFault(input: {
  readonly connection: Connection;
  readonly neutral: "connected" | "floating";
  readonly switchedLines: 2 | 3;
  readonly failure: "shorted" | "open";
  readonly failed: number;
}): SwitchFault {
  given(input);
  const { switchedLines, failed } = input;
  checkWhole("switchedLines", switchedLines, 2, 3);
  checkWhole("failed", failed, 0, switchedLines);
  const failure = checkOneOf("failure", input.failure, ["shorted", "open"]);
  const unswitched = 3 - switchedLines;
  const conductingLines = unswitched + (failure === "shorted" ? failed : switchedLines - failed);
  const live =
    switchedLines === 2
      ? "The third line is not switched: every element stays live to earth with no command."
      : "A switch that is off still leaks, and a shorted one leaves its line live: elements can be live to earth at no power.";
  return {
    ...singlePhasing({ connection: input.connection, neutral: input.neutral, conductingLines }),
    conductingLines,
    warnings: [
      {
        code: "caution",
        path: "conductingLines",
        message: `${live} Isolate, lock out and prove dead before touching; a controller is not an isolator.`,
        source: "common practice",
      },
    ],
  };
}
