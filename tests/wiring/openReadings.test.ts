/** Insulation above the tester's range beside readings within it: conductances add up, and an open one adds none. */
import { megaohms } from "electroheat/quantity";
import { insulationInParallel } from "electroheat/wiring";
import { expect, it } from "vitest";
import { caught } from "../support/caught.ts";

it("an open reading takes nothing from the group, and a group of open ones is open", () => {
  // 1/(1/2 + 1/5) = 10/7 MΩ, Ohm's law.
  expect(insulationInParallel([megaohms(2), megaohms(5), "open"])).toBeCloseTo(10e6 / 7, 3);
  expect(insulationInParallel(["open", megaohms(3)])).toBe(3e6);
  expect(insulationInParallel(["open", "open"])).toBe("open");
});

it("what a tester shows above its range is refused with what to give instead", () => {
  for (const shown of ["OL", ">550 MΩ", Number.POSITIVE_INFINITY]) {
    const error = caught(() => insulationInParallel([megaohms(2), shown as never]));
    expect(error.argument).toBe("resistances.1");
    expect(error.message).toContain('or "open"');
  }
});
