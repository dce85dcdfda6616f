/** Pictures of every kind, small enough to look at. */
import { balancedSupply, type ModulePlan, supplyFromLineVoltages, withoutLines } from "electroheat/circuit";
import {
  connectionDiagram,
  curveChart,
  heatUpChart,
  jointRiseChart,
  type PictureStyle,
  phasorDiagram,
  preloadChart,
  temperatureFactorChart,
} from "electroheat/drawing";
import { NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I } from "electroheat/material";
import {
  amperes,
  celsius,
  kelvins,
  kilojoulesPerKelvin,
  kilonewtons,
  kilowatts,
  millimeters,
  newtonMeters,
  ohms,
  volts,
  wattsPerKelvin,
} from "electroheat/quantity";

const star = (id: string) => ({ id, connection: "star", elementResistance: ohms(15.36) }) as const;

export const faulty: ModulePlan = {
  banks: [star("A"), star("B")],
  starPoints: "tied",
  elements: { "A-L1": "open" },
  joints: [
    { id: "J1", at: "L2", behind: ["B-L2"], resistance: ohms(0.0047) },
    { id: "JB", at: "S", behind: ["B"], resistance: ohms(0.00002), role: "jumper bar" },
  ],
};
const supply = balancedSupply({ lineVoltage: volts(480) });
const oven = {
  ambient: celsius(20),
  lossConductance: wattsPerKelvin(40),
  structure: kilojoulesPerKelvin(200),
};

export type Scene = (style: PictureStyle & { readonly width?: number }) => string;

export const scenes: Readonly<Record<string, Scene>> = {
  diagram: (style) =>
    connectionDiagram({
      module: faulty,
      states: { J1: "hot joint", "B-L1": "within", "B-L3": "undecided", "B-L2": "outside", L3: "lost" },
      protectiveEarth: true,
      ...style,
    }),
  delta: (style) =>
    connectionDiagram({
      module: {
        banks: [{ id: "A", connection: "delta", elementResistance: ohms(23), elementsInParallel: 2 }],
        elements: { "A-L1L2-1": ohms(0) },
      },
      ...style,
    }),
  phasors: (style) => phasorDiagram({ module: faulty, supply, ...style }),
  "lost line": (style) =>
    phasorDiagram({ module: faulty, supply: withoutLines({ supply, lines: ["L3"] }), ...style }),
  unbalanced: (style) => {
    const sides = { v12: volts(470), v23: volts(480), v31: volts(455) };
    return phasorDiagram({ module: faulty, supply: supplyFromLineVoltages(sides), ...style });
  },
  "temperature factor": (style) =>
    temperatureFactorChart({ datasets: [NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I], ...style }),
  "heat-up": (style) => {
    const powers = [
      { name: "healthy", power: kilowatts(12) },
      { name: "one element open", power: kilowatts(6) },
    ];
    return heatUpChart({ oven, powers, target: celsius(200), ...style });
  },
  "joint rise": (style) => {
    const joints = [{ name: "A-L1 stud", rise: kelvins(22), current: amperes(40) }];
    return jointRiseChart({ joints, upTo: amperes(66), ...style });
  },
  preload: (style) =>
    preloadChart({
      diameter: millimeters(8),
      conditions: ["dry steel", { name: "greased, measured", low: 0.13, high: 0.17 }],
      upTo: newtonMeters(25),
      mostPreload: kilonewtons(15),
      ...style,
    }),
  logarithmic: (style) =>
    curveChart({
      title: "Insulation while drying",
      x: { label: "Time", unit: "h" },
      y: { label: "Insulation", unit: "MΩ", scale: "log" },
      series: [{ label: "bank A", points: [0.08, 0.9, 160, 900].map((y, x) => ({ x, y })), marked: true }],
      levels: [{ label: "1 MΩ", y: 1 }],
      ...style,
    }),
};
