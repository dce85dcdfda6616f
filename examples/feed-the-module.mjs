// What feeds the module: conductor and protection for two invented modules, by the North American rules and by IEC.
// Each answer says what decided, which edition and table it stands in, and who has the last word.
import { celsius, formatQuantity, kilowatts, lineCurrent, meters, volts } from "electroheat";
import {
  cableForLoad,
  conductorForLoad,
  conductorResistancePerLength,
  designCurrent,
  subdivision,
  voltageDrop,
} from "electroheat/wiring";

const amps = (/** @type {import("electroheat").Amperes} */ value) =>
  formatQuantity(value, { unit: "A", significantDigits: 4 });
/** @type {Set<string>} */
const cautions = new Set();
/** @type {Set<string>} */
const deferrals = new Set();

/** @param {import("electroheat/wiring").CodeResult<unknown>} answer */
function basis(answer) {
  for (const caution of answer.cautions) cautions.add(caution);
  for (const warning of answer.warnings) cautions.add(warning.message);
  deferrals.add(answer.deferral);
  console.log(`    decided by   ${answer.governing}`);
  const memory = answer.provenance === "memory" ? "; in part from memory" : "";
  console.log(
    `    stands in    ${answer.edition}, ${answer.table}, ${answer.row}, ${answer.column} (${answer.kind}${memory})`,
  );
}

/** @param {number} kw */
function northAmerica(kw) {
  const edition = "NEC 2023";
  const equipment = "process heating";
  const heaterCurrent = lineCurrent({ power: kilowatts(kw), lineVoltage: volts(480) });
  /** @type {import("electroheat/wiring").ConductorRun} */
  const run = {
    edition,
    installation: "raceway",
    material: "copper",
    insulationTemperature: celsius(90),
    ambient: celsius(40),
    currentCarryingConductors: 3,
    terminalTemperature: celsius(75),
  };
  console.log(`\n  ${edition}, 480 V, ${equipment}: ${amps(heaterCurrent)} per line`);
  const feed = conductorForLoad({ ...run, equipment, heaterCurrent });
  console.log(
    `    feed         ${feed.value} copper, ${feed.device} A device for ${amps(feed.designCurrent)} (1.25 × load)`,
  );
  basis(feed);
  const split = subdivision({ edition, equipment, current: heaterCurrent });
  if (split.required) {
    const part = conductorForLoad({ ...run, equipment, heaterCurrent: split.circuitCurrent });
    console.log(
      `    split into   ${split.value} circuits of ${amps(split.circuitCurrent)}, each ${part.value} and ${split.device} A`,
    );
    basis(split);
  } else {
    console.log(`    split        not asked for up to ${split.largestLoad ?? "any"} A`);
  }
  const resistance = conductorResistancePerLength({
    edition,
    size: feed.value,
    build: "stranded",
    metal: "uncoated copper",
    temperature: celsius(75),
  });
  const drop = voltageDrop({
    circuit: "three-phase",
    current: heaterCurrent,
    length: meters(30),
    resistancePerLength: resistance.value,
    supplyVoltage: volts(480),
  });
  const percent = (100 * drop.ratio).toFixed(2);
  console.log(
    `    30 m away    ${formatQuantity(drop.drop, { unit: "V", significantDigits: 3 })} drop (${percent} %), conductor at 75 °C`,
  );
}

/** @param {number} kw @param {"circuit-breaker" | "gG fuse"} deviceKind */
function iec(kw, deviceKind) {
  const edition = "IEC 60364-5-52:2009";
  const heaterCurrent = lineCurrent({ power: kilowatts(kw), lineVoltage: volts(400) });
  const design = designCurrent({ edition, heaterCurrent });
  console.log(`\n  ${edition}, 400 V: IB = ${amps(design.value)} per line, no factor for continuous load`);
  const cable = cableForLoad({
    edition,
    method: "B2",
    loadedConductors: 3,
    insulation: "PVC",
    material: "copper",
    ambient: celsius(40),
    circuits: 1,
    designCurrent: design.value,
    deviceKind,
  });
  const { capacity } = cable;
  console.log(`    feed         ${cable.value} copper, PVC, method B2, ${cable.device} A ${deviceKind}`);
  console.log(
    `    Iz           ${amps(capacity.value)} = ${amps(capacity.tableCapacity)} × ${capacity.ambientFactor} at 40 °C`,
  );
  basis(cable);
}

for (const [kw, deviceKind] of /** @type {const} */ ([
  [36, "circuit-breaker"],
  [90, "gG fuse"],
])) {
  console.log(`\n${kw} kW three-phase heating module`);
  northAmerica(kw);
  iec(kw, deviceKind);
}
console.log("\nBefore acting on any of this:");
for (const text of [...cautions, ...deferrals]) console.log(`  - ${text}`);
