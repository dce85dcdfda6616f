/** The tables of the joint room: bounds, order, keys, laws they must obey, and a second copy cell by cell. */
import { describe, expect, it } from "vitest";
import { readJson, type Table, tableSchema } from "../support/shared.ts";
import { secondReading } from "./secondReading.ts";

const tables = new Map<string, Table>(
  Object.keys(secondReading).map((id) => [id, tableSchema.parse(readJson(`shared/tables/${id}.json`))]),
);
const table = (id: string): Table => tables.get(id) as Table;
const column = (id: string, name: string): readonly (number | null)[] => {
  const at = table(id).columns.findIndex((one) => one.name === name);
  expect(at, `${id} has ${name}`).toBeGreaterThanOrEqual(0);
  return table(id).rows.map((row) => row[at] as number | null);
};
const numbers = (id: string, name: string): number[] =>
  column(id, name).filter((x): x is number => typeof x === "number");
const size = (text: unknown): number =>
  String(text)
    .split(" ")
    .reduce(
      (sum, part) =>
        sum +
        part
          .split("/")
          .map(Number)
          .reduce((a, b) => a / b),
      0,
    );

describe.each(Object.keys(secondReading))("%s", (id) => {
  it("agrees with its second copy, cell by cell", () => {
    const lines = (secondReading[id] as string).trim().split("\n");
    const shown = table(id).rows.map((row) => row.map((cell) => (cell === null ? "" : String(cell))));
    expect(shown).toEqual(lines.map((line) => line.split("|").map((cell) => cell.trim())));
  });

  it("has no negative number, and keys used once", () => {
    const cells = table(id).rows.flat();
    for (const cell of cells) if (typeof cell === "number") expect(cell).toBeGreaterThanOrEqual(0);
    // A size or name may return with another size range, never with the same first three cells.
    const keys = table(id).rows.map((row) => row.slice(0, 3).join("|"));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe("threads", () => {
  it.each([
    ["thread-metric", 0.938194, 1.226869],
    ["thread-unified", 0.9743, 1.299038],
  ] as const)("%s: areas within 0.4 %% of the law, and smaller at the root", (id, stress, minor) => {
    const pitch =
      id === "thread-metric" ? numbers(id, "pitch") : numbers(id, "threadsPerInch").map((n) => 1 / n);
    numbers(id, "diameter").forEach((d, i) => {
      const area = (off: number): number => (Math.PI / 4) * (d - off * (pitch[i] as number)) ** 2;
      expect((numbers(id, "stressArea")[i] as number) / area(stress)).toBeCloseTo(1, 2.1);
      expect((numbers(id, "minorArea")[i] as number) / area(minor)).toBeCloseTo(1, 2.1);
      expect(numbers(id, "minorArea")[i]).toBeLessThan(numbers(id, "stressArea")[i] as number);
    });
  });
});

describe("strength", () => {
  it("proof loads are area times proof stress within 0.6 %", () => {
    const stress = new Map(
      table("bolt-strength-iso-898-1")
        .rows.filter((r) => r[1] === 0)
        .map((r) => [r[0], r[3]]),
    );
    const proof = table("proof-load-iso-898-1");
    proof.columns.slice(2).forEach(({ name }, i) => {
      for (const row of proof.rows) {
        const load = (row[1] as number) * (stress.get(name.replace("class", "")) as number);
        expect(Math.abs((row[i + 2] as number) / load - 1), `${row[0]} ${name}`).toBeLessThan(0.006);
      }
    });
  });

  it("proof below yield below tensile", () => {
    for (const row of table("bolt-strength-sae-j429").rows) {
      expect(row[3]).toBeLessThan(row[4] as number);
      expect(row[4]).toBeLessThan(row[5] as number);
    }
    for (const [id, at] of [
      ["bolt-strength-iso-3506-1", 1],
      ["stud-strength-brass-c36000", 3],
    ] as const) {
      for (const row of table(id).rows) expect(row[at]).toBeLessThan(row[at + 1] as number);
    }
    for (const row of table("bolt-strength-astm-f593").rows) {
      expect(row[3]).toBeLessThan(row[4] as number);
      expect(row[4]).toBeLessThan(row[5] as number);
    }
  });
});

describe("torques", () => {
  // Published checks of the notes: implied stress T/(0.2·d·A_t) is one family per column.
  const areas = new Map(table("thread-unified").rows.map((r) => [r[0], r]));
  it("the telecom minimum is one design: 30 to 35 ksi turned at the head, 38 to 42 ksi at the nut", () => {
    for (const row of table("torque-telecom-minimum").rows) {
      const [, d, , area] = areas.get(row[0] as string) as number[];
      const ksi = (torque: unknown): number =>
        (torque as number) / (0.2 * (d as number) * (area as number)) / 1000;
      expect(ksi(row[2])).toBeGreaterThan(30);
      expect(ksi(row[2])).toBeLessThan(35.3);
      expect(ksi(row[3])).toBeGreaterThan(38);
      expect(ksi(row[3])).toBeLessThan(42);
      expect(row[4]).toBeGreaterThan(row[3] as number);
    }
  });

  it("the switchgear guide is one design: 330 to 370 MPa general, 230 to 310 main circuit", () => {
    const metric = new Map(table("thread-metric").rows.map((r) => [r[0], r]));
    for (const row of table("torque-switchgear-metric").rows) {
      const thread = metric.get(row[0] as string);
      if (thread === undefined) continue;
      const stress = (torque: unknown): number =>
        ((torque as number) / (0.2 * (thread[1] as number) * (thread[3] as number))) * 1000;
      expect(stress(row[2])).toBeGreaterThan(330);
      expect(stress(row[2])).toBeLessThan(370);
      if (row[1] !== null) expect(stress(row[1])).toBeGreaterThan(230);
      if (row[1] !== null) expect(stress(row[1])).toBeLessThan(350);
    }
  });

  it("rise with size, in every column", () => {
    for (const id of [...tables.keys()].filter((one) => one.startsWith("torque-"))) {
      for (const { name, unit } of table(id).columns) {
        if (unit !== "N·m" && unit !== "lbf·in") continue;
        const values = numbers(id, name);
        expect(values, `${id} ${name}`).toEqual([...values].sort((a, b) => a - b));
      }
    }
  });

  it("the conical-washer page contradicts itself in one row only: 180 lbf·in is not 18.0 N·m", () => {
    const off = table("torque-conical-washers").rows.flatMap((row) =>
      ([1, 3] as const)
        .filter((i) => row[i] !== null)
        .map((i) => ({
          row: row[0],
          ratio: ((row[i] as number) * 0.1129848290276167) / (row[i + 1] as number),
        })),
    );
    expect(off.filter(({ ratio }) => Math.abs(ratio - 1) > 0.006)).toEqual([
      { row: "5/16 / M8", ratio: expect.closeTo(1.13, 2) },
    ]);
  });
});

describe("bars", () => {
  it("C11000: resistance is 99 % IACS copper within 0.4 %, area is the product, weight 0.3213 lb/in³", () => {
    for (const row of table("bar-ampacity-c11000").rows) {
      const area = size(row[0]) * size(row[1]);
      expect(Math.abs((row[2] as number) / area - 1)).toBeLessThan(0.004);
      expect(Math.abs((row[3] as number) / (area * 12 * 0.322) - 1)).toBeLessThan(0.006);
      const resistance = ((1.7241e-8 / 0.99) * 0.3048) / (area * 0.0254 ** 2);
      expect(Math.abs(((row[4] as number) * 1e-6) / resistance - 1)).toBeLessThan(0.004);
      expect(row[5]).toBeGreaterThanOrEqual(1);
      expect(row[6]).toBeLessThan(row[7] as number);
      expect(row[7]).toBeLessThan(row[8] as number);
    }
  });

  it("DIN 43671: section near width times thickness, painted above bare, more bars carry more", () => {
    for (const row of table("bar-ampacity-din-43671").rows) {
      const [width, thickness, section, ...ratings] = row as number[];
      if (section !== null)
        expect((section as number) / ((width as number) * (thickness as number))).toBeCloseTo(1, 1.69);
      const [painted, bare] = [ratings.slice(0, 4), ratings.slice(4)];
      painted.forEach((p, i) => {
        if (p !== null) expect(p).toBeGreaterThan(bare[i] as number);
        if (i > 0 && p !== null) expect(p).toBeGreaterThan(painted[i - 1] as number);
      });
      expect((painted[0] as number) / (bare[0] as number)).toBeGreaterThan(1.15);
      expect((painted[0] as number) / (bare[0] as number)).toBeLessThan(1.23);
    }
  });

  it("DIN 43671 leaves the known-wrong cells out: no 50 × 5, no 12 mm rows, no 899 mm²", () => {
    const rows = table("bar-ampacity-din-43671").rows;
    expect(rows.some(([w, t]) => (w === 50 && t === 5) || w === 12)).toBe(false);
    expect(rows.flat()).not.toContain(679);
    expect(rows.flat()).not.toContain(899);
  });

  it("DIN 43673: hole a little larger than the bolt, below half of the bar up to 25 mm", () => {
    for (const [width, bolt, hole] of table("bolting-din-43673").rows as [number, string, number][]) {
      const d = Number(bolt.slice(1));
      expect(hole / d).toBeGreaterThan(1.09);
      expect(hole / d).toBeLessThan(1.13);
      if (width <= 25) expect(hole / width).toBeLessThan(0.465);
      if (width <= 25) expect(hole / width).toBeGreaterThan(0.43);
    }
  });
});

describe("own solutions of Laplace's equation", () => {
  it("the streamline factor tends to 0.5 + 2·0.24983·b/l", () => {
    for (const [x, e] of table("lap-streamline-factor").rows as [number, number][]) {
      if (x >= 3) expect(Math.abs(e / (0.5 + 0.49967 / x) - 1)).toBeLessThan(0.004);
    }
    const factors = numbers("lap-streamline-factor", "factor");
    expect(factors).toEqual([...factors].sort((a, b) => b - a));
  });

  it("a hole tends to π·d²/(2·W²), a little above it, growing", () => {
    const over = (table("bar-hole-excess-squares").rows as [number, number][]).map(
      ([x, n]) => n / ((Math.PI / 2) * x * x),
    );
    expect(over[0]).toBeGreaterThan(1);
    expect(over[0]).toBeLessThan(1.01);
    expect(over).toEqual([...over].sort((a, b) => a - b));
  });
});

describe("contact metals", () => {
  it("voltages follow the law with 2.44e-8 V²/K²: softening within 0.03 V, melting within 0.08 V", () => {
    const volts = (t: number): number => Math.sqrt(4 * 2.44e-8 * ((t + 273.15) ** 2 - 293.15 ** 2));
    for (const row of table("contact-metals").rows) {
      expect(Math.abs(volts(row[1] as number) - (row[2] as number))).toBeLessThan(0.03);
      expect(Math.abs(volts(row[3] as number) - (row[4] as number))).toBeLessThan(0.08);
      expect(row[1]).toBeLessThan(row[3] as number);
    }
  });
});

describe("severity scales", () => {
  it("leave no gap wider than their own rounding, and rank by severity", () => {
    const rows = table("joint-thermal-severity-neta").rows;
    expect(numbers("joint-thermal-severity-neta", "level")).toEqual([1, 2, 3, 4]);
    const closed = (from: number, to: number): void => {
      const used = rows.filter((row) => row[from] !== null);
      used.slice(1).forEach((row, i) => {
        const step = (row[from] as number) - ((used[i] as (number | null)[])[to] as number);
        expect(step === 1 || (step === 0 && row[to] === null)).toBe(true);
      });
    };
    closed(1, 2);
    closed(3, 4);
    for (const name of ["similarBelow", "ambientBelow"]) {
      const limits = numbers("joint-thermal-severity-practitioner", name);
      expect(limits).toEqual([...limits].sort((a, b) => a - b));
    }
  });
});

describe("conical washers", () => {
  it("cone height shrinks from maximum to minimum, loads grow with size", () => {
    for (const row of table("disc-spring-din-6796").rows as [string, ...number[]][]) {
      const [, inner, outer, thickness, high, low] = row;
      expect(inner).toBeLessThan(outer as number);
      expect(low).toBeGreaterThan(thickness as number);
      expect(high).toBeGreaterThan(low as number);
    }
    const loads = numbers("disc-spring-din-6796", "load");
    expect(loads).toEqual([...loads].sort((a, b) => a - b));
  });
});
