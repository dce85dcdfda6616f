/** The torque to use for a fastening: the maker's, else a published table's as far as the stud takes it, else what the stud takes. */
import { compareQuoted } from "../../decision/index.ts";
import { type TighteningTorque, type TorqueTable, tighteningTorque } from "../../joint/index.ts";
import { formatQuantity, isElectroheatError, type NewtonMeters, type Pascals } from "../../quantity/index.ts";
import type { ParsedFastening } from "../record/parsed.ts";
import { basisText, cautionOf, messagesOf } from "./figure.ts";
import type { Thread } from "./threads.ts";
import { type Ceiling, lowerOf, type NutFactors, strengthCeiling } from "./torqueCeiling.ts";

/** A torque to use, and between what the torque applied may lie. */
export interface TorqueToUse {
  readonly torque: NewtonMeters;
  /** The maker's, usual, least or greatest, or worked out. */
  readonly kind: TighteningTorque["kind"] | "from preload";
  readonly low: number;
  readonly high: number | null;
  readonly basis: string;
  readonly caution: string | null;
}

/**
 * How far the torque applied may lie from the torque to use. Hand torque tools are allowed ±4 to ±6 % (ISO 6789-1, from memory) and are
 * read by eye. Common practice, no published source.
 */
const TORQUE_TOLERANCE = 0.1;
const TOLERANCE_TEXT = `±${TORQUE_TOLERANCE * 100} % for tool and reading (common practice, no published source)`;

interface Place {
  readonly table: TorqueTable;
  readonly size: string;
  readonly column: string;
}

/** A cell of a torque table; `null` where the table does not know the size or leaves the cell blank. */
function lookedUp(place: Place): TighteningTorque | null {
  try {
    return tighteningTorque(place);
  } catch (error) {
    if (isElectroheatError(error) && (error.code === "unknown-name" || error.code === "outside-table"))
      return null;
    throw error;
  }
}

const isBrass = ({ strength }: ParsedFastening): boolean => strength?.standard === "brass C36000";
const isStainless = ({ strength }: ParsedFastening): boolean =>
  strength?.standard === "ISO 3506-1" || strength?.standard === "ASTM F593";

/** Tables that may know the thread, the one made for bolted copper first. Brass has only the table that covers it. */
function placesOf(thread: Thread, brass: boolean): readonly Place[] {
  if (thread.form === "metric") {
    return ["mainCircuit", "generalConnection"].map((column) => ({
      table: "switchgear-metric",
      size: thread.nominal,
      column,
    }));
  }
  const nut: Place = { table: "telecom-minimum", size: thread.name, column: "nut" };
  if (brass) return [nut];
  return [{ table: "bus-bolts", size: thread.nominal, column: "bronzeStainlessGalvanized" }, nut];
}

/** Conditions that slip more easily than the dry threads for which maximum torques are printed. */
const LUBRICATED: readonly (string | undefined)[] = [
  "machine-oiled steel",
  "phosphated and oiled",
  "stainless with anti-seize",
  "black oxide and oil",
  "PTFE or wax coated",
];

const SLIPPERY =
  "The table names no lubricant, and a thread that slips reaches the same preload at less torque: write down the strength, and the torque is held to what the stud takes.";

/** The greatest torque that a table prints for dry brass or stainless of this size; it has no metric ones. */
function printedCeiling(thread: Thread, fastening: ParsedFastening): Ceiling | null {
  const column = isBrass(fastening) ? "brass" : isStainless(fastening) ? "stainless18-8" : null;
  if (column === null) return null;
  const found = lookedUp({ table: "nonferrous-maximum", size: thread.nominal, column });
  if (found === null) return null;
  const { torque, kind, basis, warnings } = found;
  const disagree = "Two published tables disagree; the lower torque is taken.";
  return { torque, kind, basis: basisText(basis), cautions: [...messagesOf(warnings), disagree] };
}

const torqueText = (torque: NewtonMeters): string =>
  formatQuantity(torque, { unit: "N·m", significantDigits: 3 });

/** A stud of unknown metal may be brass, which takes least. */
function unknownMetal(thread: Thread, fastening: ParsedFastening, torque: number): string | null {
  if (fastening.strength !== undefined) return null;
  const brass = lookedUp({ table: "nonferrous-maximum", size: thread.nominal, column: "brass" });
  if (brass === null || compareQuoted({ left: torque, right: brass.torque }) <= 0) return null;
  return `Too much for brass: a stud of brass takes at most ${torqueText(brass.torque)} (${basisText(brass.basis)}).`;
}

