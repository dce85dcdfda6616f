// A burnt-out coil is to be replaced: the ohmmeter shows 7.40 Ω on its neighbor, the plate says 10 kW per coil, the reel is
// NiCr 80/20 of 2.05 mm. From that to length, surface load, a coil that keeps the makers' limits, and how hot it runs with
// the fan on and off; then what a star does when one branch was rewound in another alloy.
//   node examples/replace-a-coil.mjs     (after npm run build)
import { readFileSync } from "node:fs";
import { balancedSupply, buildModule, energise } from "electroheat/circuit";
import {
  coilGeometry,
  coilGuidance,
  coldStart,
  hotResistance,
  insideDiameterFromMean,
  meanDiameterFromInside,
  standardWhatIfs,
  stretchedLength,
  surfaceLoad,
  surfaceLoadGuidance,
  surfaceTemperatureWhatIfs,
  swappedAlloyResistance,
  voltageFromPowerAndResistance,
  wireMass,
  wireTolerance,
} from "electroheat/element";
import {
  alloyDataset,
  alloyDatasetsOf,
  highestElementTemperatures,
  lengthOfResistance,
  pressureAtAltitude,
  resistancePerLength,
  roundWireArea,
  temperatureFactorSpread,
} from "electroheat/material";
import {
  celsius,
  meters,
  metersPerSecond,
  microohmMeters,
  millimeters,
  ohms,
  toGrams,
  toMillimeters,
  toWattsPerSquareCentimeter,
  toWattsPerSquareInch,
  volts,
  watts,
} from "electroheat/quantity";

/** @type {Set<string>} */
const sources = new Set();
/** @param {string} text */
const line = (text = "") => console.log(text);
/** @param {string} label @param {string} value */
const item = (label, value) => line(`  ${label.padEnd(36)}${value}`);
/** @param {number} value @param {number} digits */
const fixed = (value, digits) => value.toFixed(digits);

// What is in hand.
const cold = ohms(7.4);
const power = watts(10_000);
const diameter = millimeters(2.05);
const alloy = alloyDataset("nicr-80-20-gb");
const resistivity = alloy.resistivity;
const density = alloy.density;
const emissivity = alloyDataset("nicr-80-20-maker-a").emissivity;
if (resistivity === undefined || density === undefined || emissivity === undefined) {
  throw new Error("the datasets of this example have a resistivity, a density and an emissivity");
}
for (const { basis } of [resistivity, density, emissivity]) sources.add(basis.source);

line("Replacement coil: 7.40 Ω at 20 °C, 10 kW, NiCr 80/20, 2.05 mm");
line();

// Length and load.
const perLength = resistancePerLength({ resistivity: resistivity.value, area: roundWireArea(diameter) });
const length = lengthOfResistance({ resistance: cold, resistancePerLength: perLength });
const tolerance = wireTolerance(diameter);
sources.add(tolerance.basis.source);
const load = surfaceLoad({ power, diameter, length });
const guidance = surfaceLoadGuidance("fan heater, spiral (moving air)");
const stillGuidance = surfaceLoadGuidance("fire, spiral in free air");
sources.add(guidance.basis.source);
line("Wire");
item("Resistance per meter", `${fixed(perLength, 4)} Ω/m`);
item("Length between terminals", `${fixed(length, 2)} m (tails come on top)`);
item(
  "  with wire at its tolerance",
  `${fixed(length / (1 + tolerance.upperTolerance), 2)} to ${fixed(length / (1 - tolerance.lowerTolerance), 2)} m: measure a meter of the reel`,
);
item("Mass", `${fixed(toGrams(wireMass({ diameter, length, density: density.value })), 0)} g`);
item(
  "Surface load",
  `${fixed(toWattsPerSquareCentimeter(load), 2)} W/cm² (${fixed(toWattsPerSquareInch(load), 1)} W/in²)`,
);
item(
  "  suggested, spiral in moving air",
  `${fixed(toWattsPerSquareCentimeter(guidance.low ?? guidance.high), 1)} to ${fixed(toWattsPerSquareCentimeter(guidance.high), 1)} W/cm² (guidance, not a limit)`,
);
item(
  "  suggested, spiral in free air",
  `${fixed(toWattsPerSquareCentimeter(stillGuidance.low ?? stillGuidance.high), 1)} to ${fixed(toWattsPerSquareCentimeter(stillGuidance.high), 1)} W/cm²`,
);
line();

