/** The supply of a record: as measured, and the one that a repaired module is to be judged by. */
import { balancedSupply, type Supply, supplyFromLineVoltages, withoutLines } from "../circuit/index.ts";
import type { LineVolts } from "../quantity/index.ts";
import type { ParsedRecord } from "./recordParsed.ts";

/** What the three line voltages of a record say. */
export interface SupplyState {
  /** The supply the module was found on. */
  readonly asFound: Supply;
  /** The supply a repaired module will be on: as measured, or the plate's where a line is lost. */
  readonly repaired: Supply;
  /** Line that looks lost, or null. */
  readonly lostLine: string | null;
}

/**
 * A lost line is fed back through the module and stands between the two live ones: its two voltages add up to the third. Voltages
 * that close a triangle as flat as this are that, not an unbalanced supply; a real supply is within a few per cent. Common practice.
 */
const COLLAPSED = 0.97;

/** The voltage between the two live lines is still near the plate's; anything else is a slip of the pen. Common practice. */
const NEAR_PLATE = 0.2;

/** Reads the supply of a record; the plate's voltage, balanced, where none was measured. */
export function supplyState({ supply, nameplate }: ParsedRecord): SupplyState {
  const plate = balancedSupply({ lineVoltage: nameplate.voltage.value });
  if (supply === undefined) return { asFound: plate, repaired: plate, lostLine: null };
  const voltages = [
    ["L3", supply.v12.value],
    ["L1", supply.v23.value],
    ["L2", supply.v31.value],
  ] as const;
  const sum = voltages.reduce((total, [, v]) => total + v, 0);
  const [opposite, longest] = voltages.reduce((most, one) => (one[1] > most[1] ? one : most));
  const others = sum - longest;
  const near = Math.abs(longest / nameplate.voltage.value - 1) <= NEAR_PLATE;
  // A meter's error may leave the flat triangle just open or just impossible: a lost line either way.
  if (near && longest > COLLAPSED * others && longest * COLLAPSED < others) {
    const live = balancedSupply({ lineVoltage: longest as LineVolts });
    return {
      asFound: withoutLines({ supply: live, lines: [opposite] }),
      repaired: plate,
      lostLine: opposite,
    };
  }
  const measured = supplyFromLineVoltages({
    v12: supply.v12.value,
    v23: supply.v23.value,
    v31: supply.v31.value,
  });
  return { asFound: measured, repaired: measured, lostLine: null };
}
