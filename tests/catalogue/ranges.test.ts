/**
 * What a note says of an input is what the function does: outside its range the function itself refuses, on its ends it does not; a
 * default is what it takes when the input is left out. The functions are called directly, past the catalogue's own checks.
 */
import { type CatalogueEntry, type CatalogueInput, catalogueEntries } from "electroheat/catalogue";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { goodInputs } from "./examples.ts";
import { ECHOED, NARROWED } from "./exceptions.ts";

const rooms: Record<string, Record<string, (...args: unknown[]) => unknown>> = {};
for (const room of new Set(catalogueEntries().map((entry) => entry.room))) {
  rooms[room] = await import(`../../src/${room}/index.ts`);
}

function call({ room, name, takes, declared }: CatalogueEntry, inputs: Record<string, unknown>): unknown {
  const run = rooms[room]?.[name] as (...args: unknown[]) => unknown;
  return takes === "fields" ? run(inputs) : run(...declared.map((one) => inputs[one]));
}

/** Code and argument of the error that a call ends in; undefined for an answer. */
function refusal(
  entry: CatalogueEntry,
  inputs: Record<string, unknown>,
): { code: string; argument: string } | undefined {
  try {
    call(entry, inputs);
    return undefined;
  } catch (error) {
    if (isElectroheatError(error)) return { code: error.code, argument: error.argument };
    return { code: String(error), argument: "" };
  }
}

/** The next number up or down that a double can hold, or a whole number for a count. */
const beside = (value: number, sign: 1 | -1, is: string | undefined): number =>
  is === "count" ? value + sign : value === 0 ? sign * 1e-12 : value + sign * Math.abs(value) * 1e-9;

interface Probe {
  readonly value: number;
  readonly allowed: boolean;
}

function probes({ min, max, above, below, is }: CatalogueInput): Probe[] {
  const list: Probe[] = [];
  if (min !== undefined)
    list.push({ value: min, allowed: true }, { value: beside(min, -1, is), allowed: false });
  if (max !== undefined)
    list.push({ value: max, allowed: true }, { value: beside(max, 1, is), allowed: false });
  if (above !== undefined) list.push({ value: above, allowed: false });
  if (below !== undefined) list.push({ value: below, allowed: false });
  if (is === "count") list.push({ value: (min ?? 1) + 0.5, allowed: false });
  return list;
}

const entries = catalogueEntries();
const numbers = entries.flatMap((entry) =>
  entry.inputs
    .filter((input) => probes(input).length > 0)
    .map((input) => [`${entry.id} ${input.name}`, entry, input] as const),
);

describe("ranges", () => {
  it("are stated", () => {
    expect(numbers.length).toBeGreaterThan(entries.length / 2);
  });

  it.each(numbers)("%s", (label, entry, input) => {
    const good = goodInputs(entry.id) as Record<string, unknown>;
    for (const { value, allowed } of probes(input)) {
      const found = refusal(entry, { ...good, [input.name]: value });
      if (!allowed) {
        expect(found?.code, `${label} = ${value} should be refused`).toBe("out-of-range");
        expect(found?.argument.split(".")).toContain(input.name);
      } else if (NARROWED[label] === undefined) {
        const blamed = found?.code === "out-of-range" && found.argument === input.name;
        expect(blamed, `${label} = ${value} should be allowed: ${JSON.stringify(found)}`).toBe(false);
      }
    }
  });
});

const defaults = entries.flatMap((entry) =>
  entry.inputs
    .filter((input) => input.default !== undefined)
    .map((input) => [`${entry.id} ${input.name}`, entry, input] as const),
);

describe("defaults", () => {
  it.each(defaults)("%s", (label, entry, input) => {
    expect(input.optional).toBe(true);
    const { [input.name]: _left, ...without } = goodInputs(entry.id) as Record<string, unknown>;
    const said = call(entry, { ...without, [input.name]: input.default });
    const left = call(entry, without);
    const echo = ECHOED[label];
    if (echo === undefined) return expect(said).toEqual(left);
    // What the result repeats of its input differs, of course.
    expect({ ...(said as object), [echo]: null }).toEqual({ ...(left as object), [echo]: null });
  });
});
