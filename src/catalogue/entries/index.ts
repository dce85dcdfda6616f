/** Every entry there is, by id and by name. */
import type { Entry } from "../describe.ts";
import { READINGS } from "./bench/measured.ts";
import { MODULES } from "./bench/module.ts";
import { BALANCED } from "./circuit/balanced.ts";
import { CONTROL } from "./circuit/control.ts";
import { NETWORKS } from "./circuit/networks.ts";
import { UNBALANCED } from "./circuit/unbalanced.ts";
import { DECISION } from "./decision.ts";
import { NUMERIC } from "./numeric.ts";
import { AIR } from "./process/air.ts";
import { CHARGE } from "./process/charge.ts";
import { OVEN } from "./process/oven.ts";
import { SURFACES } from "./process/surfaces.ts";

/** All entries, room by room. */
export const ENTRIES: readonly Entry[] = [
  ...NUMERIC,
  ...DECISION,
  ...BALANCED,
  ...NETWORKS,
  ...CONTROL,
  ...UNBALANCED,
  ...AIR,
  ...OVEN,
  ...CHARGE,
  ...SURFACES,
  ...READINGS,
  ...MODULES,
];

const BY_ID: ReadonlyMap<string, Entry> = /*#__PURE__*/ new Map(ENTRIES.map((entry) => [entry.id, entry]));

/** The entry of an id, `room.functionName`. */
export function entryOf(id: string): Entry | undefined {
  return BY_ID.get(id);
}