/** Wherever a ceiling lies below what is printed, or within the tool's room of it, the ceiling is kept and the tool's room lies below it. */
function published(
  thread: Thread,
  fastening: ParsedFastening,
  found: TighteningTorque,
  ceiling: Ceiling | null,
): TorqueToUse {
  const basis = basisText(found.basis);
  if (ceiling !== null && compareQuoted({ left: found.torque, right: ceiling.torque }) > 0) {
    const { torque, kind, cautions } = ceiling;
    const tooMuch = `The stud does not take the ${torqueText(found.torque)} that the table prints for other hardware.`;
    return {
      torque,
      kind,
      low: torque * (1 - TORQUE_TOLERANCE),
      high: torque,
      basis: `${ceiling.basis}, which is less than ${torqueText(found.torque)} of ${basis}`,
      caution: cautionOf(kind === "from preload" ? [...cautions, tooMuch] : cautions),
    };
  }
  const least = found.kind === "minimum";
  const pinched =
    ceiling !== null &&
    compareQuoted({ left: ceiling.torque * (1 - TORQUE_TOLERANCE), right: found.torque }) < 0;
  const room = least ? null : found.torque * (1 + TORQUE_TOLERANCE);
  const capped =
    ceiling !== null && (room === null || compareQuoted({ left: ceiling.torque, right: room }) < 0);
  return {
    torque: found.torque,
    kind: found.kind,
    low: least && !pinched ? found.torque : found.torque * (1 - TORQUE_TOLERANCE),
    high: capped ? ceiling.torque : room,
    basis: [
      least && !pinched ? basis : `${basis}; ${TOLERANCE_TEXT}`,
      ...(capped ? [`at most ${torqueText(ceiling.torque)} by ${ceiling.basis}`] : []),
    ].join("; "),
    caution: cautionOf([...messagesOf(found.warnings), unknownMetal(thread, fastening, found.torque)]),
  };
}

const fromPreload = ({ torque, kind, basis }: Ceiling): TorqueToUse => ({
  torque,
  kind,
  low: torque * (1 - TORQUE_TOLERANCE),
  high: torque,
  basis,
  caution: "No torque of the maker was given and no table held here has this thread.",
});

/** The maker's torque stands, whatever we work out; a reader must know where the two do not go together. */
function ofMaker(makerTorque: NewtonMeters, byStrength: Ceiling | null): TorqueToUse {
  const maker = { torque: makerTorque, source: "torque of the maker, as given in the record" };
  const { torque, kind, basis } = tighteningTorque({ maker });
  const above = byStrength !== null && compareQuoted({ left: torque, right: byStrength.torque }) > 0;
  return {
    torque,
    kind,
    low: torque * (1 - TORQUE_TOLERANCE),
    high: torque * (1 + TORQUE_TOLERANCE),
    basis: `${basis.source}; ${TOLERANCE_TEXT}`,
    caution: above
      ? `By the strength and thread condition of the record the stud takes at most ${torqueText(byStrength.torque)}: check both, and ask the maker before this torque is used.`
      : null,
  };
}

/**
 * The torque to use; `null` where neither maker nor table gives one and the strength is not known. But for the maker's, none is more than
 * share of proof and yielding allow at the lowest nut factor.
 */
export function torqueToUse(
  fastening: ParsedFastening,
  thread: Thread,
  strength: Pascals | null,
  band: NutFactors,
): TorqueToUse | null {
  const byStrength = strength === null ? null : strengthCeiling(thread, strength, band);
  const { makerTorque, condition } = fastening;
  if (makerTorque !== undefined) return ofMaker(makerTorque.value, byStrength);
  const found = placesOf(thread, isBrass(fastening))
    .map(lookedUp)
    .find((one) => one !== null);
  if (found === undefined || found === null) return byStrength === null ? null : fromPreload(byStrength);
  const printed = printedCeiling(thread, fastening);
  // A maximum for dry threads says nothing of lubricated ones, which reach the same preload at a fraction of the torque.
  if (!LUBRICATED.includes(condition))
    return published(thread, fastening, found, lowerOf(byStrength, printed));
  if (printed !== null && byStrength === null) return null;
  const greased = published(thread, fastening, found, byStrength);
  if (byStrength !== null) return greased;
  return { ...greased, caution: cautionOf([greased.caution, SLIPPERY]) };
}
