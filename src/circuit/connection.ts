/** Star or delta: the one place that knows the names. */
import { checkOneOf } from "../quantity/index.ts";

/**
 * How a bank's branches are connected. `"wye"` is read as `"star"` only where people enter it, in a record.
 * @since 0.1.0
 */
export type Connection = "star" | "delta";

/** Requires star or delta. */
export function checkConnection(connection: unknown, path = "connection"): Connection {
  return checkOneOf(path, connection, ["star", "delta"]);
}
