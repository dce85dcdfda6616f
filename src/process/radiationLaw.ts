/** The law of heat radiation; its constants are exact since the SI of 2019. */
import { type Celsius, checkBetween, STEFAN_BOLTZMANN, toAbsoluteKelvins } from "../quantity/index.ts";
import { checkScale } from "./scale.ts";

const BOLTZMANN = 1.380649e-23;
const PLANCK = 6.62607015e-34;
const LIGHT = 299792458;

/** Second radiation constant, m·K: hc/k. */
export const SECOND_RADIATION: number = /*#__PURE__*/ (() => (PLANCK * LIGHT) / BOLTZMANN)();

/** Requires an emissivity: more than 0, up to 1. */
export function checkEmissivity(path: string, value: number): void {
  checkScale(path, value);
  checkBetween(path, value, 0, 1);
}

/** What a black surface of that temperature radiates, W/m². */
export function blackBody(t: number): number {
  return STEFAN_BOLTZMANN * toAbsoluteKelvins(t as Celsius) ** 4;
}
