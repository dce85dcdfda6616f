/**
 * Evidence of faults under instruments so good that the likelihood is a needle: the integral over the fault's parameter
 * against a grid of many thousands of points of the same likelihood, so that only the integration is on trial.
 */
import { describe, expect, it } from "vitest";
import { infer } from "../../../src/bench/diagnosis/inference/infer.ts";
import { questionOf } from "../../../src/bench/diagnosis/likelihood/model.ts";
import { RANGE } from "../../../src/bench/diagnosis/question/settings.ts";
import { asked, bank, pairs } from "./sheets.ts";

const MICROHMMETER = { ofReading: 1e-4, digits: 1, resolution: 1e-4, leads: "taken off" } as const;

/** Star of 12 Ω with a joint of so many ohms on L2, all elements at the middle of their tolerance. */
const sheet = (joint: number): ReturnType<typeof pairs> => pairs([24 + joint, 24 + joint, 24]);

describe("a needle of a likelihood", () => {
  it.each([0.0031, 0.47, 18.8787])("is integrated as a fine grid does, joint of %f Ω", (joint) => {
    const question = questionOf(
      asked({ banks: [bank("A", "star", 12)] }, sheet(joint), {
        instruments: { ohmmeter: MICROHMMETER },
        spread: { common: { low: -1e-4, high: 1e-4 }, individual: 1e-4 },
      }),
    );
    const finding = infer(question).find(({ finding: one }) =>
      one.names.list().some(({ faults }) => faults.length === 1 && JSON.stringify(faults).includes('"L2"')),
    )?.finding;
    if (finding === undefined) throw new Error("joint L2 is not on the list");
    const [low, high] = RANGE.joint;
    const count = 40_000;
    const logs = Array.from({ length: count }, (_, i) =>
      finding.visit([low * (high / low) ** ((i + 0.5) / count)]),
    );
    const most = logs.reduce((a, b) => Math.max(a, b));
    const grid = most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / count);
    expect(Math.abs(finding.log - grid)).toBeLessThan(0.1);
  });
});
