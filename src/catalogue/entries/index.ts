/** Every entry there is, by id and by name. */
import type { Entry } from "../describe.ts";
import { diagnosesEntries } from "./bench/diagnosis.ts";
import { readingsEntries } from "./bench/measured.ts";
import { modulesEntries } from "./bench/module.ts";
import { balancedEntries } from "./circuit/balanced.ts";
import { controlEntries } from "./circuit/control.ts";
import { networksEntries } from "./circuit/networks.ts";
import { unbalancedEntries } from "./circuit/unbalanced.ts";
import { decisionEntries } from "./decision.ts";
import { distributionsEntries } from "./distributions.ts";
import { coilEntries } from "./element/coil.ts";
import { heatOfElementEntries } from "./element/heat.ts";
import { hotColdEntries } from "./element/hotCold.ts";
import { oneEntries } from "./element/one.ts";
import { stripEntries } from "./element/strip.ts";
import { barEntries } from "./joint/bar.ts";
import { clampEntries } from "./joint/clamp.ts";
import { contactEntries } from "./joint/contact.ts";
import { heatEntries } from "./joint/heat.ts";
import { measuredEntries } from "./joint/measured.ts";
import { threadEntries } from "./joint/thread.ts";
import { airPropertiesEntries } from "./material/air.ts";
import { alloysEntries } from "./material/alloy.ts";
import { conductorsEntries } from "./material/conductor.ts";
import { wireEntries } from "./material/wire.ts";
import { numericEntries } from "./numeric.ts";
import { airEntries } from "./process/air.ts";
import { chargeEntries } from "./process/charge.ts";
import { ovenEntries } from "./process/oven.ts";
import { surfacesEntries } from "./process/surfaces.ts";
import { quantityEntries } from "./quantity.ts";
import { americaEntries } from "./wiring/america.ts";
import { faultEntries } from "./wiring/fault.ts";
import { iecEntries } from "./wiring/iec.ts";
import { insulationEntries } from "./wiring/insulation.ts";

/** Room by room, in the order of the catalogue. */
const PARTS = [
  numericEntries,
  distributionsEntries,
  decisionEntries,
  balancedEntries,
  networksEntries,
  controlEntries,
  barEntries,
  heatEntries,
  contactEntries,
  measuredEntries,
  threadEntries,
  clampEntries,
  americaEntries,
  iecEntries,
  faultEntries,
  insulationEntries,
  unbalancedEntries,
  airEntries,
  ovenEntries,
  chargeEntries,
  surfacesEntries,
  oneEntries,
  hotColdEntries,
  coilEntries,
  stripEntries,
  heatOfElementEntries,
  quantityEntries,
  wireEntries,
  conductorsEntries,
  alloysEntries,
  airPropertiesEntries,
  readingsEntries,
  modulesEntries,
  diagnosesEntries,
];

let made: readonly Entry[] | undefined;
let byId: ReadonlyMap<string, Entry> | undefined;

/** All entries, room by room: made when first asked for, so that an import does not wait for them. */
export function allEntries(): readonly Entry[] {
  made ??= PARTS.flatMap((part) => part());
  return made;
}

/** The entry of an id, `room.functionName`. */
export function entryOf(id: string): Entry | undefined {
  byId ??= new Map(allEntries().map((entry) => [entry.id, entry]));
  return byId.get(id);
}
