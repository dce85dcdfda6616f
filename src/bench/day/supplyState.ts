/** The supply of a record: as measured, and the one that a repaired module is to be judged by. */
import { balancedSupply, type Supply, supplyFromLineVoltages, withoutLines } from "../../circuit/index.ts";
import type { LineVolts } from "../../quantity/index.ts";
import type { ParsedSupply } from "../record/parsed.ts";

/** What three line voltages say. */
export interface SupplyState {
  /** The supply as it was on that day. */
  readonly present: Supply;
  /** The supply a repaired module will be on: as measured, or whole again where a line is lost. */
  readonly whole: Supply;
  /** Line that looks lost, or null. */
  readonly lostLine: string | null;
}

/**
 * Whether voltages leave a line floating: nothing feeds it back, and what a meter shows from it to the live ones is between nothing and
 * what strays into it. They say that the line is lost, and nothing of the module.
 */
export const isFloating = ({ v12, v23, v31 }: ParsedSupply): boolean => {
  const all = [v12.value, v23.value, v31.value];
  const longest = Math.max(...all);
  return longest * COLLAPSED >= all.reduce((sum, one) => sum + one, 0) - longest;
};

/**
 * A lost line is fed back through the module and stands between the two live ones: its two voltages add up to the third. Voltages
 * that close a triangle as flat as this are that, not an unbalanced supply; a real supply is within a few per cent. Common practice.
 */
const COLLAPSED = 0.97;

/** The voltage between the two live lines is still near the plate's; anything else is a slip of the pen. Common practice. */
const NEAR_PLATE = 0.2;

/** Reads a supply; the plate's voltage, balanced, where none was measured; null where there is neither. */
export function supplyState(supply: ParsedSupply | undefined, plate: LineVolts | null): SupplyState | null {
  const fromPlate = plate === null ? null : balancedSupply({ lineVoltage: plate });
  if (supply === undefined) {
    return fromPlate === null ? null : { present: fromPlate, whole: fromPlate, lostLine: null };
  }
  const voltages = [
    ["L3", supply.v12.value],
    ["L1", supply.v23.value],
    ["L2", supply.v31.value],
  ] as const;
  const sum = voltages.reduce((total, [, v]) => total + v, 0);
  const [opposite, longest] = voltages.reduce((most, one) => (one[1] > most[1] ? one : most));
  const others = sum - longest;
  const near = plate === null || Math.abs(longest / plate - 1) <= NEAR_PLATE;
  // A meter's error may leave the flat triangle just open or just impossible: a lost line either way. Where nothing feeds it back the
  // lost line floats, and whatever a meter shows from it to the two live ones, down to nothing, closes no triangle at all.
  const floating = plate !== null && longest >= others;
  if (near && longest > COLLAPSED * others && (longest * COLLAPSED < others || floating)) {
    const live = balancedSupply({ lineVoltage: longest as LineVolts });
    return {
      present: withoutLines({ supply: live, lines: [opposite] }),
      whole: fromPlate ?? live,
      lostLine: opposite,
    };
  }
  const measured = supplyFromLineVoltages({
    v12: supply.v12.value,
    v23: supply.v23.value,
    v31: supply.v31.value,
  });
  return { present: measured, whole: measured, lostLine: null };
}
