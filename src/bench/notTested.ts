/** What a record holds no test of. */
import type { FeedAssessment } from "./assessmentTypes.ts";
import { DAYS } from "./day/readings.ts";
import type { ParsedReadings, ParsedRecord } from "./record/parsed.ts";
import { unansweredFeed } from "./site/checklist.ts";

/** What nobody has tested yet, in the order of the sheet. */
export function notTested(record: ParsedRecord, feed: FeedAssessment | null): readonly string[] {
  const days = DAYS.flatMap((day) => record[day] ?? []);
  const any = (holds: (day: ParsedReadings) => boolean): boolean => days.some(holds);
  const has = (name: "ohms" | "currents" | "insulation"): boolean =>
    any((day) => (day[name] ?? []).length > 0);
  const joint = (field: "drop" | "rise"): boolean =>
    any(({ joints = [] }) => joints.some((one) => one[field] !== undefined));
  const lines: readonly (readonly [boolean, string])[] = [
    [has("ohms"), "resistance of the branches"],
    [record.tolerance !== undefined, "verdicts on the branches: the record gives no tolerance"],
    [record.nameplate !== undefined, "what the plate promises: the record gives no nameplate"],
    [joint("drop"), "joints: no millivolt drops in the record"],
    [
      record.supply !== undefined || any(({ supply }) => supply !== undefined),
      "supply voltages at the module",
    ],
    [has("insulation"), "insulation resistance to the frame"],
    [has("currents"), "line currents at full conduction"],
    [joint("rise"), "thermal scan of the terminals with current flowing"],
    [(record.hardware ?? []).some(({ applied }) => applied !== undefined), "torque of the terminal hardware"],
    [
      record.feed !== undefined && unansweredFeed(feed?.figures ?? []).length === 0,
      "conductors, terminals and protection of the feed",
    ],
    [(record.asLeft?.ohms ?? []).length > 0, "resistance of the branches as left"],
    [(record.asLeft?.currents ?? []).length > 0, "line currents as left"],
    [
      !joint("rise") || (record.asLeft?.joints ?? []).some(({ rise }) => rise !== undefined),
      "thermal scan as left",
    ],
  ];
  return lines.filter(([tested]) => !tested).map(([, what]) => what);
}
