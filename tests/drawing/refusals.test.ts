/** Bad input gets an error of ours that names the argument. */
import { balancedSupply, buildModule, type ModulePlan } from "electroheat/circuit";
import {
  connectionDiagram,
  curveChart,
  diagramLayout,
  heatUpChart,
  jointRiseChart,
  phasorDiagram,
  preloadChart,
  temperatureFactorChart,
} from "electroheat/drawing";
import {
  amperes,
  celsius,
  kilojoulesPerKelvin,
  millimeters,
  newtonMeters,
  ohms,
  volts,
  watts,
  wattsPerKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

const module: ModulePlan = {
  banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }],
  joints: [{ id: "J", at: "L1", resistance: ohms(0.001) }],
};
const chart = {
  title: "T",
  x: { label: "x" },
  y: { label: "y" },
  series: [{ label: "s", points: [{ x: 1, y: 1 }] }],
};
const oven = {
  ambient: celsius(20),
  lossConductance: wattsPerKelvin(40),
  structure: kilojoulesPerKelvin(50),
};
const supply = balancedSupply({ lineVoltage: volts(480) });
const any = (value: unknown): never => value as never;

describe("each slip has its code and its path", () => {
  it.each<readonly [string, string, () => unknown]>([
    ["unknown-name", "values.A-L9", () => connectionDiagram({ module, values: { "A-L9": "x" } })],
    ["unknown-name", "states.L9", () => connectionDiagram({ module, states: { L9: "lost" } })],
    ["unknown-name", "labels.X", () => connectionDiagram({ module, labels: { X: "x" } })],
    ["unknown-name", "states.A-L1", () => connectionDiagram({ module, states: { "A-L1": any("broken") } })],
    ["inconsistent", "states.A-L1", () => connectionDiagram({ module, states: { "A-L1": "hot joint" } })],
    ["inconsistent", "states.A-L1", () => connectionDiagram({ module, states: { "A-L1": "lost" } })],
    ["inconsistent", "states.L1", () => connectionDiagram({ module, states: { L1: "open" } })],
    ["wrong-type", "labels.A-L1", () => connectionDiagram({ module, labels: { "A-L1": any(5) } })],
    ["missing", "labels.A-L1", () => connectionDiagram({ module, labels: { "A-L1": " \n " } })],
    ["missing", "title", () => connectionDiagram({ module, title: "" })],
    ["missing", "title", () => curveChart({ ...chart, title: any(undefined) })],
    [
      "missing",
      "series.0.label",
      () => curveChart({ ...chart, series: [{ label: "", points: [{ x: 0, y: 0 }] }] }),
    ],
    ["wrong-type", "title", () => connectionDiagram({ module, title: any(5) })],
    [
      "not-a-number",
      "values.A-L1.value",
      () => connectionDiagram({ module, values: { "A-L1": { value: Number.NaN, unit: "V" } } }),
    ],
    [
      "unknown-name",
      "unit",
      () => connectionDiagram({ module, values: { "A-L1": { value: 1, unit: any("furlong") } } }),
    ],
    ["out-of-range", "width", () => connectionDiagram({ module, width: 100 })],
    ["unknown-name", "theme", () => connectionDiagram({ module, theme: any("blue") })],
    ["malformed-text", "id", () => connectionDiagram({ module, id: 'x" onload="y' })],
    ["missing", "module", () => diagramLayout({ module: any(undefined) })],
    ["missing", "banks", () => diagramLayout({ module: any({}) })],
    [
      "inconsistent",
      "module.network",
      () => diagramLayout({ module: { ...buildModule(module), network: { branches: [] } } }),
    ],
    ...(["from", "to"] as const).map((end) => {
      // The same names, one of them between other nodes than its plan says.
      const [first, ...others] = buildModule(module).network.branches;
      const branches = [{ ...(first as NonNullable<typeof first>), [end]: "L3" }, ...others];
      return [
        "inconsistent",
        "module.network",
        () => diagramLayout({ module: { ...buildModule(module), network: { branches } } }),
      ] as const;
    }),
    [
      "inconsistent",
      "module.network",
      () => {
        const { branches } = buildModule(module).network;
        const more = { id: "more", from: "L1", to: "L2", resistance: ohms(5) };
        return diagramLayout({
          module: { ...buildModule(module), network: { branches: [...branches, more] } },
        });
      },
    ],
    [
      "out-of-range",
      "module",
      () =>
        diagramLayout({
          module: {
            banks: [{ id: "A", connection: "star", elementResistance: ohms(1), elementsInParallel: 900 }],
          },
        }),
    ],
    ["missing", "supply", () => phasorDiagram({ module, supply: any(null) })],
    ["missing", "supply.lines", () => phasorDiagram({ module, supply: { lines: supply.lines.slice(1) } })],
    [
      "short-circuit",
      "network",
      () =>
        phasorDiagram({
          module: { ...module, elements: { "A-L1": ohms(0), "A-L2": ohms(0) }, joints: [] },
          supply,
        }),
    ],
    ["missing", "series", () => curveChart({ ...chart, series: [] })],
    ["missing", "series.0.points", () => curveChart({ ...chart, series: [{ label: "s" }] })],
    [
      "not-a-number",
      "series.0.points.0.y",
      () => curveChart({ ...chart, series: [{ label: "s", points: [{ x: 0, y: Number.NaN }] }] }),
    ],
    [
      "out-of-range",
      "series.0.points.0.y",
      () =>
        curveChart({
          ...chart,
          y: { label: "y", scale: "log" },
          series: [{ label: "s", points: [{ x: 0, y: 0 }] }],
        }),
    ],
    [
      "inconsistent",
      "series.0.band.0.high",
      () => curveChart({ ...chart, series: [{ label: "s", band: [{ x: 0, low: 2, high: 1 }] }] }),
    ],
    [
      "out-of-range",
      "series",
      () => curveChart({ ...chart, series: Array.from({ length: 13 }, () => chart.series[0] as never) }),
    ],
    ["unknown-name", "x.scale", () => curveChart({ ...chart, x: { label: "x", scale: any("square") } })],
    ["missing", "x", () => curveChart({ ...chart, x: any(undefined) })],
    ["missing", "datasets", () => temperatureFactorChart({ datasets: [] })],
    [
      "missing",
      "datasets.0.temperatureFactor",
      () => temperatureFactorChart({ datasets: [{ id: "x", alloy: "NiCr 80/20" }] }),
    ],
    [
      "missing",
      "duration",
      () => heatUpChart({ oven, powers: [{ name: "weak", power: watts(100) }], target: celsius(200) }),
    ],
    ["missing", "joints", () => jointRiseChart({ joints: [], upTo: amperes(60) })],
    [
      "out-of-range",
      "upTo",
      () => preloadChart({ diameter: millimeters(8), conditions: ["dry steel"], upTo: newtonMeters(0) }),
    ],
    [
      "missing",
      "conditions",
      () => preloadChart({ diameter: millimeters(8), conditions: [], upTo: newtonMeters(9) }),
    ],
  ])("%s at %s", (code, path, run) => {
    const error = caught(run);
    expect([error.code, error.argument]).toEqual([code, path]);
  });
});
