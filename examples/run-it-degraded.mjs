// An element of a two-bank oven module has opened and the part comes in ten days: leave it as it is, untie the star points, or
// isolate the damaged bank? What each leaves: power, stress and surface temperature of the worst element, line currents and
// their unbalance, heat-up time, energy, and what stays live.
//   node examples/run-it-degraded.mjs     (after npm run build)
import { degradedOptions } from "electroheat/bench";
import { balancedSupply, branchResistance } from "electroheat/circuit";
import { exhaustHeat, ovenWallGuidance, wallLoss } from "electroheat/process";
import {
  celsius,
  cubicMetersPerSecond,
  hours,
  kilograms,
  kilojoulesPerKelvin,
  kilowatts,
  metersPerSecond,
  millimeters,
  pascals,
  squareMeters,
  toHours,
  toKilowattHours,
  toKilowatts,
  volts,
  watts,
  wattsPerKelvin,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";

// The invented case: 40 kW at 480 V, two banks in star with their star points tied; element A-L1 reads open.
const supply = balancedSupply({ lineVoltage: volts(480) });
const bankPower = kilowatts(20);
const elementResistance = branchResistance({
  connection: "star",
  power: bankPower,
  lineVoltage: volts(480),
});
/** @param {string} id */
const bank = (id) => ({ id, connection: /** @type {const} */ ("star"), elementResistance });
const setPoint = celsius(200);
const room = celsius(20);
const shift = hours(8);
const days = 10; // one shift a day
const tariff = 0.2; // per kWh, in the currency of your bill
// Tubular elements of 11 mm at 4 W/cm², air at 3 m/s; at the set point, where they run hottest.
const element = {
  surfaceLoad: wattsPerSquareCentimeter(4),
  shape: /** @type {const} */ ("tube"),
  diameter: millimeters(11),
  airTemperature: setPoint,
  airSpeed: metersPerSecond(3),
  pressure: pascals(101_325),
  surroundingsTemperature: setPoint,
  emissivity: 0.88,
  radiatingEfficiency: 1,
};

// The oven: panel walls, a small exhaust, a steel load.
const panel = ovenWallGuidance().find((row) => row.panelFactor !== null);
if (panel?.panelFactor == null) throw new Error("the table of walls has a panel factor");
const walls = wallLoss({
  uValue: panel.panelFactor,
  area: squareMeters(40),
  inside: setPoint,
  outside: room,
});
const exhaust = exhaustHeat({
  flow: { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicMetersPerSecond(0.03) },
  makeUp: room,
  oven: setPoint,
});
const oven = {
  ambient: room,
  lossConductance: wattsPerKelvin(walls.lossConductance + exhaust.lossConductance),
  structure: kilojoulesPerKelvin(120),
  loads: [{ mass: kilograms(400), specificHeat: /** @type {const} */ ("carbon steel") }],
};

const { options, cautions, deferral } = degradedOptions({
  module: { banks: [bank("A"), bank("B")], starPoints: "tied" },
  supply,
  faults: [{ kind: "open", id: "A-L1" }],
  oven,
  target: setPoint,
  element,
  shift,
  shifts: days,
  tariff,
});

const rows = options.map((way) => {
  const { heatUp, worst } = way;
  const surface = worst?.surface?.balance;
  const [l1, l2, l3] = way.lines.map(({ current }) => current.toFixed(1));
  return {
    way: way.name,
    kW: toKilowatts(way.power).toFixed(1),
    "worst element": worst === null ? "-" : `${worst.id} ${worst.powerRatio.toFixed(2)} ×`,
    "its surface": surface == null ? "-" : `${surface.surfaceTemperature.toFixed(0)} °C`,
    band:
      surface == null
        ? "-"
        : `${surface.band.low?.toFixed(0) ?? "?"} to ${surface.band.high?.toFixed(0) ?? "?"} °C`,
    "lines, A": `${l1} / ${l2} / ${l3}`,
    unbalance: way.unbalance === null ? "-" : `${(100 * way.unbalance.maxDeviation).toFixed(1)} %`,
    "to 200 °C": heatUp.time === "never" ? "never" : `${toHours(heatUp.time).toFixed(2)} h`,
    "would end at": heatUp.ultimate === "unlimited" ? "-" : `${heatUp.ultimate.toFixed(0)} °C`,
    "at 200 °C": `${toHours(way.timeAtTarget).toFixed(1)} h`,
    "kWh per shift": toKilowattHours(way.energyPerShift).toFixed(0),
    [`cost, ${days} days`]: way.cost === null ? "-" : way.cost.toFixed(0),
    "open ends":
      way.openEnds.length === 0
        ? "none"
        : way.openEnds.map(({ voltage }) => `live, ${voltage?.toFixed(0) ?? "unknown"} V`).join("; "),
  };
});

console.log(
  "Curing oven, 40 kW at 480 V, two star banks, star points tied; element A-L1 open; part in 10 days",
);
console.log(
  `Holding power at 200 °C: ${toKilowatts(options[0]?.heatUp.holdingPower ?? watts(0)).toFixed(1)} kW\n`,
);
const headings = Object.keys(rows[0] ?? {});
const widths = headings.map((heading) =>
  Math.max(heading.length, ...rows.map((row) => String(row[/** @type {"way"} */ (heading)]).length)),
);
/** @param {readonly string[]} cells */
const print = (cells) =>
  console.log(
    cells
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join("  ")
      .trimEnd(),
  );
print(headings);
print(widths.map((width) => "-".repeat(width)));
for (const row of rows) print(headings.map((heading) => String(row[/** @type {"way"} */ (heading)])));

console.log(`
Reading it
  Leave as is       most heat, but the element beside the open one carries 1.44 times its power until it is the next to go.
  Untie star points no element above its plate, three quarters of the power; worst line unbalance.
  Isolate bank A    balanced lines and nothing live at the break, half the power: it does not get this oven to 200 °C.
  Worst element: power over its healthy power; its surface load rises in the same ratio. Unbalance: largest deviation from the mean.
  Surface: one cylinder in moving air of 200 °C (Churchill and Bernstein; Incropera, Table A.4); every correlation that applies
  lies in the band. Without a controller the oven would end at the temperature shown; with one it stays at the set point.
  Heat-up: one temperature for oven and load; the load lags, so a cure time counts from the load. Steel by EN 1993-1-2.
  Walls: panel factor of ${panel.basis.source} (${panel.basis.kind}); exhaust by its mass flow. Energy: one heat-up and holding.

Cautions`);
/** Folds a sentence at 120 characters. @param {string} text @param {string} first */
const say = (text, first) => {
  let line = first;
  for (const word of text.split(" ")) {
    if (line.length + word.length > 119) {
      console.log(line.trimEnd());
      line = " ".repeat(4);
    }
    line += `${word} `;
  }
  console.log(line.trimEnd());
};
for (const { message } of cautions) say(message, "  All ways: ");
for (const way of options) for (const { message } of way.cautions) say(message, `  ${way.name}: `);
say(`${deferral} Common practice, no published source, unless one is named.`, "  ");
