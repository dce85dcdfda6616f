/** Ways of running on with a fault until the part comes, side by side: power, stress, lines, heat-up, energy, live ends. */
import {
  buildModule,
  type EnergisedNetwork,
  type Fault,
  faultEffect,
  type ModulePlan,
  type Supply,
  type Unbalance,
  unbalance,
} from "../../circuit/index.ts";
import { type Cooling, surfaceTemperatureWhatIfs } from "../../element/index.ts";
import { EQUAL_WITHIN } from "../../numeric/index.ts";
import { energyCost, type HeatUpOption, heatUpOptions, type OvenPlan } from "../../process/index.ts";
import {
  type Celsius,
  checkMeasurable,
  checkMeasurableOrZero,
  checkOneOf,
  given,
  type Joules,
  type Seconds,
  type Watts,
  type WattsPerSquareMeter,
} from "../../quantity/index.ts";
import {
  DEGRADED_DEFERRAL,
  loadedNeutral,
  neutralLoaded,
  overstressed,
  RUNNING_ON,
  SHORTED,
} from "./cautions.ts";
import type { DegradedOption, DegradedOptions, WorstElement } from "./types.ts";
import { energised, waysOf } from "./ways.ts";

/** Below this part of the healthy power an element or a module counts as carrying nothing. */
const NOTHING = 1e-9;
/** Below this the survivors of a supply or of elements that are a little unequal carry what they carry in any module. */
const NOTED = 1.005;

type Element = Cooling & { readonly surfaceLoad: WattsPerSquareMeter };

function worstOf(
  state: EnergisedNetwork,
  healthy: EnergisedNetwork,
  element: Element | undefined,
): WorstElement | null {
  const before = new Map(healthy.branches.map(({ id, power }) => [id, power]));
  let worst: { readonly id: string; readonly powerRatio: number } | null = null;
  for (const { id, role, power } of state.branches) {
    const was = before.get(id) as number;
    if (role !== "element" || !(was > 0) || !(power > NOTHING * was)) continue;
    const powerRatio = power / was;
    // Twins differ in their last digits: the first of them stands for all.
    if (worst === null || powerRatio > worst.powerRatio * (1 + EQUAL_WITHIN)) worst = { id, powerRatio };
  }
  if (worst === null) return null;
  const cases = [{ name: worst.id, powerRatio: worst.powerRatio, airSpeedRatio: 1 }];
  const [surface = null] = element === undefined ? [] : surfaceTemperatureWhatIfs({ ...element, cases });
  return { ...worst, surface };
}

/** Of a module that runs: its lines carry something. */
function unbalanceOf(state: EnergisedNetwork): Unbalance {
  const [l1, l2, l3] = ["L1", "L2", "L3"].map(
    (line) => state.lines.find(({ node }) => node === line)?.current ?? 0,
  ) as [number, number, number];
  return unbalance({ l1, l2, l3 });
}

/** Energy of one shift and the part of it at the set point; the controller holds once it is there. */
function shiftOf(heatUp: HeatUpOption, shift: Seconds): { energy: Joules; atTarget: Seconds } {
  const heating = heatUp.time === "never" ? shift : Math.min(heatUp.time, shift);
  const atTarget = (shift - heating) as Seconds;
  return { energy: (heatUp.power * heating + heatUp.holdingPower * atTarget) as Joules, atTarget };
}

/**
 * Ways of running on with a fault until the part comes, side by side with the healthy module: leave as is, untie the star points
 * (where star banks are tied), isolate each damaged bank (where another one is left). For each the power, the stress and the surface
 * temperature of the worst element, the lines and their unbalance, the heat-up, the energy, and the breaks that stand live.
 *
 * Elements keep their resistance. An isolated bank has its lines and its star tie off. Each shift begins cold, heats up at full
 * conduction and holds the set point; surfaces are worked out at the air temperature given with the cooling.
 * @param input.module - the module as it was, sound
 * @param input.supply - the supply
 * @param input.faults - at least one; all at once
 * @param input.oven - the oven
 * @param input.target - set point, °C, above ambient and start
 * @param input.start - temperature of everything at the start of a shift, °C; ambient if left out
 * @param input.element - surface load of an element in the healthy module, W/m², and what cools it; left out, no surface temperature
 * @param input.shift - length of one shift, s, more than 0
 * @param input.shifts - how many shifts until the part comes, 0 or more; 1 if left out
 * @param input.tariff - price of one kilowatt-hour in any currency, 0 or more; left out, no cost
 * @returns the ways, healthy first, with cautions for each and for all, and who decides
 * @throws ElectroheatError as for `buildModule` of `circuit`, {@link faultEffect}, `ovenHeatUp` of `process` and `surfaceTemperature` of `element`
 * @source Kirchhoff's laws; first law; surfaces as `surfaceTemperature` of `element`
 * @example
 * ```ts
 * const bank = (id: string) => ({ id, connection: "star" as const, elementResistance: ohms(11.52) });
 * const { options } = degradedOptions({
 *   module: { banks: [bank("A"), bank("B")], starPoints: "tied" },
 *   supply: balancedSupply({ lineVoltage: volts(480) }),
 *   faults: [{ kind: "open", id: "A-L1" }],
 *   oven: { ambient: celsius(20), lossConductance: wattsPerKelvin(115), structure: kilojoulesPerKelvin(316) },
 *   target: celsius(200),
 *   shift: hours(8),
 * });
 * options.map(({ name, power, worst }) => [name, Math.round(power), worst?.powerRatio.toFixed(2)])
 * // => [["healthy", 40000, "1.00"], ["leave as is", 32000, "1.44"], ["untie star points", 30000, "1.00"], ["isolate bank A", 20000, "1.00"]]
 * ```
 * @since 0.1.0
 */