// A coil within every maker's limit: a mandrel in the middle of the range, stretched three to one. Inward rounding of the
// limits: what is printed is still kept.
const limits = coilGuidance(diameter);
sources.add(limits.basis.source);
const insideDiameter = millimeters(10);
const meanDiameter = meanDiameterFromInside({ insideDiameter, wireDiameter: diameter });
const wire = { wireLength: length, wireDiameter: diameter, meanDiameter };
const coil = coilGeometry({ ...wire, coilLength: stretchedLength({ ...wire, stretchRatio: 3 }) });
line("Coil");
item(
  "Mandrel, kept by every limit",
  `${fixed(Math.ceil(10 * (toMillimeters(limits.smallestOutsideDiameter) - 4.1) - 1e-6) / 10, 1)} to ${fixed(Math.floor(10 * (toMillimeters(limits.largestOutsideDiameter) - 4.1) + 1e-6) / 10, 1)} mm`,
);
item(
  "Mandrel taken",
  `${fixed(toMillimeters(insideDiameterFromMean({ meanDiameter, wireDiameter: diameter })), 1)} mm, coil outside ${fixed(toMillimeters(coil.outsideDiameter), 1)} mm`,
);
item("Turns", fixed(coil.turns, 0));
item("Close-wound length", `${fixed(coil.closeWoundLength, 3)} m`);
item(
  "Stretched 3 : 1",
  `${fixed(coil.closeWoundLength, 3)} m becomes ${fixed(coil.turns * coil.pitch, 3)} m, pitch ${fixed(toMillimeters(coil.pitch), 2)} mm`,
);
item(
  "Limits not kept",
  coil.warnings.length === 0 ? "none" : coil.warnings.map(({ message }) => message).join("; "),
);
line("  The limits say nothing of temperature and support spacing: support the coil as the old one was.");
line();

// How hot, with the fan on and off.
const results = surfaceTemperatureWhatIfs({
  cases: standardWhatIfs(),
  surfaceLoad: load,
  shape: "coil",
  diameter,
  airTemperature: celsius(40),
  airSpeed: metersPerSecond(3),
  pressure: pressureAtAltitude(meters(0)),
  surroundingsTemperature: celsius(40),
  emissivity: emissivity.value,
  radiatingEfficiency: 0.6,
});
line("Wire temperature, air and walls at 40 °C, 3 m/s, part of the surface that radiates freely 0.6");
for (const { name, balance, issue } of results) {
  if (balance === null) {
    item(name, `not covered: ${issue?.message ?? ""}`);
    continue;
  }
  const { surfaceTemperature, band, correlation, radiationShare } = balance;
  const end = (/** @type {number | null} */ at) => (at === null ? "?" : fixed(at, 0));
  item(
    name,
    `${fixed(surfaceTemperature, 0)} °C, ${end(band.low)} to ${end(band.high)} (${correlation}; radiated ${fixed(100 * (radiationShare ?? 0), 0)} %)`,
  );
  item(
    "",
    band.others
      .map((other) =>
        other.surfaceTemperature === null
          ? `${other.correlation} has no figure`
          : `${other.correlation} gives ${fixed(other.surfaceTemperature, 0)}`,
      )
      .join(", "),
  );
}
line("  The range takes each of these correlations with its convection 15 % up and down.");
for (const source of [
  "incropera-table-a4",
  "churchill-bernstein-1977",
  "hilpert-1933",
  "zukauskas-1972",
  "morgan-1975",
  "churchill-chu-1975",
])
  sources.add(source);
const opinions = highestElementTemperatures("NiCr 80/20");
for (const { basis } of opinions) sources.add(basis.source);
item(
  "Highest wire temperature by source",
  `${opinions.map(({ value }) => value).join(", ")} °C: take the lowest and stay 50 to 100 K below`,
);
for (const message of new Set(
  results.flatMap(({ balance }) => balance?.warnings ?? []).map((one) => one.message),
))
  line(`  Note: ${message}.`);
