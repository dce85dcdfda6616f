/** How refusals and warnings read: code, path, names listed. Expected from the slip that the test put in. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import type { ErrorCode } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { errorOf, full, type Loose, pathsOf, put, remove } from "./slips.ts";

describe("what was seen and what is taken", () => {
  const codeAt = (path: string, value: unknown): readonly [ErrorCode, string] => {
    const record = full();
    if (value === undefined) remove(record, path);
    else put(record, path, value);
    const [first] = errorOf(record).issues;
    return [first?.code as ErrorCode, first?.message ?? ""];
  };

  it.each([
    ["nameplate.power", "", "missing"],
    ["nameplate.power", undefined, "missing"],
    ["nameplate.power", -60_000, "out-of-range"],
    ["nameplate.power", Number.NaN, "not-a-number"],
    ["nameplate.power", "60 kg", "wrong-type"],
    ["asFound.ohms.0.reads", "7,9 Ω", "ambiguous"],
    ["asFound.ohms.0.reads", Number.POSITIVE_INFINITY, "not-a-number"],
    ["instruments.ohmmeter.leads.shorted", "OL", "out-of-range"],
    ["wiring.banks.0.connection", "zigzag", "unknown-name"],
    ["wiring.banks.0.elementsInParallel", 1.5, "out-of-range"],
    ["instruments.ohmmeter.ofReading", 0.9, "out-of-range"],
    ["colour", "red", "unknown-field"],
    ["title", "   ", "missing"],
  ] as const)("%s = %s is %s", (path, value, code) => {
    const [seen, message] = codeAt(path, value);
    expect(seen).toBe(code);
    expect(message.startsWith(`${path}: `)).toBe(true);
  });

  it("tells how to write an open reading", () => {
    expect(codeAt("asFound.ohms.0.reads", Number.POSITIVE_INFINITY)[1]).toContain('"OL"');
  });

  it("lists the names there are", () => {
    expect(codeAt("wiring.banks.0.connection", "zigzag")[1]).toContain("star, delta, wye");
    expect(codeAt("wiring.banks.0.elementsInParallel", 1.5)[1]).toContain("a whole number");
    expect(codeAt("asFound.ohms.0.to", "S-C")[1]).toContain("S-A");
    expect(codeAt("asFound.ohms.0.alone", "C")[1]).toContain("A, A-L1");
  });
});

describe("a record whose fields are right but do not fit together", () => {
  it("names every wrong node, branch and repeated joint at once, and the missing meter with them", () => {
    const record = full() as unknown as Loose;
    delete (record["instruments"] as Loose)["ohmmeter"];
    put(record, "asFound.ohms.0.from", "L4");
    put(record, "asFound.ohms.1.alone", "Z");
    put(record, "asFound.ohms.2.to", "L3");
    put(
      record,
      "asFound.joints",
      ["J1", "J1", "J1"].map((id) => ({ id, drop: "1 mV", current: "10 A" })),
    );
    expect(pathsOf(record).sort()).toEqual(
      [
        "asFound.joints.1.id",
        "asFound.joints.2.id",
        "instruments.ohmmeter",
        "asFound.ohms.0.from",
        "asFound.ohms.1.alone",
        "asFound.ohms.2.to",
      ].sort(),
    );
  });

  it("wants the meter's last digit once, not for every plain number", () => {
    const record = full();
    remove(record, "instruments.ohmmeter.resolution");
    put(record, "asFound.ohms.0.reads", 7.62);
    expect(pathsOf(record)).toEqual(["instruments.ohmmeter.resolution"]);
  });

  it("never assumes tied or separate star points", () => {
    const record = full();
    remove(record, "wiring.starPoints");
    expect(pathsOf(record)).toEqual(["wiring.starPoints"]);
  });

  it("refuses three voltages that make no triangle", () => {
    const record = full();
    put(record, "supply.v12", "1000 V");
    const [first] = errorOf(record).issues;
    expect(first?.path.startsWith("supply")).toBe(true);
  });
});

describe("what looks odd but is legal", () => {
  const warnings = (change: (record: BenchRecord) => void): readonly string[] => {
    const record = full();
    change(record);
    return assessModule(record).warnings.map(({ path, code }) => `${code} ${path}`);
  };

  it("is silent about a sound record", () => {
    expect(warnings(() => undefined)).toEqual([]);
  });

  it("36 W for a three-phase module: kilowatts typed where watts are taken", () => {
    expect(warnings((record) => put(record, "nameplate.power", 36))).toContain("suspicious nameplate.power");
  });

  it("277 V line to line where the plate says 480 V: a voltage to neutral", () => {
    const record = full();
    for (const name of ["v12", "v23", "v31"]) put(record, `supply.${name}`, "277 V");
    const { warnings: found } = assessModule(record);
    expect(found.map(({ path }) => path)).toEqual(["supply.v12", "supply.v23", "supply.v31"]);
    expect(found[0]?.message).toContain("to neutral");
  });

  it("leads that the readings ask to be below zero", () => {
    const record: BenchRecord = {
      ...full(),
      instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: "unknown" } },
      wiring: { banks: [{ id: "A", connection: "star" }] },
      asFound: {
        ohms: [
          ["L1", "S", "7.50 Ω"],
          ["L2", "S", "7.50 Ω"],
          ["L3", "S", "7.50 Ω"],
          ["L1", "L2", "15.50 Ω"],
          ["L2", "L3", "15.50 Ω"],
          ["L3", "L1", "15.50 Ω"],
        ].map(([from, to, reads]) => ({ from: from!, to: to!, reads: reads! })),
      },
      asLeft: {},
    };
    const { warnings: found } = assessModule(record);
    expect(found.map(({ path }) => path)).toEqual(["instruments.ohmmeter.leads"]);
    expect(found[0]?.message).toContain("cannot be");
  });
});
