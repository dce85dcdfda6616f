// An element of a two-bank oven module has opened and the part comes in ten days: leave it as it is, untie the star points, or
// isolate the damaged bank? What each leaves: power, stress and surface temperature of the worst element, line currents and
// their unbalance, heat-up time, energy, and what stays live.
//   node examples/run-it-degraded.mjs     (after npm run build)
import {
  balancedSupply,
  branchResistance,
  buildModule,
  energise,
  faultEffect,
  unbalance,
} from "electroheat/circuit";
import { surfaceTemperature } from "electroheat/element";
import { exhaustHeat, heatUpOptions, ovenWallGuidance, runningCost, wallLoss } from "electroheat/process";
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
  seconds,
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
const days = 10;
const tariff = 0.2; // per kWh, in the currency of your bill
// Tubular elements of 11 mm at 4 W/cm², air at 3 m/s; at the set point, where they run hottest.
const plateLoad = 4;
const cooling = {
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

/**
 * Power, stress and lines of one way of running.
 * @param {string} name
 * @param {import("electroheat/circuit").ModulePlan} plan healthy plan of that way
 * @param {string | undefined} open the open element in it
 */
function wayOfRunning(name, plan, open) {
  const { network } = buildModule(plan);
  const healthy = energise({ network, supply });
  if (open === undefined) {
    const currents = healthy.lines.filter(({ node }) => node !== "N").map(({ current }) => current);
    return { name, power: healthy.totalPower, worst: 1, currents, gap: null };
  }
  const effect = faultEffect({ network, supply, faults: [{ kind: "open", id: open }] });
  if (effect.outcome === "supply shorted") throw new Error("an open element shorts nothing");
  const currents = effect.lines.filter(({ node }) => node !== "N").map(({ current }) => current);
  return {
    name,
    power: effect.totalPower,
    // The elements of one module are all alike, so the ratio is to the plate.
    worst: effect.worst?.powerRatio ?? 0,
    currents,
    gap: effect.gaps[0]?.voltage ?? null,
  };
}

const both = [bank("A"), bank("B")];
const ways = [
  wayOfRunning("as it was", { banks: both, starPoints: "tied" }, undefined),
  wayOfRunning("leave as is", { banks: both, starPoints: "tied" }, "A-L1"),
  wayOfRunning("untie star points", { banks: both, starPoints: "separate" }, "A-L1"),
  wayOfRunning("isolate bank A", { banks: [bank("B")] }, undefined),
];
const heatUps = heatUpOptions({ oven, powers: ways, target: setPoint });

const rows = ways.map((way, i) => {
  const heatUp = /** @type {(typeof heatUps)[number]} */ (heatUps[i]);
  const [l1, l2, l3] = /** @type {[number, number, number]} */ (/** @type {unknown} */ (way.currents));
  const surface = surfaceTemperature({
    ...cooling,
    surfaceLoad: wattsPerSquareCentimeter(plateLoad * way.worst),
  });
  // A day: heat up once, hold for the rest of the shift; at full power all day if it never arrives.
  const heating = heatUp.time === "never" ? shift : heatUp.time;
  const first = runningCost({ power: watts(way.power), time: heating, tariff });
  const held = Math.min(heatUp.holdingPower, way.power);
  const rest = runningCost({ power: watts(held), time: seconds(shift - heating), tariff });
  return {
    way: way.name,
    kW: toKilowatts(way.power).toFixed(1),
    "worst element": `${way.worst.toFixed(2)} ×`,
    "its surface": `${surface.surfaceTemperature.toFixed(0)} °C`,
    "lines, A": way.currents.map((current) => current.toFixed(1)).join(" / "),
    unbalance: `${(100 * unbalance({ l1, l2, l3 }).maxDeviation).toFixed(1)} %`,
    "to 200 °C": heatUp.time === "never" ? "never" : `${toHours(heatUp.time).toFixed(2)} h`,
    "ends at": heatUp.ultimate === "unlimited" ? "-" : `${heatUp.ultimate.toFixed(0)} °C`,
    "kWh per shift": (toKilowattHours(first.energy) + toKilowattHours(rest.energy)).toFixed(0),
    [`cost, ${days} days`]: (days * (first.cost + rest.cost)).toFixed(0),
    "open ends": way.gap === null ? "none" : `live, ${way.gap.toFixed(0)} V`,
  };
});

console.log(
  "Curing oven, 40 kW at 480 V, two star banks, star points tied; element A-L1 open; part in 10 days",
);
console.log(`Holding power at 200 °C: ${toKilowatts(heatUps[0]?.holdingPower ?? watts(0)).toFixed(1)} kW\n`);
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
  Worst element: power over plate power; its surface load rises in the same ratio. Unbalance: largest deviation from the mean.
  Surface: one cylinder in moving air of 200 °C, ±15 % of the rise (Churchill and Bernstein; Incropera, Table A.4).
  Heat-up: one temperature for oven and load; the load lags, so a cure time counts from the load. Steel by EN 1993-1-2.
  Walls: panel factor of ${panel.basis.source} (${panel.basis.kind}); exhaust by its mass flow. Energy: one heat-up and holding.

Cautions
  An open element is not a dead one: the break stands live at the voltage shown, and an untied star point floats live.
  Isolating a bank means all three lines off, locked out and proved dead, with its leads made safe; not one lead lifted.
  Untying changes the module: the maker's instructions, overcurrent protection and any burn-out monitor must still suit it.
  Prove air flow, overtemperature cut-out and exhaust before running degraded; a longer heat-up is no reason to bypass them.
  The code adopted where the oven stands, its maker's instructions and a licensed electrician govern. Common practice, no
  published source, unless one is named.`);
