/** The torque to use for a fastening: the maker's, else a published table's, else from the share of proof that is customary. */
import { compareQuoted } from "../../decision/index.ts";
import { type TighteningTorque, type TorqueTable, tightening, tighteningTorque } from "../../joint/index.ts";
import { formatQuantity, isElectroheatError, type NewtonMeters, type Pascals } from "../../quantity/index.ts";
import type { ParsedFastening } from "../record/parsed.ts";
import { basisText, cautionOf, messagesOf } from "./figure.ts";
import type { Thread } from "./threads.ts";

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

/** The greatest torque that a table prints for brass or stainless of this size. */
function greatestOf(thread: Thread, fastening: ParsedFastening): TighteningTorque | null {
  if (thread.form === "metric") return null;
  const column = isBrass(fastening) ? "brass" : isStainless(fastening) ? "stainless18-8" : null;
  return column === null ? null : lookedUp({ table: "nonferrous-maximum", size: thread.nominal, column });
}

const torqueText = (torque: NewtonMeters): string =>
  formatQuantity(torque, { unit: "N·m", significantDigits: 3 });

/** A stud of unknown metal may be brass, which takes least. */
function unknownMetal(thread: Thread, fastening: ParsedFastening, torque: number): string | null {
  if (fastening.strength !== undefined || thread.form === "metric") return null;
  const brass = lookedUp({ table: "nonferrous-maximum", size: thread.nominal, column: "brass" });
  if (brass === null || compareQuoted({ left: torque, right: brass.torque }) <= 0) return null;
  return `Too much for brass: a stud of brass takes at most ${torqueText(brass.torque)} (${basisText(brass.basis)}).`;
}

function published(thread: Thread, fastening: ParsedFastening): TorqueToUse | null {
  const found = placesOf(thread, isBrass(fastening))
    .map(lookedUp)
    .find((one) => one !== null);
  if (found === undefined || found === null) return null;
  const greatest = greatestOf(thread, fastening);
  const basis = basisText(found.basis);
  if (greatest !== null && compareQuoted({ left: found.torque, right: greatest.torque }) > 0) {
    return {
      torque: greatest.torque,
      kind: greatest.kind,
      low: greatest.torque * (1 - TORQUE_TOLERANCE),
      high: greatest.torque,
      basis: `${basisText(greatest.basis)}, which is less than ${torqueText(found.torque)} of ${basis}`,
      caution: cautionOf([
        ...messagesOf(greatest.warnings),
        "Two published tables disagree; the lower torque is taken.",
      ]),
    };
  }
  const least = found.kind === "minimum";
  const pinched =
    greatest !== null &&
    compareQuoted({ left: greatest.torque * (1 - TORQUE_TOLERANCE), right: found.torque }) < 0;
  return {
    torque: found.torque,
    kind: found.kind,
    // A minimum that is also the maximum leaves no room for the tool: the maximum is kept, the tool's room lies below it.
    low: least && !pinched ? found.torque : found.torque * (1 - TORQUE_TOLERANCE),
    high: greatest?.torque ?? (least ? null : found.torque * (1 + TORQUE_TOLERANCE)),
    basis: [
      least && !pinched ? basis : `${basis}; ${TOLERANCE_TEXT}`,
      ...(greatest === null
        ? []
        : [`at most ${torqueText(greatest.torque)} by ${basisText(greatest.basis)}`]),
    ].join("; "),
    caution: cautionOf([...messagesOf(found.warnings), unknownMetal(thread, fastening, found.torque)]),
  };
}

/** The torque whose highest preload just reaches the share of proof that is customary: preload goes with torque. */
function fromPreload(
  thread: Thread,
  strength: Pascals,
  band: { readonly low: number; readonly high: number },
): TorqueToUse {
  const trial = 1 as NewtonMeters;
  const { diameter, stressArea } = thread;
  const { proofShare, proof, proofBasis } = tightening({
    torque: trial,
    diameter,
    stressArea,
    nutFactorLow: band.low,
    nutFactorHigh: band.high,
    strength,
  });
  const torque = (trial * (proof.high as number)) / proofShare.high;
  return {
    torque: torque as NewtonMeters,
    kind: "from preload",
    low: torque * (1 - TORQUE_TOLERANCE),
    high: torque,
    basis: `torque = K·F·d with the lowest nut factor at ${basisText(proofBasis)}; nut factor ${band.low} to ${band.high}`,
    caution: "No torque of the maker was given and no table held here has this thread.",
  };
}

/** The torque to use; `null` where neither maker nor table gives one and the strength is not known. */
export function torqueToUse(
  fastening: ParsedFastening,
  thread: Thread,
  strength: Pascals | null,
  band: { readonly low: number; readonly high: number },
): TorqueToUse | null {
  const { makerTorque } = fastening;
  if (makerTorque !== undefined) {
    const maker = { torque: makerTorque.value, source: "torque of the maker, as given in the record" };
    const { torque, kind, basis } = tighteningTorque({ maker });
    return {
      torque,
      kind,
      low: torque * (1 - TORQUE_TOLERANCE),
      high: torque * (1 + TORQUE_TOLERANCE),
      basis: `${basis.source}; ${TOLERANCE_TEXT}`,
      caution: null,
    };
  }
  return published(thread, fastening) ?? (strength === null ? null : fromPreload(thread, strength, band));
}
