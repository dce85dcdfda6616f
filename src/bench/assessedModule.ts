/** The module and its papers as the assessment repeats them: enough to draw it. */

import type { AssessedModule } from "./assessmentTypes.ts";
import { siteSupply } from "./day/assessDay.ts";
import type { ParsedRecord } from "./record/parsed.ts";
import type { RecordIdentity } from "./record/record.ts";

/** The identity without blanks; null where the record has none. */
export function identityOf({ identity }: ParsedRecord): RecordIdentity | null {
  if (identity === undefined) return null;
  const known = Object.entries(identity).filter(([, value]) => value !== undefined);
  return known.length === 0 ? null : (Object.fromEntries(known) as RecordIdentity);
}

/** The module as read from the record. */
export function assessedModule(record: ParsedRecord): AssessedModule {
  const { wiring, nameplate } = record;
  const stars = wiring.banks.filter(({ connection }) => connection === "star").length;
  const supply = siteSupply(record);
  return {
    banks: wiring.banks.map(({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }) => ({
      id,
      connection,
      elementsInParallel,
      elementsInSeries,
    })),
    starPoints: stars > 1 ? (wiring.starPoints as "tied" | "separate") : null,
    neutral: wiring.neutral ?? "floating",
    joints: (wiring.joints ?? []).map(({ id, at, behind }) => ({
      id,
      at,
      ...(behind === undefined ? {} : { behind }),
    })),
    power: nameplate?.power.value ?? null,
    lineVoltage: nameplate?.voltage.value ?? null,
    supply:
      supply === undefined ? null : { v12: supply.v12.value, v23: supply.v23.value, v31: supply.v31.value },
  };
}
