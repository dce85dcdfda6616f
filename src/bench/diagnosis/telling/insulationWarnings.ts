/** Insulation too low for a sound module, whatever the ranking makes of it. */
import type { Warning } from "../../../quantity/index.ts";
import { SOUND_INSULATION } from "../likelihood/insulation.ts";
import type { Question } from "../likelihood/model.ts";
import { readsOf } from "../question/instruments.ts";

/** Insulation below 1 MΩ is told of whatever the ranking makes of it: damp does the same, and no reading names the element. */
export function insulationWarnings({ all }: Question): Warning[] {
  return all.flatMap((reading, r): Warning[] => {
    if (reading.kind !== "insulation") return [];
    const reads = readsOf(reading);
    if (reads === null || reads === "open" || reads >= SOUND_INSULATION[0]) return [];
    const path = `readings.${r}.reads`;
    const message = `${path}: ${reads} Ω to the frame is below 1 MΩ: an earth fault or damp. One reading does not say which element; lift the links and read them one by one, dry, before anything is renewed or energised.`;
    return [
      { code: "caution", path, message, limit: SOUND_INSULATION[0], unit: "Ω", source: "common practice" },
    ];
  });
}
