/** What a drop says of a joint by itself. Joints that are bad alike have no good one beside them to be held against. */
import { type ContactMetal, contactVoltageScreen } from "../../joint/index.ts";
import { type Celsius, formatQuantity, type Volts, type Watts } from "../../quantity/index.ts";
import type { JointAssessment, JointContact } from "../assessTypes.ts";

/** Metal beside the spots, no colder than this while current flows: what is too hot here is too hot beside any. */
const COLDEST = 20 as Celsius;
/** The plating that softens first, and the metal under it. */
const PLATING = "tin";
const METAL = "copper";
/** More than a contact can hold: an open joint, or a slip of the unit, which the diagnosis asks about. */
export const NO_CONTACT = 1;

const RULE =
  "A drop that brings the spots of a contact to the softening of copper (about 100 mV on alternating current, the metal beside them at " +
  "20 °C) is too much for any joint, whatever its like show; from the softening of tin (about 30 mV) on it is in doubt. Bar, lead and " +
  "stud between the probes are counted in. R. Holm, from memory: a screen, not a test. The maker's limit, the local code and a licensed " +
  "electrician decide.";

const softening = (voltage: number, metal: ContactMetal) =>
  contactVoltageScreen({ voltage: Math.max(0, voltage) as Volts, reading: "rms", bulk: COLDEST, metal });

/** Spots of the contact by its drop; null where that drop is none of a contact. */
export function contactOf(drop: Volts, halfWidth: number): JointContact | null {
  if (drop >= NO_CONTACT) return null;
  const hot = softening(drop - halfWidth, METAL).softening.verdict === "outside";
  const cool = softening(drop + halfWidth, PLATING).softening.verdict === "within";
  return {
    drop,
    spot: softening(drop, METAL).spot,
    verdict: hot ? "outside" : cool ? "within" : "undecided",
    rule: RULE,
  };
}

/** Whether the drop alone says that a joint is to be opened. */
export const isTooHot = ({ contact }: JointAssessment): boolean => contact?.verdict === "outside";

/** Whether the drop alone keeps a joint from being good. No scan clears it: rises of like joints are graded over the coolest of them. */
export const isWarm = ({ contact }: JointAssessment): boolean => contact?.verdict === "undecided";

const amount = (value: Volts): string => formatQuantity(value, { unit: "V", as: "mV", significantDigits: 3 });

/** The drop and the heat it makes; of a joint whose drop says something by itself. */
export function contactText({ contact, power }: JointAssessment): string {
  const heat = formatQuantity(power as Watts, { unit: "W", significantDigits: 3 });
  return `${amount((contact as JointContact).drop)} and ${heat} in one contact`;
}
