// Pictures of a two-bank oven module with an open element and a hot joint: its connections, its phasors, and the curves that go
// with the repair. Writes SVG files into a folder; opens in any browser, prints, and fits a phone.
//   node examples/pictures.mjs <folder> [width]     (after npm run build; without a folder it only says what it would write)
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { balancedSupply, buildModule, energise } from "electroheat/circuit";
import {
  connectionDiagram,
  curveChart,
  heatUpChart,
  jointRiseChart,
  phasorDiagram,
  preloadChart,
  temperatureFactorChart,
} from "electroheat/drawing";
import { NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I } from "electroheat/material";
import {
  amperes,
  celsius,
  kelvins,
  kilograms,
  kilojoulesPerKelvin,
  kilonewtons,
  millimeters,
  newtonMeters,
  ohms,
  volts,
  wattsPerKelvin,
} from "electroheat/quantity";

const [folder, asked] = process.argv.slice(2);
const width = asked === undefined ? {} : { width: Number(asked) };

// The invented case: 20 kW at 480 V, two star banks with their star points tied by a bar; A-L1 open, a stud in bank B hot.
const supply = balancedSupply({ lineVoltage: volts(480) });
/** @param {string} id */
const bank = (id) => ({ id, connection: /** @type {const} */ ("star"), elementResistance: ohms(23.04) });
/** @type {import("electroheat/circuit").ModulePlan} */
const healthy = { banks: [bank("A"), bank("B")], starPoints: "tied" };
/** @type {import("electroheat/circuit").ModulePlan} */
const found = {
  ...healthy,
  elements: { "A-L1": "open" },
  joints: [
    { id: "J4", at: "L2", behind: ["B-L2"], resistance: ohms(0.0047) },
    { id: "star bar", at: "S", behind: ["B"], resistance: ohms(0.00002), role: "jumper bar" },
  ],
};
/** @param {import("electroheat/circuit").ModulePlan} plan */
const powerOf = (plan) => energise({ network: buildModule(plan).network, supply }).totalPower;
const powers = [
  { name: "healthy", power: powerOf(healthy) },
  { name: "A-L1 open", power: powerOf(found) },
];
const oven = {
  ambient: celsius(20),
  lossConductance: wattsPerKelvin(60),
  structure: kilojoulesPerKelvin(90),
  loads: [{ mass: kilograms(250), specificHeat: /** @type {const} */ ("carbon steel") }],
};

/** @type {Record<string, string>} */
const pictures = {
  "connections.svg": connectionDiagram({
    module: found,
    title: "Curing oven, two star banks, as found",
    states: { J4: "hot joint", "A-L2": "within", "A-L3": "within", "B-L1": "within", "B-L3": "within" },
    protectiveEarth: true,
    ...width,
  }),
  "connections-dark.svg": connectionDiagram({ module: found, theme: "dark", ...width }),
  "phasors.svg": phasorDiagram({ module: found, supply, title: "Phasors with A-L1 open", ...width }),
  "temperature-factor.svg": temperatureFactorChart({
    datasets: [NICR_80_20_GB, NICR_80_20_MAKER_A, NICR_80_20_MAKER_I],
    title: "NiCr 80/20: Ct by three sources",
    ...width,
  }),
  "heat-up.svg": heatUpChart({ oven, powers, target: celsius(180), ...width }),
  "joint-rise.svg": jointRiseChart({
    joints: [
      { name: "J4", rise: kelvins(19), current: amperes(14) },
      { name: "its neighbour", rise: kelvins(4), current: amperes(14) },
    ],
    upTo: amperes(24),
    ...width,
  }),
  "preload.svg": preloadChart({
    diameter: millimeters(6),
    conditions: [
      "dry steel",
      "machine-oiled steel",
      { name: "measured on this stud", low: 0.19, high: 0.23 },
    ],
    upTo: newtonMeters(8),
    mostPreload: kilonewtons(8),
    ...width,
  }),
  "own-data.svg": curveChart({
    title: "Insulation resistance while the module dried",
    x: { label: "Time", unit: "h" },
    y: { label: "Insulation resistance", unit: "MΩ", scale: "log" },
    series: [
      { label: "bank A to PE", points: [0.4, 0.9, 7, 60, 210].map((y, x) => ({ x, y })), marked: true },
    ],
    levels: [{ label: "1 MΩ", y: 1 }],
    ...width,
  }),
};

if (folder !== undefined) mkdirSync(folder, { recursive: true });
for (const [name, svg] of Object.entries(pictures)) {
  const [, across = "", high = ""] = /width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  if (folder !== undefined) writeFileSync(join(folder, name), svg);
  console.log(`${name.padEnd(24)} ${across} x ${high}, ${(svg.length / 1000).toFixed(1)} kB`);
}
console.log(
  folder === undefined ? "\nNothing written: name a folder to write them to." : `\nWritten to ${folder}`,
);
