/**
 * A coil that is broken and leaks: damp magnesia or soot across the gap shows a meter hundreds of kilohms and more where a dry gap
 * shows nothing (common practice, no published source). What is expected is worked by hand: the leak stands in series with the rest.
 */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { asked, bank, firstFaults, pairs, reading } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 7.2)] };
const R = 7.2 * 1.025;

describe("a path of 150 kΩ to 20 MΩ", () => {
  it.each([1.5e5, 2e5, 2e6, 2e7])("through branch A-L1 is an open branch: %d Ω", (leak) => {
    const found = diagnose(asked(STAR, pairs([leak, 2 * R, leak])));
    expect(found.outcome).toBe("explained");
    expect(found.groups[0]?.explanations.some(({ faults }) => faults[0]?.kind === "element open")).toBe(true);
    const alone = (["L1", "L2", "L3"] as const).map((line) =>
      reading({
        kind: "resistance",
        from: line,
        to: "S",
        only: [`A-${line}`],
        reads: line === "L1" ? leak : R,
      }),
    );
    expect(firstFaults(diagnose(asked(STAR, alone)))).toContainEqual({
      kind: "element open",
      element: "A-L1",
    });
  });

  it("weighs like the same break read as open", () => {
    const kinds = (reads: number | "open"): string[] =>
      diagnose(asked(STAR, pairs([reads, 2 * R, reads]))).groups[0]?.explanations.map(({ faults }) =>
        JSON.stringify(faults),
      ) ?? [];
    expect(kinds(3e6)).toEqual(kinds("open"));
  });

  it("does not make an open branch of one that reads kilohms", () => {
    expect(firstFaults(diagnose(asked(STAR, pairs([5e3, 2 * R, 5e3]))))[0]?.kind).toBe("joint");
  });
});