line();

// Hot and cold.
const running = results[0]?.balance?.surfaceTemperature ?? celsius(20);
const reaching = alloyDatasetsOf("NiCr 80/20").filter((one) => one.temperatureFactor !== undefined);
const spread = temperatureFactorSpread({
  datasets: reaching,
  temperature: running,
});
line(`Hot and cold at ${fixed(running, 0)} °C`);
for (const { dataset, value, basis } of spread.rows) {
  sources.add(basis.source);
  const hot = hotResistance({ coldResistance: cold, temperatureFactor: value });
  item(
    dataset,
    `Ct ${fixed(value, 3)}, hot ${fixed(hot, 2)} Ω, 10 kW at ${fixed(voltageFromPowerAndResistance({ power, resistance: hot }), 1)} V, first second ${fixed(coldStart({ power, temperatureFactor: value }).power / 1000, 2)} kW`,
  );
}
line(
  `  The sources that reach this temperature differ by ${fixed(100 * spread.spread, 1)} %: a cold reading alone does not tell them apart.`,
);
for (const id of spread.silent) {
  const { temperatures, values, basis } = alloyDataset(id).temperatureFactor ?? {};
  if (temperatures === undefined || values === undefined || basis === undefined) continue;
  sources.add(basis.source);
  const [first, last] = [temperatures[0] ?? 0, temperatures.at(-1) ?? 0];
  // Where its table ends it may lie outside the range of the others, so the spread above is not the whole of it.
  const there = temperatureFactorSpread({ datasets: reaching, temperature: celsius(last) });
  const end =
    temperatures.length > 2
      ? `its table runs from ${first} to ${last} °C`
      : `it has one figure, at ${last} °C`;
  const all = [there.lowest, there.highest, values.at(-1) ?? 1];
  item(
    id,
    `silent: ${end}; there Ct ${fixed(values.at(-1) ?? 1, 3)}, and with it the sources differ by ${fixed(100 * (Math.max(...all) / Math.min(...all) - 1), 1)} %`,
  );
}
line();

// One branch of another alloy: the element room gives the one resistance, the circuit room what it does.
const sound = ohms(7.68);
const swapped = swappedAlloyResistance({
  resistance: sound,
  oldResistivity: microohmMeters(1.09),
  newResistivity: microohmMeters(1.12),
  oldTemperatureFactor: 1,
  newTemperatureFactor: 1,
});
const heater = buildModule({
  banks: [{ id: "A", connection: "star", elementResistance: sound }],
  elements: { "A-L2": swapped },
});
const state = energise({ network: heater.network, supply: balancedSupply({ lineVoltage: volts(480) }) });
line(
  "If the L2 branch of a 30 kW, 480 V star were rewound to the same length in wire of 1.12 instead of 1.09 µΩ·m",
);
item("Its resistance", `${fixed(swapped, 3)} Ω instead of ${fixed(sound, 2)} Ω`);
item("Power of the star", `${fixed(state.totalPower / 1000, 2)} kW`);
item(
  "Line currents",
  state.lines
    .filter(({ node }) => node !== "N")
    .map(({ node, current }) => `${node} ${fixed(current, 1)} A`)
    .join(", "),
);
line();

line("Cautions");
line("  Isolate, lock out and prove dead before touching a coil; it also stays hot long after.");
line(
  "  No convection figure deserves better than ±15 % of the rise; a coil runs hotter than the single wire taken here.",
);
line("  A lost fan heats the wire within seconds: the air-flow interlock must act, not the operator.");
line("  The local code and a licensed electrician decide on conductors, protection and return to service.");
line();
line("Sources");
/** @type {{ id: string, title: string, author?: string, edition?: string, locator?: string }[]} */
const known = JSON.parse(readFileSync(new URL("../shared/sources.json", import.meta.url), "utf8"));
for (const { id, title, author, edition, locator } of known) {
  if (sources.has(id))
    line(`  ${[author, title, edition, locator].filter((part) => part !== undefined).join(", ")}`);
}
