/** Datasets that say little, or the same twice: answered from what they say, or refused by name. */
import {
  type AlloyDataset,
  alloyResistivity,
  NICR_80_20_GB,
  temperatureFromFactor,
  temperaturesFromFactor,
} from "electroheat/material";
import { celsius } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const table = NICR_80_20_GB.temperatureFactor as NonNullable<AlloyDataset["temperatureFactor"]>;
const dataset = (temperatures: readonly number[], values: readonly number[]): AlloyDataset => ({
  ...NICR_80_20_GB,
  temperatureFactor: { ...table, temperatures: temperatures.map(celsius), values },
});

describe("a temperature from Ct", () => {
  it("of a table with one row is that row, where nothing rises or falls", () => {
    const one = dataset([20], [1]);
    const { solutions } = temperaturesFromFactor({ dataset: one, factor: 1 });
    expect(solutions).toEqual([{ from: 20, to: 20, slope: "level" }]);
    expect(temperatureFromFactor({ dataset: one, factor: 1 })).toBe(20);
  });

  it("that stands level is refused with the whole of it; one that comes twice with both", () => {
    // Source: the rows as given, straight lines between them: 1.1 from 200 °C to 400 °C; 1.05 at 100 °C and at 500 °C.
    const level = dataset([0, 200, 400, 600], [1, 1.1, 1.1, 1]);
    const refused = (factor: number) => caught(() => temperatureFromFactor({ dataset: level, factor }));
    expect(refused(1.1).code).toBe("not-identifiable");
    expect(refused(1.1).message).toContain("200 to 400 °C");
    expect(refused(1.05).message).toContain("100 °C, 500 °C");
  });
});

it("a resistivity of no dataset says that there is none", () => {
  const error = caught(() => alloyResistivity({ dataset: undefined as never, temperature: celsius(20) }));
  expect([error.code, error.argument]).toEqual(["missing", "dataset"]);
  const bare = { id: "bare", alloy: "NiCr 80/20" } as const;
  const other = caught(() => alloyResistivity({ dataset: bare, temperature: celsius(20) }));
  expect([other.code, other.argument]).toEqual(["missing", "dataset.resistivity"]);
  expect(other.message).toContain("bare has none");
});
