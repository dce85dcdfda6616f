/**
 * A branch on another line than drawn, told from ohms and amps. What the module then shows is worked out by hand: series and parallel
 * resistances, Ohm.
 */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const SUPPLY = volts3([480, 480, 480]);
const R = 7.68;
const LEADS = 0.25;
const STAR = { banks: [bank("A", "star", R)] };

/** The lines the first faults of a group say a branch is on. */
const landings = (found: ReturnType<typeof diagnose>): readonly string[] =>
  topOf(found).flatMap(({ faults: [fault, ...more] }) =>
    fault?.kind === "mis-landed" && more.length === 0 ? [`${fault.branch} on ${fault.on}`] : [],
  );

describe("a star whose third branch lies beside the first", () => {
  // Two side by side and one in series: 1.5 R between L1 and L2; nothing is left on L3.
  const ohms = pairs([1.5 * R + LEADS, "open", "open"]);

  it.each(["single", "pairs"])(
    "by ohms between the lines could as well lie beside the second (%s)",
    (depth) => {
      const found = diagnose(asked(STAR, ohms, { depth }));
      expect(found.outcome).toBe("explained");
      expect(landings(found)).toEqual(["A-L3 on L1", "A-L3 on L2"]);
    },
  );

  it("is told by the ohms to the star point: half of R on L1", () => {
    const toStar = [R / 2, R].map((reads, i) =>
      reading({ kind: "resistance", from: `L${i + 1}`, to: "S", reads: reads + LEADS }),
    );
    expect(landings(diagnose(asked(STAR, [...ohms, ...toStar])))).toEqual(["A-L3 on L1"]);
  });

  it("draws 480 V over 1.5 R = 41.7 A in two lines and none in the third", () => {
    const found = diagnose(asked(STAR, [...amps([41.7, 41.6, 0]), ...SUPPLY]));
    expect(landings(found)).toEqual(["A-L3 on L1", "A-L3 on L2"]);
  });
});

it("a delta branch whose end lies on the wrong line: two side by side on one pair, three in series round the other", () => {
  const r = 23;
  const found = diagnose(
    asked({ banks: [bank("A", "delta", r)] }, pairs([1.5 * r + LEADS, r + LEADS, r / 2 + LEADS])),
  );
  expect(firstFaults(found)).toEqual([{ kind: "mis-landed", branch: "A-L1L2", drawn: "L2", on: "L3" }]);
});

it("behind a joint of its own the joint moves with it", () => {
  const module = {
    ...STAR,
    joints: [{ id: "J3", at: "L3", behind: ["A-L3"], resistance: 1e-4 }],
  };
  const found = diagnose(asked(module, pairs([1.5 * R + LEADS, "open", "open"])));
  expect(landings(found)).toEqual(["A-L3 on L1", "A-L3 on L2"]);
});

it("one of two banks: the other still ties all lines", () => {
  const module = { banks: [bank("A", "star", R), bank("B", "star", R)], starPoints: "separate" };
  const alone = (name: string, reads: readonly (number | "open")[]) =>
    pairs(reads).map((one) => reading({ ...one, only: [name] }));
  const found = diagnose(
    asked(module, [
      ...alone("A", [2 * R + LEADS, 2 * R + LEADS, 2 * R + LEADS]),
      ...alone("B", ["open", 1.5 * R + LEADS, "open"]),
    ]),
  );
  expect(landings(found)).toEqual(["B-L1 on L2", "B-L1 on L3"]);
});

it("what one fault explains is not said to be a wire on the wrong line", () => {
  for (const reads of [
    [15.6, 15.6, 15.6],
    ["open", 15.6, "open"],
    [17.6, 15.6, 17.6],
  ] as const) {
    const { groups } = diagnose(asked(STAR, pairs(reads)));
    const kinds = groups
      .flatMap(({ explanations }) => explanations)
      .flatMap(({ faults }) => faults.map(({ kind }) => kind));
    expect(kinds).not.toContain("mis-landed");
  }
});
