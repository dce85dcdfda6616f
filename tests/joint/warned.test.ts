/**
 * Whole lists of warnings, worked out a second time: which are due follows from the printed figure (a share of load, an emissivity, a
 * minimum or not), and neither one too many nor one too few is given. Spots of a contact by Kohlrausch's relation,
 * T² = T_b² + U²/(4·L) with L = 2.44e-8 V²/K².
 */
import {
  contactVoltageScreen,
  fastenerStrength,
  riseAtFullLoad,
  scanSeverity,
  tighteningTorque,
} from "electroheat/joint";
import { celsius, inches, kelvins, millimeters, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { readJson, type Table } from "../support/shared.ts";
import { facts } from "../support/told.ts";

const table = (id: string) => readJson(`shared/tables/${id}.json`) as Table;

describe("a scanned rise", () => {
  const scales = [
    ["neta-100.18", "joint-thermal-severity-neta", 1, "caution"],
    ["practitioner-limits", "joint-thermal-severity-practitioner", 0.75, "outside-validity"],
  ] as const;
  it.each(scales)("by %s is doubted for its load, its surface and its scale", (scale, id, limit, code) => {
    for (const loadFraction of [0.3, 0.4, 0.5, 0.74999, 0.75, 0.9, 0.99999, 1, 1.2])
      for (const emissivity of [0.1, 0.59999, 0.6, 0.95, "unknown"] as const)
        for (const load of ["as measured", "full load"] as const) {
          const rise = kelvins(12);
          const { warnings } = scanSeverity({
            rise,
            riseHalfWidth: kelvins(0),
            comparison: "similar",
            loadFraction,
            load,
            scale,
            emissivity,
          });
          const rough = { code: "approximate", path: "emissivity", limit: 0.6, source: "common practice" };
          const stated = { code, path: "loadFraction", limit, source: table(id).source };
          expect(warnings.map(facts), `${loadFraction} ${emissivity} ${load}`).toEqual([
            ...riseAtFullLoad({ rise, loadFraction }).warnings.map(facts),
            ...(typeof emissivity === "number" && emissivity < 0.6 ? [rough] : []),
            ...(load === "as measured" && loadFraction < limit ? [stated] : []),
          ]);
        }
  });

  it("is graded by the printed rows: their edges below, and the gaps between whole kelvins to the row above them", () => {
    const { rows, columns } = table("joint-thermal-severity-neta");
    const at = (name: string) => columns.findIndex((one) => one.name === name);
    for (const comparison of ["similar", "ambient"] as const) {
      const [from, to] = [at(`${comparison}From`), at(`${comparison}To`)];
      expect(Math.min(from, to), comparison).toBeGreaterThan(0);
      for (const row of rows) {
        const edges = [row[from], row[to]].filter((edge) => typeof edge === "number");
        for (const edge of edges) {
          const { level, action } = scanSeverity({
            rise: kelvins(edge),
            riseHalfWidth: kelvins(0),
            comparison,
            loadFraction: 1,
            load: "as measured",
            scale: "neta-100.18",
            emissivity: 0.95,
          });
          // 40 K over air ends one row and begins the next: a tie goes to the lower.
          const printed = rows.find((one) => one[to] === edge || one[from] === edge) as Table["rows"][number];
          expect([level, action], `${comparison} ${edge}`).toEqual([
            printed[at("level")],
            printed[at("action")],
          ]);
        }
      }
    }
  });
});

describe("a strength", () => {
  const standards = [
    ["ISO 898-1", "bolt-strength-iso-898-1"],
    ["SAE J429", "bolt-strength-sae-j429"],
    ["ISO 3506-1", "bolt-strength-iso-3506-1"],
    ["ASTM F593", "bolt-strength-astm-f593"],
    ["brass C36000", "stud-strength-brass-c36000"],
  ] as const;
  it.each(standards)(
    "of %s says what it is, for which sizes, and what is not known of it",
    (standard, id) => {
      const { rows, columns, source } = table(id);
      const at = (name: string) => columns.findIndex((one) => one.name === name);
      const [to, sheet] = [at("toDiameter"), at("sheet")];
      const unit = columns[to]?.unit === "in" ? inches : millimeters;
      let asked = 0;
      for (const row of rows) {
        const grade = String(row[0]);
        const high = to < 0 ? null : row[to];
        const low = to < 0 ? null : row[to - 1];
        const diameter = typeof high === "number" ? unit(high) : millimeters(6);
        const kind = sheet < 0 ? "minimum" : String(row[sheet]);
        if (grade.endsWith("highest")) {
          expect(() => fastenerStrength({ standard, grade, diameter })).toThrow(/no strength to design on/);
          continue;
        }
        const found = fastenerStrength({ standard, grade, diameter });
        asked++;
        expect(found.kind, grade).toBe(kind);
        const sizes = typeof high === "number" ? { from: unit(low as number), to: unit(high) } : null;
        expect(found.sizes, grade).toEqual(sizes);
        expect(found.warnings.map(facts), grade).toEqual([
          ...(kind === "minimum" ? [] : [{ code: "caution", path: "grade", source }]),
          ...(sizes === null && to >= 0 ? [{ code: "assumed", path: "diameter", source }] : []),
        ]);
        for (const warning of found.warnings.filter(({ path }) => path === "grade"))
          expect(warning.message).toContain(`A ${kind} value`);
        expect(found.limit, grade).toBe(found.proof ?? found.yield);
      }
      expect(asked).toBeGreaterThan(3);
    },
  );
});

it("a torque by table says whose word comes first and whether it is the least or the most", () => {
  const kinds = [
    ["telecom-minimum", "torque-telecom-minimum", "minimum"],
    ["switchgear-metric", "torque-switchgear-metric", "typical"],
    ["nonferrous-maximum", "torque-nonferrous-maximum", "maximum"],
    ["bus-bolts", "torque-bus-bolts", "typical"],
    ["conical-washers", "torque-conical-washers", "typical"],
  ] as const;
  for (const [name, id, kind] of kinds) {
    const { rows, columns } = table(id);
    // What is not the torque itself: the size, and the same in the other unit.
    for (const [i, { name: column, unit }] of columns.entries()) {
      if (i === 0 || column.endsWith("Metric")) continue;
      expect(["N·m", "lbf·in"], `${id} ${column}`).toContain(unit);
      for (const row of rows) {
        const call = () => tighteningTorque({ table: name, size: String(row[0]), column });
        if (row[i] === null) {
          expect(call, `${id} ${row[0]} ${column}`).toThrow();
          continue;
        }
        const { torque, kind: said, warnings } = call();
        // 1 lbf is 4.4482216152605 N, 1 in is 0.0254 m.
        const newtonMeters = Number(row[i]) * (unit === "N·m" ? 1 : 4.4482216152605 * 0.0254);
        expect(torque / newtonMeters, `${id} ${row[0]} ${column}`).toBeCloseTo(1, 12);
        expect(said).toBe(kind);
        expect(warnings.map(facts)).toEqual([
          { code: "assumed", path: "maker" },
          ...(kind === "typical" ? [] : [{ code: "caution", path: "torque" }]),
        ]);
        if (kind !== "typical") expect(warnings[1]?.message).toContain(`a ${kind} value`);
      }
    }
  }
});

it("spots of a contact may soften or melt where the band of their temperature says so", () => {
  const { rows, columns, source } = table("contact-metals");
  const at = (row: Table["rows"][number], name: string) =>
    Number(row[columns.findIndex((one) => one.name === name)]);
  const spot = (voltage: number, bulk: number) =>
    Math.sqrt((bulk + 273.15) ** 2 + voltage ** 2 / (4 * 2.44e-8)) - 273.15;
  const words = new Set<string>();
  for (const row of rows)
    for (const voltage of [0, 0.02, 0.05, 0.08, 0.12, 0.2, 0.4, 0.7, 1.2])
      for (const bulk of [20, 90, 250, 700]) {
        const metal = String(row[0]) as never;
        const found = contactVoltageScreen({
          voltage: volts(voltage),
          reading: "dc",
          bulk: celsius(bulk),
          metal,
        });
        const [low, high] = [spot(Math.max(0, voltage - 0.03), bulk), spot(voltage + 0.03, bulk)];
        expect(found.spot).toBeCloseTo(spot(voltage, bulk), 6);
        const verdict = (limit: number) => (high <= limit ? "within" : low > limit ? "outside" : "undecided");
        const [softens, melts] = [verdict(at(row, "softening")), verdict(at(row, "melting"))];
        expect([found.softening.verdict, found.melting.verdict], `${metal} ${voltage} ${bulk}`).toEqual([
          softens,
          melts,
        ]);
        const what =
          bulk > at(row, "melting")
            ? "melt: the metal beside them is above its melting temperature already"
            : melts === "within"
              ? "soften"
              : "soften or melt";
        const said = `The contact spots of ${metal} may ${what}: expect lost preload; remake with new hardware.`;
        expect(found.warnings.slice(1).map(({ message }) => message)).toEqual(
          softens === "within" ? [] : [said],
        );
        expect(found.warnings.map(facts)).toEqual([
          { code: "approximate", path: "metal", source },
          ...(softens === "within" ? [] : [{ code: "caution", path: "voltage" }]),
        ]);
        if (softens !== "within") words.add(what);
      }
  expect(words.size).toBe(3);
});
