/**
 * Fits and questions at the edge of what is asked: only OL, too many choices, more elements than are weighed.
 *
 * Sources: Kirchhoff's laws, worked out beside each check; for words and refusals, what was asked.
 */
import { assessModule, type BenchRecord, fitTerminalReadings, type TerminalOhms } from "electroheat/bench";
import { buildModule, type Network, terminalResistance, withResistance } from "electroheat/circuit";
import { isElectroheatError, ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const starNetwork = (banks: number): Network =>
  buildModule({
    banks: Array.from({ length: banks }, (_, i) => ({
      id: "ABCDEFGH".charAt(i),
      connection: "star" as const,
      elementResistance: ohms(8),
    })),
    ...(banks > 1 ? { starPoints: "separate" as const } : {}),
  }).network;
const open = (from: string, to: string, only: readonly string[]): TerminalOhms => ({
  from,
  to,
  reads: "open",
  only,
});

describe("a fit", () => {
  it("of one OL alone knows that branch and nothing else", () => {
    const found = fitTerminalReadings({
      network: starNetwork(1),
      readings: [open("L1", "S", ["A-L1"])],
      leads: "unknown",
    });
    expect(found.outcome).toBe("partly");
    expect(found.branches.map(({ resistance }) => resistance)).toEqual(["open", null, null]);
    expect(found.notIdentifiable).toEqual(["A-L2", "A-L3", "leads"]);
  });
  it("of OL at every branch is solved, for nothing finite is left to know but the leads", () => {
    const found = fitTerminalReadings({
      network: starNetwork(1),
      readings: ["L1", "L2", "L3"].map((line) => open(line, "S", [`A-${line}`])),
      leads: "taken off",
    });
    expect(found.outcome).toBe("solved");
    expect(found.branches.every(({ resistance }) => resistance === "open")).toBe(true);
  });
  it("of more choices of open branches than anyone reads names none of them", () => {
    // OL between two lines of eight separate stars, each alone: one of two branches in each, 2^8 choices of eight open branches.
    const names = [..."ABCDEFGH"];
    const found = fitTerminalReadings({
      network: starNetwork(8),
      readings: names.map((id) => open("L1", "L2", [`${id}-L1`, `${id}-L2`])),
      leads: "taken off",
    });
    expect([found.outcome, found.openChoices]).toEqual(["partly", []]);
    expect(found.branches.every(({ resistance }) => resistance === null)).toBe(true);
  });
  it("of a star beside a delta with all links in leaves open what three readings cannot share out, whatever is wrong", () => {
    const plan = {
      banks: [
        { id: "A", connection: "star" as const, elementResistance: ohms(7.38) },
        { id: "B", connection: "delta" as const, elementResistance: ohms(22.15) },
      ],
    };
    const { network } = buildModule(plan);
    const pairs = [
      ["L1", "L2"],
      ["L2", "L3"],
      ["L3", "L1"],
    ] as const;
    // Six unknowns, three readings: which of them is wrong is not to be had, and each of these did once go round in circles.
    for (const id of ["A-L1", "B-L1L2"]) {
      for (const resistance of ["open" as const, ohms(0), ohms(0.3), ohms(44), ohms(20_000)]) {
        const faulty = withResistance({ network, id, resistance });
        const readings = pairs.map(([from, to]) => ({
          from,
          to,
          reads: terminalResistance({ network: faulty, from, to }),
          standardUncertainty: ohms(0.03),
        }));
        const found = fitTerminalReadings({ network, readings, leads: "taken off" });
        expect([id, resistance, found.outcome]).toEqual([id, resistance, "partly"]);
        // What the fit ends with agrees with what was read: Kirchhoff's laws gave the readings.
        for (const { residual } of found.readings) expect(Math.abs(residual ?? 0)).toBeLessThan(1);
      }
    }
  });
  it.each([["open" as const], [ohms(0)]])("cannot start from %s", (resistance) => {
    const network = withResistance({ network: starNetwork(1), id: "A-L2", resistance });
    try {
      fitTerminalReadings({ network, readings: [open("L1", "S", ["A-L1"])], leads: "unknown" });
      expect.unreachable("was not refused");
    } catch (error) {
      if (!isElectroheatError(error)) throw error;
      expect([error.code, error.argument]).toEqual(["inconsistent", "unknown"]);
      expect(error.message).toContain("A-L2");
    }
  });
});

const ohmmeter = { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: "taken off" } as const;
const record = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented module",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter },
  tolerance: { low: -0.05, high: 0.1 },
  ...more,
});

