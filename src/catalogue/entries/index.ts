/** Every entry there is, by id and by name. */
import type { Entry } from "../describe.ts";
import { DIAGNOSES } from "./bench/diagnosis.ts";
import { READINGS } from "./bench/measured.ts";
import { MODULES } from "./bench/module.ts";
import { BALANCED } from "./circuit/balanced.ts";
import { CONTROL } from "./circuit/control.ts";
import { NETWORKS } from "./circuit/networks.ts";
import { UNBALANCED } from "./circuit/unbalanced.ts";
import { DECISION } from "./decision.ts";
import { DISTRIBUTIONS } from "./distributions.ts";
import { COIL } from "./element/coil.ts";
import { HEAT_OF_ELEMENT } from "./element/heat.ts";
import { HOT_COLD } from "./element/hotCold.ts";
import { ONE } from "./element/one.ts";
import { STRIP } from "./element/strip.ts";
import { BAR } from "./joint/bar.ts";
import { CLAMP } from "./joint/clamp.ts";
import { CONTACT } from "./joint/contact.ts";
import { HEAT } from "./joint/heat.ts";
import { MEASURED } from "./joint/measured.ts";
import { THREAD } from "./joint/thread.ts";
import { AIR_PROPERTIES } from "./material/air.ts";
import { ALLOYS } from "./material/alloy.ts";
import { CONDUCTORS } from "./material/conductor.ts";
import { WIRE } from "./material/wire.ts";
import { NUMERIC } from "./numeric.ts";
import { AIR } from "./process/air.ts";
import { CHARGE } from "./process/charge.ts";
import { OVEN } from "./process/oven.ts";
import { SURFACES } from "./process/surfaces.ts";
import { QUANTITY } from "./quantity.ts";
import { AMERICA } from "./wiring/america.ts";
import { IEC } from "./wiring/iec.ts";
import { INSULATION } from "./wiring/insulation.ts";

/** All entries, room by room. */
export const ENTRIES: readonly Entry[] = [
  ...NUMERIC,
  ...DISTRIBUTIONS,
  ...DECISION,
  ...BALANCED,
  ...NETWORKS,
  ...CONTROL,
  ...BAR,
  ...HEAT,
  ...CONTACT,
  ...MEASURED,
  ...THREAD,
  ...CLAMP,
  ...AMERICA,
  ...IEC,
  ...INSULATION,
  ...UNBALANCED,
  ...AIR,
  ...OVEN,
  ...CHARGE,
  ...SURFACES,
  ...ONE,
  ...HOT_COLD,
  ...COIL,
  ...STRIP,
  ...HEAT_OF_ELEMENT,
  ...QUANTITY,
  ...WIRE,
  ...CONDUCTORS,
  ...ALLOYS,
  ...AIR_PROPERTIES,
  ...READINGS,
  ...MODULES,
  ...DIAGNOSES,
];

const BY_ID: ReadonlyMap<string, Entry> = /*#__PURE__*/ new Map(ENTRIES.map((entry) => [entry.id, entry]));

/** The entry of an id, `room.functionName`. */
export function entryOf(id: string): Entry | undefined {
  return BY_ID.get(id);
}
