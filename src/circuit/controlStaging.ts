/** Staging: banks switched in steps, one of them trimmed to meet the demand in between. */
import { checkMeasurable, checkMeasurableOrZero, fail, given, type Watts } from "../quantity/index.ts";

/**
 * One bank as a stage.
 * @since 0.1.0
 */
export interface Stage {
  /** Name of the bank. */
  readonly id: string;
  /** Its power at full output, as it is now, W, more than 0. */
  readonly power: Watts;
}

/**
 * Which stages are on for a demand.
 * @since 0.1.0
 */
export interface StagePlan {
  /** Names of the stages that are fully on, in the order of the list. */
  readonly on: readonly string[];
  /** Duty of the trimmed stage, 0 to 1; 0 without one. */
  readonly trimDuty: number;
  /** Power delivered, W. */
  readonly delivered: Watts;
  /** Demand that is not met, W, 0 or more. */
  readonly shortfall: Watts;
  /** Delivered above the demand, W, 0 or more: steps alone overshoot. */
  readonly excess: Watts;
}

/**
 * Stages for a demand: banks come on in the order given until the demand is met; a trimmed stage, burst or phase-angle fired,
 * comes first and fills the gap between two steps.
 *
 * Without a trimmed stage the last step overshoots. A trimmed stage smaller than a step leaves gaps that it cannot fill: the next
 * step is then on and the excess says by how much.
 * @param input.stages - on/off stages in their order, at least one of them or a trimmed stage
 * @param input.demand - wanted power, W, 0 or more
 * @param input.trimmed - the stage that can deliver any part of its power; none if left out
 * @returns which stages are on, the duty of the trimmed one, what is delivered and what is missing
 * @throws ElectroheatError `missing`, `wrong-type`, `duplicate`, `not-a-number`, `out-of-range`
 * @source common practice (step control with one modulated stage)
 * @example
 * ```ts
 * const stages = [{ id: "B", power: kilowatts(20) }, { id: "C", power: kilowatts(20) }];
 * const { on, trimDuty } = stageBanks({ stages, demand: kilowatts(30), trimmed: { id: "A", power: kilowatts(20) } });
 * [on, trimDuty] // => [["B"], 0.5]
 * ```
 * @since 0.1.0
 */
export function stageBanks(input: {
  readonly stages: readonly Stage[];
  readonly demand: Watts;
  readonly trimmed?: Stage;
}): StagePlan {
  const { stages, demand, trimmed } = given(input);
  if (!Array.isArray(stages)) {
    const code = stages === undefined || stages === null ? "missing" : "wrong-type";
    fail({ code, path: "stages", expected: "a list of stages", received: stages });
  }
  checkMeasurableOrZero("demand", demand, "W");
  const all = trimmed === undefined ? stages : [trimmed, ...stages];
  if (all.length === 0) {
    fail({ code: "missing", path: "stages", expected: "at least one stage", received: undefined });
  }
  const names = new Set<string>();
  all.forEach((stage, i) => {
    const path = trimmed === undefined ? `stages.${i}` : i === 0 ? "trimmed" : `stages.${i - 1}`;
    given(stage, path);
    checkMeasurable(`${path}.power`, stage.power, "W");
    if (names.has(stage.id)) {
      fail({ code: "duplicate", path: `${path}.id`, expected: "a name used once", received: stage.id });
    }
    names.add(stage.id);
  });
  const reach = trimmed?.power ?? 0;
  const on: string[] = [];
  let fixed = 0;
  for (const stage of stages) {
    if (fixed + reach >= demand) break;
    on.push(stage.id);
    fixed += stage.power;
  }
  const trim = Math.min(reach, Math.max(0, demand - fixed));
  const delivered = fixed + trim;
  return {
    on,
    trimDuty: reach > 0 ? trim / reach : 0,
    delivered: delivered as Watts,
    shortfall: Math.max(0, demand - delivered) as Watts,
    excess: Math.max(0, delivered - demand) as Watts,
  };
}
