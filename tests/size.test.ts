/** Size budgets: one closed form with its checks, and everything that needs neither zod nor decimal.js. */
import { beforeAll, describe, expect, it } from "vitest";
import { SINGLE, SINGLE_BUDGET, type Size, sizes, WHOLE_CEILING } from "../scripts/size.mjs";

let found: Size[] = [];
const of = (what: string): Size => {
  const size = found.find((one) => one.what === what);
  if (size === undefined) throw new Error(`nothing was bundled as ${what}`);
  return size;
};

beforeAll(async () => {
  found = await sizes();
});

describe("what an import weighs", () => {
  it.each(SINGLE.map(({ name }) => name))(
    `%s with its checks stays within ${SINGLE_BUDGET} bytes`,
    (name) => {
      const { code, gzip } = of(name);
      // The checks are in: a bundle that lost them would be small and worthless.
      expect(code).toContain("ElectroheatError");
      expect(gzip).toBeLessThanOrEqual(SINGLE_BUDGET);
    },
  );

  it("every room without zod and decimal.js does not grow; the 40 kB it should weigh are not reached", () => {
    const { code, gzip } = of("electroheat, without tables");
    expect(code).toContain("ElectroheatError");
    expect(gzip).toBeLessThanOrEqual(WHOLE_CEILING);
  });

  it("leaves tables, and nothing but tables, out of that figure", () => {
    const [bare, full] = [of("electroheat, without tables").code, of("electroheat, with tables").code];
    // A key of every table, bare or within JSON text.
    const ofTable = /transcribed\\?"?:/;
    expect(full).toMatch(ofTable);
    expect(bare).not.toMatch(ofTable);
    expect(bare).toMatch(/from"[^"]*\/tables\/[^"]*\.json"/);
  });

  it("the main entry holds neither a schema nor a decimal library", () => {
    const { code } = of("electroheat, with tables");
    expect(code).not.toMatch(/toSD|invalid_type/);
  });
});
