/** Everything this library holds, put together as a user would bring it. */
import { celsius } from "electroheat/quantity";
import type { IecEdition, NorthAmericanEdition, SharedTable } from "electroheat/wiring";
import { tableNamed } from "./tables.ts";

export const labelled = (id: string): { label: string; table: SharedTable } => ({
  label: id,
  table: tableNamed(id),
});
const base = (temperature: number) => ({
  baseAmbient: celsius(temperature),
  baseConditions: ["as printed"],
});

export const ours: NorthAmericanEdition = {
  name: "all of ours",
  system: "North America",
  ampacity: [
    { installation: "raceway", ...base(30), ...labelled("nec-310-16") },
    { installation: "raceway of 2008", ...base(30), ...labelled("nec-310-16-2008") },
    { installation: "free air", ...base(30), ...labelled("nec-310-17-copper") },
    { installation: "high-temperature raceway", ...base(40), ...labelled("nec-310-18") },
  ],
  ambient: [
    { baseAmbient: celsius(30), ...labelled("nec-ambient-30") },
    { baseAmbient: celsius(40), ...labelled("nec-ambient-40") },
  ],
  conductorCount: labelled("nec-conductor-count"),
  smallConductors: labelled("nec-small-conductors"),
  terminations: labelled("nec-terminations"),
  standardRatings: labelled("nec-standard-ratings"),
  heatingRules: labelled("nec-heating-rules"),
};
const capacity = (id: string, insulation: string, temperature: number, at = 30) => ({
  insulation,
  material: "copper",
  conductorTemperature: celsius(temperature),
  ...base(at),
  ...labelled(id),
});
export const oursIec: IecEdition = {
  name: "all of ours, IEC",
  system: "IEC",
  capacity: [
    ...["iec-b52-2", "iec-b52-4", "iec-b52-10", "iec-method-d-2001-pvc"].map((id) => capacity(id, "PVC", 70)),
    capacity("iec-60204-1-capacity", "PVC machine", 70, 40),
    ...["iec-b52-3", "iec-b52-5", "iec-b52-12", "iec-method-d-2001-xlpe"].map((id) =>
      capacity(id, "XLPE", 90),
    ),
    ...["bs-7671-4e1a-conduit", "bs-7671-4e1a-free-air"].map((id) => capacity(id, "XLPE British", 90)),
  ],
  ambient: [
    ...["iec-b52-14-ambient", "bs-7671-4b1-ambient"].map((id) => ({
      baseAmbient: celsius(30),
      ...labelled(id),
    })),
    { baseAmbient: celsius(40), ...labelled("iec-60204-1-ambient") },
  ],
  grouping: ["iec-b52-17-grouping", "iec-grouping-simplified"].map((id) => ({
    name: id,
    ...labelled(id),
  })),
  deviceRatings: labelled("iec-60269-ratings"),
};
