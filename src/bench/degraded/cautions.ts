/** What each way of running on with a fault asks of the people who choose it. Common practice, no published source. */
import type { Warning } from "../../quantity/index.ts";

const caution = (path: string, message: string): Warning => ({
  code: "caution",
  path,
  message,
  source: "common practice",
});

/** Whoever decides in the end. */
export const DEGRADED_DEFERRAL =
  "The code adopted where the oven stands, the maker's instructions and a licensed electrician govern; these figures support their decision and do not replace it.";

/** Whatever way is chosen. */
export const RUNNING_ON: readonly Warning[] = [
  caution(
    "openEnds",
    "An open element is not a dead one: its break stands live whenever the module is on. Isolate, lock out and prove dead before anything is touched, untied or lifted.",
  ),
  caution(
    "heatUp",
    "Prove air flow, overtemperature cut-out and exhaust before running degraded; a longer heat-up is no reason to bypass them.",
  ),
  caution(
    "power",
    "Find out why the element opened before the module is energised again: a fault to earth or a burnt joint is still there.",
  ),
];

export const UNTIED: Warning = caution(
  "starPoints",
  "Untying changes the module: the maker's instructions, overcurrent protection and any burn-out monitor must still suit it. The star point of the damaged bank then floats live, at up to half the branch voltage with one branch open: insulate and mark both cut ends.",
);

export const ISOLATED: Warning = caution(
  "lines",
  "Isolating a bank means all its lines off, locked out and proved dead, with its leads made safe; one lifted lead leaves it live through the others.",
);

export const ISOLATED_TIED: Warning = caution(
  "starPoints",
  "Take the star tie off the isolated bank as well: left on, its elements hang on the live star point of the bank that runs.",
);

export const SHORTED: Warning = caution(
  "outcome",
  "This fault bolts supply lines together: protection must clear it, and the module must not be energised.",
);

/** Where the survivors' stress is not worked out beside the time. */
export const SURVIVORS: Warning = caution(
  "degraded",
  "Survivors may carry more than their healthy power, and the protection of the lines does not see it: look at each way of running on before one is chosen.",
);

/** A neutral that carries less than this part of a healthy line carries the unbalance of any module. */
const NEUTRAL_NOTED = 0.1;

/** What the neutral carries, where it is more than the unbalance of a sound module; null where it is not. */
export function loadedNeutral(
  lines: readonly { readonly node: string; readonly current: number }[],
  healthy: readonly { readonly node: string; readonly current: number }[],
): number | null {
  const of = (all: typeof lines): number => all.find(({ node }) => node === "N")?.current ?? 0;
  const most = Math.max(...healthy.map(({ current }) => current));
  return of(lines) - of(healthy) > NEUTRAL_NOTED * most ? of(lines) : null;
}

/** A neutral with a load that it does not have while the module is sound. */
export function neutralLoaded(current: number): Warning {
  return caution(
    "lines",
    `N carries ${current.toFixed(1)} A: its conductor, terminals and links must be fit for that, which a reduced neutral is not, and no line protection sees it. If it burns open under that load, the star point drifts, and the voltages of the survivors with it.`,
  );
}

/** The survivor beyond its plate. */
export function overstressed(id: string, powerRatio: number): Warning {
  return {
    ...caution(
      "worst.powerRatio",
      `${id} carries ${powerRatio.toFixed(2)} times its healthy power: it is the next to go, and the protection of the lines does not see it.`,
    ),
    limit: 1,
    unit: "",
  };
}
