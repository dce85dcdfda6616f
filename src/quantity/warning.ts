/**
 * Closed set of warning codes.
 *
 * - `outside-validity`: the input lies outside the range its source was made for; the result is given all the same
 * - `extrapolated`: read beyond the ends of a table because the caller asked for it by name
 * - `suspicious`: possible, but more likely a slip (36 W for a three-phase module)
 * - `assumed`: something not given was taken as stated in the message
 * - `approximate`: the method is known to be rough here
 * - `caution`: a person could be hurt or a part spoiled if this is missed
 * @since 0.1.0
 */
export type WarningCode =
  | "outside-validity"
  | "extrapolated"
  | "suspicious"
  | "assumed"
  | "approximate"
  | "caution";

/**
 * Something the reader of a result must know, as data beside the result. A warning never replaces an error:
 * what physics forbids is thrown.
 * @since 0.1.0
 */
export interface Warning {
  /** What kind of warning. Programs branch on it. */
  readonly code: WarningCode;
  /** The input or result it is about, dotted into records (`readings.2.resistance`). */
  readonly path: string;
  /** The whole sentence for a person. */
  readonly message: string;
  /** The limit that was passed, in `unit`. */
  readonly limit?: number;
  /** Unit of `limit`. */
  readonly unit?: string;
  /** Id of the source that sets the limit, or `common practice`. */
  readonly source?: string;
}
