// What feeds the module: conductor and protection for two invented modules, by the North American rules and by IEC.
// Each answer says what decided, which edition and table it stands in, and who has the last word.
import { celsius, formatQuantity, kilowatts, lineCurrent, meters, volts } from "electroheat";
import {
  ambientForCable,
  ambientForConductor,
  cableForLoad,
  conductorForLoad,
  conductorResistancePerLength,
  designCurrent,
  subdivision,
  voltageDrop,
} from "electroheat/wiring";

const amps = (/** @type {import("electroheat").Amperes} */ value) =>
  formatQuantity(value, { unit: "A", significantDigits: 4 });
const line = (/** @type {string} */ what, /** @type {string} */ text) =>
  console.log(`    ${what.padEnd(16)}${text}`);
/** @type {Set<string>} */
const cautions = new Set();
/** @type {Set<string>} */
const deferrals = new Set();

/** What each constraint means to the one who reads it. */
const IN_WORDS = /** @type {Readonly<Record<string, string>>} */ ({
  termination: "the terminals: their temperature column must carry the design current",
  "corrected ampacity": "the ampacity after ambient and conductor count must carry the load",
  "small conductor limit": "the largest device a small conductor may have",
  "device step": "the device must be within the next standard size above the ampacity",
  "In ≤ Iz": "the device must not exceed the capacity of the cable",
  "In ≤ Iz/k3": "a gG fuse asks for more cable than its rating",
});

/** @param {import("electroheat/wiring").CodeResult<unknown>} answer */
function basis(answer) {
  for (const caution of answer.cautions) cautions.add(caution);
  for (const warning of answer.warnings) cautions.add(warning.message);
  deferrals.add(answer.deferral);
  const words = IN_WORDS[answer.governing];
  const [figures, names] = /** @type {const} */ (["provenance", "labelProvenance"]).map((field) =>
    answer.cells.some((cell) => cell[field] === "memory"),
  );
  const read = figures
    ? "in part from memory"
    : names
      ? "figures read in print, table number from memory"
      : "read in print";
  line("decided by", words === undefined ? answer.governing : `${answer.governing} (${words})`);
  line(
    "stands in",
    `${answer.edition}, ${answer.table}, ${answer.row}, column "${answer.column}" (${answer.kind}; ${read})`,
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
  line("run", "90 °C copper, three conductors in a raceway, 40 °C around it, terminals marked 75 °C");
  const feed = conductorForLoad({ ...run, equipment, heaterCurrent });
  line(
    "feed",
    `${feed.value} copper, ${feed.device} A device for a design current of ${amps(feed.designCurrent)} (1.25 × load)`,
  );
  const { ampacity } = feed;
  const terminal = ampacity.terminationAmpacity;
  line(
    "ampacity",
    `${amps(ampacity.correctedAmpacity)} = ${ampacity.tableAmpacity} A × ${ampacity.ambientFactor} for ambient` +
      (terminal === null ? "" : `; ${terminal} A in the column of the terminals`),
  );
  basis(feed);
  const hottest = ambientForConductor({ ...run, equipment, heaterCurrent, size: feed.value });
  line("still good at", `${hottest.value} °C around the conductor, not above`);
  const split = subdivision({ edition, equipment, current: heaterCurrent });
  if (split.required) {
    const each = { ...run, equipment, heaterCurrent: split.circuitCurrent };
    const apart = conductorForLoad(each);
    const together = conductorForLoad({ ...each, currentCarryingConductors: 3 * split.value });
    line(
      "split into",
      `${split.value} circuits of ${amps(split.circuitCurrent)}, ${split.device} A device each`,
    );
    line("  own raceways", `${apart.value} each`);
    line(
      "  one raceway",
      `${together.value} each, ${3 * split.value} conductors × ${together.ampacity.countFactor}`,
    );
    basis(split);
  } else {
    line("split", `not asked for up to ${split.largestLoad ?? "any"} A`);
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
  const lost = (100 * (1 - drop.powerRatio)).toFixed(1);
  line(
    "30 m away",
    `${formatQuantity(drop.drop, { unit: "V", significantDigits: 3 })} drop (${percent} %), ${lost} % less heat, conductor at 75 °C`,
  );
  for (const caution of drop.cautions) cautions.add(caution);
}

/** @param {number} kw @param {"circuit-breaker" | "gG fuse"} deviceKind */
function iec(kw, deviceKind) {
  const edition = "IEC 60364-5-52:2009";
  const heaterCurrent = lineCurrent({ power: kilowatts(kw), lineVoltage: volts(400) });
  const design = designCurrent({ edition, heaterCurrent });
  console.log(`\n  ${edition}, 400 V: IB = ${amps(design.value)} per line, no factor for continuous load`);
  /** @type {import("electroheat/wiring").CableRun} */
  const run = {
    edition,
    method: "B2",
    loadedConductors: 3,
    insulation: "PVC",
    material: "copper",
    ambient: celsius(40),
    circuits: 1,
  };
  const cable = cableForLoad({ ...run, designCurrent: design.value, deviceKind });
  const { capacity } = cable;
  line("run", `PVC copper, ${capacity.baseConditions.at(-1)}; one circuit, 40 °C around it`);
  line("feed", `${cable.value} copper, In = ${cable.device} A ${deviceKind}`);
  const factor =
    cable.requiredCapacity > cable.device ? `, at least ${amps(cable.requiredCapacity)} for this fuse` : "";
  line(
    "Iz",
    `${amps(capacity.value)} = ${capacity.tableCapacity} A × ${capacity.ambientFactor} for ambient${factor}`,
  );
  basis(cable);
  const hottest = ambientForCable({ ...run, size: cable.value, designCurrent: design.value, deviceKind });
  line("still good at", `${hottest.value} °C around the cable, not above`);
}

for (const [kw, deviceKind] of /** @type {const} */ ([
  [36, "circuit-breaker"],
  [90, "gG fuse"],
])) {
  console.log(`\n${kw} kW three-phase heating module`);
  northAmerica(kw);
  iec(kw, deviceKind);
}
console.log(
  "\nNot sized here: the equipment grounding or protective conductor, short-circuit rating, disconnecting means.",
);
console.log("\nBefore acting on any of this:");
for (const text of [...cautions, ...deferrals]) console.log(`  - ${text}`);
