/** The example's three invented sheets come out as they were made up: one element, one of three twins, fuse or element. */
import { expect, it, vi } from "vitest";

it("what-is-wrong tells the three sheets, from easy to ambiguous", async () => {
  const printed: string[] = [];
  const log = vi.spyOn(console, "log").mockImplementation((text: string) => void printed.push(text));
  try {
    await import("../../../examples/what-is-wrong.mjs");
  } finally {
    log.mockRestore();
  }
  const [easy, middling, ambiguous] = printed.join("\n").split(/\n\n\n(?=\S)/) as [string, string, string];
  expect(easy).toMatch(/over 99\.9 % together.*\n\s+\d+ %: element B-L2 open/);
  // The side between the two low lines and the high pair; which of its three elements the lines cannot show.
  expect(middling).toContain("over 99.9 %: one of elements A-L1L2-1, A-L1L2-2 and A-L1L2-3 open");
  expect(middling).toMatch(/NEXT MEASUREMENT\n {2}- Isolated, locked out and proved dead: lift the links/);
  // Priors of 0.02, 0.01 and three joints of 0.003: 0.0204, 0.0101 and 0.0030 each to odds, no coin toss.
  expect(ambiguous).toMatch(
    /52 %: element A-L1 open\n\s+26 %: no supply on L1\n\s+7\.6 %: open circuit in the joint/,
  );
  expect(ambiguous).toMatch(
    /NEXT MEASUREMENT\n {2}- Isolated, locked out and proved dead: links in, measure ohms/,
  );
});
