/** Parts that the readings prove at the least. */
import type { BranchAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessBars } from "../../../src/bench/site/bars.ts";
import { partsList } from "../../../src/bench/site/parts.ts";
import { branch, day, joint, read, rise } from "./made.ts";

const record = () =>
  read({
    wiring: {
      banks: [
        { id: "A-1", connection: "star", elementsInParallel: 3, elementsInSeries: 2 },
        { id: "B", connection: "star" },
      ],
      starPoints: "separate",
    },
    hardware: [
      { id: "line studs", thread: "M6", count: 6, renew: true },
      { id: "star studs", thread: "M6", count: 3 },
    ],
    bars: [
      {
        id: "star bars",
        count: 2,
        studs: 3,
        pitch: "45 mm",
        overhang: "12 mm",
        width: "20 mm",
        thickness: "3 mm",
      },
    ],
  });
const quantities = (...branches: readonly BranchAssessment[]) =>
  partsList({ record: { wiring: record().wiring }, asFound: day(branches), cuts: [] }).map(
    ({ part, quantity }) => [part, quantity],
  );

describe("parts to bring", () => {
  it("count elements by branch, at the least", () => {
    expect(
      quantities(
        branch("A-1-L1", "outside", 2),
        branch("A-1-L2", "open"),
        branch("A-1-L3", "shorted"),
        branch("B-L1", "open"),
        branch("B-L2", "high"),
        branch("B-L3", "outside"),
      ),
    ).toEqual([
      ["element for A-1-L1", 2],
      // Three strings: each is broken somewhere.
      ["element for A-1-L2", 3],
      // The two elements of one string.
      ["element for A-1-L3", 2],
      ["element for B-L1", 1],
      ["element for B-L2", 1],
      ["element for B-L3", 1],
    ]);
    expect(
      quantities(branch("B-L1", "sound"), branch("B-L2", "undecided"), branch("B-L3", "not known")),
    ).toEqual([]);
  });

  it("say that a joint may be what is broken", () => {
    const [only] = partsList({ record: record(), asFound: day([branch("B-L1", "open")]), cuts: [] });
    expect(only?.reason).toContain("a joint or a jumper bar may be what is broken");
  });

  it("hold joints that stand out, hardware to renew and bars to cut", () => {
    const joints = [
      joint("S1", { comparison: "investigate" }),
      joint("S2", { rise: rise(3, 3) }),
      joint("S3", {}),
    ];
    const parts = partsList({
      record: record(),
      asFound: day([], { joints }),
      cuts: assessBars(record(), null),
    });
    expect(parts.map(({ part, quantity }) => [part.split(",")[0], quantity])).toEqual([
      ["nuts and washers for joint S1", 1],
      ["nuts and washers for joint S2", 1],
      ["M6 hardware", 6],
      ["jumper bar", 2],
    ]);
    expect(parts[1]?.reason).toContain("level 3");
    // 2 × 45 + 2 × 12 mm.
    expect(parts[3]?.reason).toContain("114 mm");
  });

  it("need not be brought for what was read sound after the repair", () => {
    const asFound = day([branch("B-L1", "open"), branch("B-L2", "open"), branch("B-L3", "outside")]);
    const asLeft = day([branch("B-L1", "sound"), branch("B-L2", "unjudged")]);
    const parts = partsList({ record: { wiring: record().wiring }, asFound, asLeft, cuts: [] });
    expect(parts.map(({ part }) => part)).toEqual(["element for B-L2", "element for B-L3"]);
  });

  it("are none where the record has no readings, hardware or bars", () => {
    expect(partsList({ record: read({}), asFound: null, cuts: [] })).toEqual([]);
  });
});