describe("a question that is not put", () => {
  it("for more elements than are weighed says how many there are", () => {
    // 3 branches of 21 strings.
    const { diagnosis, assumptions } = assessModule(
      record({
        wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 21 }] },
        asFound: { ohms: ["L1", "L2", "L3"].map((from) => ({ from, to: "S", reads: "7.68 Ω" })) },
      }),
    );
    expect(diagnosis).toBeNull();
    expect(assumptions.join(" ")).toContain(
      "No diagnosis: 63 elements are more than the 60 that are weighed here.",
    );
  });
  it("for amps without their clamp, beside volts alone", () => {
    const { diagnosis, assumptions } = assessModule(
      record({
        instruments: { voltmeter: { ofReading: 0.005, digits: 2 } },
        asFound: {
          supply: { v12: "480 V", v23: "480 V", v31: "480 V" },
          currents: ["L1", "L2", "L3"].map((at) => ({ at, reads: "36.1 A" })),
        },
      }),
    );
    expect(diagnosis).toBeNull();
    expect(assumptions.join(" ")).toContain("Left out of the diagnosis: clamp readings");
  });
});

describe("what may run with branches open", () => {
  it("is nothing for untying where only the tie feeds what is left", () => {
    // A keeps L1, B and C keep L2: R and R/2 in series across 480 V, so A-L1 stands at 320 V for its 277 V, 1.33 times its power.
    const left = ["A-L1", "B-L2", "C-L2"];
    const said = assessModule(
      record({
        wiring: {
          banks: ["A", "B", "C"].map((id) => ({ id, connection: "star" as const })),
          starPoints: "tied",
        },
        nameplate: { power: "90 kW", voltage: "480 V" },
        asFound: {
          ohms: ["A", "B", "C"].flatMap((bank) =>
            ["L1", "L2", "L3"].map((from) => ({
              from,
              to: "S",
              reads: left.includes(`${bank}-${from}`) ? "7.68 Ω" : "OL",
              alone: `${bank}-${from}`,
            })),
          ),
        },
      }),
    ).answer.join(" ");
    expect(said).toContain("A-L1 would carry 1.33 times its sound power, which only its maker can allow");
  });
  it("is told of breaks that no reading shows as OL: two closed deltas, one side each", () => {
    // 15 kW each: 46.08 Ω a side. With side L1-L2 gone the lines read 92.16, 46.08 and 46.08 Ω.
    const lines = ["L1", "L2", "L3"];
    const found = assessModule(
      record({
        wiring: { banks: ["A", "B"].map((id) => ({ id, connection: "delta" as const })) },
        asFound: {
          ohms: ["A", "B"].flatMap((alone) =>
            ["92.16 Ω", "46.08 Ω", "46.08 Ω"].map((reads, i) => ({
              from: lines[i] as string,
              to: lines[(i + 1) % 3] as string,
              reads,
              alone,
            })),
          ),
        },
      }),
    );
    const reasons = found.nextSteps.map(({ reason }) => reason);
    expect(reasons).toContain("A-L1L2, B-L1L2 show no path in these readings.");
  });
});

it("what is known of the leads is one of two names, or a reading of them shorted", () => {
  const network = { branches: [{ id: "A", from: "L1", to: "S", resistance: ohms(7.6) }] };
  const readings = [{ from: "L1", to: "S", reads: ohms(7.8), standardUncertainty: ohms(0.02) }];
  const call = (leads: unknown) => () =>
    fitTerminalReadings({ network, readings, leads: leads as "unknown" });
  expect(caught(call("shorted")).message).toBe(
    'leads: "shorted" is not allowed; expected one of unknown, taken off',
  );
  for (const leads of [undefined, null])
    expect(caught(call(leads)).message).toBe("leads: missing; expected one of unknown, taken off");
  // One reading between the probes of one branch: all of it, or less the leads.
  expect(call("taken off")().branches[0]?.resistance).toBeCloseTo(7.8, 9);
  const shorted = { shorted: ohms(0.2), standardUncertainty: ohms(0.01) };
  expect(call(shorted)().branches[0]?.resistance).toBeCloseTo(7.6, 9);
});
