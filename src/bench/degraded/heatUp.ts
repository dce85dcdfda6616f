/** From a fault in a module to the time its oven then takes: the network's remaining power, put to the oven. */
import {
  buildModule,
  energise,
  type Fault,
  faultEffect,
  type ModulePlan,
  type Supply,
} from "../../circuit/index.ts";
import { type HeatUpOption, heatUpOptions, type OvenPlan } from "../../process/index.ts";
import { type Celsius, given, type Warning, type Watts } from "../../quantity/index.ts";
import { DEGRADED_DEFERRAL, RUNNING_ON, SHORTED, SURVIVORS } from "./cautions.ts";

/**
 * Heat-up of an oven by a sound module and by the same module with faults.
 * @since 0.1.0
 */
export interface DegradedHeatUp {
  /** The module still draws current, or none, or bolts supply lines together and must be cleared by its protection. */
  readonly outcome: "runs" | "dead" | "supply shorted";
  /** With the module as planned. */
  readonly healthy: HeatUpOption;
  /** With the faults in it; `null` when the supply is shorted, because then nothing runs. */
  readonly degraded: HeatUpOption | null;
  /** What running on asks of the people who choose it. */
  readonly cautions: readonly Warning[];
  /** Who decides. */
  readonly deferral: string;
}

/**
 * How long an oven takes to its set point with faults in the module, beside the sound module, and whether it gets there at all:
 * the power that the network leaves ({@link faultEffect}) put to the oven (`ovenHeatUp` of `process`).
 *
 * Heat of joints and jumper bars counts as heat into the oven. Full conduction: a controller that holds power back takes longer.
 * The stress of the survivors decides whether running on is sensible; {@link degradedOptions} sets it beside the time.
 * @param input.module - the module as planned, sound but for what the plan itself says
 * @param input.supply - the supply
 * @param input.faults - at least one; all at once
 * @param input.oven - the oven
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - temperature of everything at the start, °C; ambient if left out
 * @returns both heat-ups, with cautions and who decides; `"never"` with the temperature it will end at is an answer, not an error
 * @throws ElectroheatError as for `buildModule` of `circuit`, {@link faultEffect} and `ovenHeatUp` of `process`
 * @source Kirchhoff's laws; first law
 * @example
 * ```ts
 * const oven: OvenPlan = {
 *   ambient: celsius(20), lossConductance: wattsPerKelvin(40), structure: kilojoulesPerKelvin(200),
 * };
 * const module: ModulePlan = { banks: [{ id: "A", connection: "delta", elementResistance: ohms(57.6) }] };
 * const supply = balancedSupply({ lineVoltage: volts(480) });
 * const faults: Fault[] = [{ kind: "open", id: "A-L1L2" }];
 * const { healthy, degraded } = degradedHeatUp({ module, supply, faults, oven, target: celsius(200) });
 * [healthy.time, degraded?.time, degraded?.powerRatio] // => [4581.454, 11512.93, 0.666667]
 * ```
 * @since 0.1.0
 */
export function degradedHeatUp(input: {
  readonly module: ModulePlan;
  readonly supply: Supply;
  readonly faults: readonly Fault[];
  readonly oven: OvenPlan;
  readonly target: Celsius;
  readonly start?: Celsius;
}): DegradedHeatUp {
  const { module, supply, faults, oven, target, start } = given(input);
  const { network } = buildModule(module);
  const effect = faultEffect({ network, supply, faults });
  const shorted = effect.outcome === "supply shorted";
  const powers = [
    { name: "healthy", power: energise({ network, supply }).totalPower },
    { name: "degraded", power: shorted ? (0 as Watts) : effect.totalPower },
  ];
  const [healthy, degraded] = heatUpOptions({
    oven,
    powers,
    target,
    ...(start === undefined ? {} : { start }),
  }) as [HeatUpOption, HeatUpOption];
  return {
    outcome: effect.outcome,
    healthy,
    degraded: shorted ? null : degraded,
    cautions: shorted ? [SHORTED, ...RUNNING_ON] : [SURVIVORS, ...RUNNING_ON],
    deferral: DEGRADED_DEFERRAL,
  };
}
