/** Ohms read with the source's windings still on the lines: tenths of an ohm between lines. Common practice, no published source. */
import { diagnose } from "electroheat/bench";
import { expect, it } from "vitest";
import { asked, bank, firstFaults, pairs, reading } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 7.68)] };
const told = (module: object, readings: Parameters<typeof asked>[1], more: object = {}): string[] =>
  diagnose(asked(module, readings, more)).warnings.flatMap(({ message }) =>
    /feed still/.test(message) ? [message] : [],
  );

it("all readings between lines far below the module ask whether the feed is still connected, unless that has been found", () => {
  // With windings of next to nothing between the lines the three branches lie side by side: 7.68 Ω/3 = 2.56 Ω to the star point.
  const toStar = ["L1", "L2", "L3"].map((from) =>
    reading({ kind: "resistance", from, to: "S", reads: 2.66 }),
  );
  const readings = [...toStar, ...pairs([0.21, 0.21, 0.22])];
  const [one, ...others] = told(STAR, readings, { priors: { feedConnected: 0 } });
  expect(one).toMatch(/^readings\.3\.reads: .* 0\.22 Ω .* 16 Ω/);
  expect(others).toEqual([]);
  expect(told(STAR, readings)).toEqual([]);
  expect(firstFaults(diagnose(asked(STAR, readings)))).toEqual([{ kind: "feed connected" }]);
});

it.each([
  ["a sound module", STAR, [15.4, 15.4, 15.4]],
  ["one bolted branch", STAR, [7.9, 15.4, 7.9]],
  ["one reading far below", STAR, [0.2, 15.4, 15.4]],
  ["an open line", STAR, ["open", 0.2, "open"]],
  ["a module of next to no ohms", { banks: [bank("A", "delta", 1.5)] }, [0.2, 0.2, 0.2]],
] as const)("%s does not", (_, module, reads) => {
  expect(told(module, pairs(reads))).toEqual([]);
});

it("a single reading between lines does not", () => {
  expect(told(STAR, [reading({ kind: "resistance", from: "L1", to: "L2", reads: 0.2 })])).toEqual([]);
});