export function degradedOptions(input: {
  readonly module: ModulePlan;
  readonly supply: Supply;
  readonly faults: readonly Fault[];
  readonly oven: OvenPlan;
  readonly target: Celsius;
  readonly start?: Celsius;
  readonly element?: Cooling & { readonly surfaceLoad: WattsPerSquareMeter };
  readonly shift: Seconds;
  readonly shifts?: number;
  readonly tariff?: number;
}): DegradedOptions {
  const {
    module: plan,
    supply,
    faults,
    oven,
    target,
    start,
    element,
    shift,
    shifts = 1,
    tariff,
  } = given(input);
  checkMeasurable("shift", shift, "s");
  checkMeasurableOrZero("shifts", shifts);
  if (tariff !== undefined) checkMeasurableOrZero("tariff", tariff);
  const module = buildModule(plan);
  const names = module.elements.map(({ id }) => id);
  // Checks the faults; a joint that opens or shorts is no damaged bank, so nothing could be isolated for it.
  faultEffect({ network: module.network, supply, faults });
  faults.forEach((fault, i) => {
    if (fault.kind !== "lost line") checkOneOf(`faults.${i}.id`, fault.id, names);
  });
  const ways = waysOf(plan, module, faults);
  const states = ways.map((way) => energised(way, supply));
  const healthy = states[0] as EnergisedNetwork;
  const heatUps = heatUpOptions({
    oven,
    powers: ways.map(({ name }, i) => ({ name, power: states[i]?.totalPower ?? (0 as Watts) })),
    target,
    ...(start === undefined ? {} : { start }),
  });
  const options = ways.map((way, i): DegradedOption => {
    const { name, action, bank } = way;
    const state = states[i] ?? null;
    const heatUp = heatUps[i] as HeatUpOption;
    const { energy, atTarget } = shiftOf(heatUp, shift);
    const worst = state === null ? null : worstOf(state, healthy, element);
    const runs = (state?.totalPower ?? 0) > NOTHING * healthy.totalPower;
    const neutral = state === null ? null : loadedNeutral(state.lines, healthy.lines);
    const opened = new Set(way.faults.flatMap((fault) => (fault.kind === "open" ? [fault.id] : [])));
    return {
      name,
      action,
      bank,
      outcome: state === null ? "supply shorted" : runs ? "runs" : "dead",
      power: heatUp.power,
      powerRatio: heatUp.powerRatio,
      worst,
      lines: (state?.lines ?? []).map(({ node, current }) => ({ node, current })),
      unbalance: runs && state !== null ? unbalanceOf(state) : null,
      heatUp,
      energyPerShift: energy,
      timeAtTarget: atTarget,
      cost: tariff === undefined ? null : energyCost({ energy: (energy * shifts) as Joules, tariff }).cost,
      openEnds: (state?.branches ?? [])
        .filter(({ id }) => opened.has(id))
        .map(({ id, voltage }) => ({ id, voltage })),
      cautions: [
        ...(state === null ? [SHORTED] : []),
        ...(worst !== null && worst.powerRatio >= NOTED ? [overstressed(worst.id, worst.powerRatio)] : []),
        ...(neutral === null ? [] : [neutralLoaded(neutral)]),
        ...way.cautions,
      ],
    };
  });
  return { options, cautions: RUNNING_ON, deferral: DEGRADED_DEFERRAL };
}
