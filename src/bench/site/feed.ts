/** Conductors, terminals and protection of a module against the edition of the code that its record names. */
import {
  type Amperes,
  type Celsius,
  failAll,
  type Issue,
  isElectroheatError,
  issue,
} from "../../quantity/index.ts";
import {
  cableCapacity,
  DEFERRAL,
  type IecEditionName,
  type NecEdition,
  standardDevice,
} from "../../wiring/index.ts";
import type { FeedAssessment } from "../assessmentTypes.ts";
import type { ParsedFeed, ParsedRecord } from "../record/parsed.ts";
import { iecFeed } from "./feedIec.ts";
import { northAmericanFeed } from "./feedNorthAmerica.ts";

/** The base of most tables of air. */
const AIR = 30 as Celsius;
/** The base of tables of the ground. */
const GROUND = 20 as Celsius;

/** Whether a cable lies in the ground: reference method D, D1, D2. */
const inGround = (installation: string): boolean => installation.startsWith("D");

/** The editions a lookup knows, if it does not know the one asked for; `null` if it does. */
function namesInstead(lookup: () => unknown): string | null {
  try {
    lookup();
    return null;
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return error.issues.find(({ path }) => path === "edition")?.expected ?? null;
  }
}

/** Family of rules of an edition; an edition that neither family has is refused with the names of both. */
function systemOf(
  { edition, installation, insulation }: ParsedFeed,
  issues: Issue[],
): "North America" | "IEC" | null {
  const american = namesInstead(() =>
    standardDevice({ edition: edition as NecEdition, current: 1 as Amperes, direction: "up" }),
  );
  if (american === null) return "North America";
  const iec = namesInstead(() =>
    cableCapacity({
      edition: edition as IecEditionName,
      method: installation,
      loadedConductors: 3,
      insulation,
      material: "copper",
      // At its base temperature an edition need not hold factors for others.
      ambient: inGround(installation) ? GROUND : AIR,
      circuits: 1,
      size: "1 mm²",
    }),
  );
  if (iec === null) return "IEC";
  const expected = `${american} or ${iec}`;
  issues.push(issue({ code: "unknown-name", path: "feed.edition", expected, received: edition }));
  return null;
}

/** Air or ground to correct for, and what to say where the record does not know it. */
function surroundings(
  feed: ParsedFeed,
  ambient: ParsedRecord["ambient"],
): { at: Celsius; caution: string | null } {
  if (inGround(feed.installation)) {
    return { at: GROUND, caution: `The ground is taken at ${GROUND} °C.` };
  }
  if (ambient !== undefined) return { at: ambient.value, caution: null };
  return {
    at: AIR,
    caution: `No ambient in the record: air of ${AIR} °C is taken; near the module it is hotter and the conductor carries less.`,
  };
}

/**
 * Checks the feed of a record by the edition it names; `null` without a feed.
 * @throws ElectroheatError listing editions, materials, installations and sizes that the edition does not know, by path
 */
export function assessFeed(
  { feed, ambient }: Pick<ParsedRecord, "feed" | "ambient">,
  lineCurrent: Amperes | null,
): FeedAssessment | null {
  if (feed === undefined) return null;
  const issues: Issue[] = [];
  const system = systemOf(feed, issues);
  failAll(issues);
  const { at, caution } = surroundings(feed, ambient);
  const question = { feed, lineCurrent, ambient: at, issues };
  const { figures, cautions } = system === "IEC" ? iecFeed(question) : northAmericanFeed(question);
  failAll(issues);
  return {
    edition: feed.edition,
    figures,
    cautions: caution === null ? cautions : [caution, ...cautions],
    deferral: DEFERRAL,
  };
}
