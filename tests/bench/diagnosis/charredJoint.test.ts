/** A joint burnt to carbon conducts a little: tens of ohms to kilohms, no open path. Common practice, no published source. */

import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { asked, bank, firstFaults, pairs, topOf } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 7.385)] };

describe("a joint that reads tens of ohms and more", () => {
  // Two branches and the joint in series, Ohm: the same joint in two of the three readings; 2.5 % is the middle of the tolerance.
  it.each([45, 100, 300, 1000, 1900, 20_000, 90_000])("of %d Ω is found, and is no open element", (joint) => {
    const two = 2 * 7.385 * 1.025 + 0.2;
    const found = diagnose(asked(STAR, pairs([two + joint, two + joint, two])));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)[0]?.kind).toBe("joint");
    expect(topOf(found)[0]?.estimates[0]?.value).toBeCloseTo(joint, -Math.log10(joint / 50));
    const open = found.groups
      .flatMap(({ explanations }) => explanations)
      .filter(({ faults }) => faults.some(({ kind }) => kind === "element open" || kind === "open joint"));
    for (const { probability } of open) expect(probability).toBeLessThan(0.01);
  });

  it("is not looked for where all paths read as sound, open, or a few ohms long", () => {
    for (const long of [15.3, 20, "open"] as const) {
      const found = diagnose(asked(STAR, pairs([long, long, 15.3])));
      const joints = found.groups
        .flatMap(({ explanations }) => explanations)
        .flatMap(({ estimates }) => estimates.filter(({ of }) => of === "joint resistance"));
      for (const { high } of joints) expect(high).toBeLessThanOrEqual(30);
    }
  });
});
