/** What a day's readings name that the module does not have, refused where it stands, with what there is. Voltages by the triangle inequality. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { INSTRUMENTS, star } from "../pool.ts";
import { refused } from "../site/made.ts";

const issues = (record: BenchRecord) =>
  refused(() => assessModule(record)).map(({ code, path }) => [code, path]);
const DAYS = ["asFound", "asLeft"] as const;

describe("places of a day", () => {
  // Far from the plate, so that no line floats beside two live ones.
  const wrong = { v12: "700.0 V", v23: "100.0 V", v31: "100.0 V" };
  const right = { v12: "480.0 V", v23: "480.0 V", v31: "480.0 V" };
  it.each(DAYS)("that the module does not have are refused under that day: %s", (day) => {
    const found = issues(
      star({
        [day]: {
          currents: [
            { at: "L1", reads: "36.1 A" },
            { at: "L4", reads: "36.1 A" },
          ],
          insulation: [
            { from: "L1", reads: "900 MΩ" },
            { from: "X", reads: "900 MΩ" },
          ],
          joints: [{ id: "a", drop: "4.0 mV" }],
        },
      }),
    );
    expect(found).toEqual([
      ["unknown-name", `${day}.currents.1.at`],
      ["unknown-name", `${day}.insulation.1.from`],
      ["missing", `${day}.joints.0.current`],
    ]);
  });
  it("hold voltages that close no triangle, where those were written", () => {
    const paths = (more: Partial<BenchRecord>) => issues(star(more)).map(([, path]) => path);
    const [at] = paths({ supply: wrong });
    expect(at).toMatch(/^supply\.v/);
    for (const day of DAYS) {
      expect(paths({ [day]: { supply: wrong } })).toEqual([`${day}.${at}`]);
      expect(paths({ supply: right, [day]: { supply: wrong } })).toEqual([`${day}.${at}`]);
    }
  });
});

describe("ohms", () => {
  const ohms = (from: string, to: string, more: Partial<BenchRecord> = {}) =>
    refused(() => assessModule(star({ asFound: { ohms: [{ from, to, reads: "7.68 Ω" }] }, ...more })));
  it("between a node and itself, or one that is not there, are refused by their kind", () => {
    expect(ohms("L1", "L1")[0]).toMatchObject({ code: "inconsistent", path: "asFound.ohms.0.to" });
    expect(ohms("L1", "X")[0]).toMatchObject({ code: "unknown-name", path: "asFound.ohms.0.to" });
    expect(ohms("X", "S")[0]).toMatchObject({ code: "unknown-name", path: "asFound.ohms.0.from" });
  });
  it("to a star point on the neutral are sent there, under whatever name of it", () => {
    const neutral: BenchRecord["wiring"] = { banks: [{ id: "A", connection: "star" }], neutral: "connected" };
    const told = (to: string) => {
      const [only] = ohms("L1", to, { wiring: neutral });
      expect(only).toMatchObject({ code: "unknown-name", path: "asFound.ohms.0.to" });
      return only?.message.split("expected ")[1];
    };
    const nodes = "one of L1, N, L2, L3";
    for (const name of ["S", "S-A", "s", "star point"])
      expect(told(name)).toBe(`${nodes}; a star point on the neutral is N`);
    // What is no star point by its name is not taken for one.
    for (const name of ["X", "bus", "PES"]) expect(told(name)).toBe(nodes);
  });
});

describe("joints as drawn", () => {
  const joints = (...list: NonNullable<BenchRecord["wiring"]["joints"]>) =>
    issues(
      star({ wiring: { banks: [{ id: "A", connection: "star" }], joints: list }, instruments: INSTRUMENTS }),
    );
  it("are at a node that there is, before branches that end on it", () => {
    expect(() => joints({ id: "stud", at: "L1", behind: ["A-L1"] })).toThrow("was not refused");
    expect(joints({ id: "stud", at: "L4" })).toEqual([["unknown-name", "wiring.joints.0.at"]]);
    expect(joints({ id: "stud", at: "L1", behind: ["A-L9"] })).toEqual([
      ["unknown-name", "wiring.joints.0.behind.0"],
    ]);
    expect(joints({ id: "stud", at: "L1", behind: ["A-L2"] })).toEqual([
      ["unknown-name", "wiring.joints.0.behind.0"],
    ]);
  });
});
