/** Public functions without an entry, each with its reason; and the rooms whose entries are still to be written. */

/** Rooms without all their entries. A test fails as soon as one listed here is complete: then take it off. */
export const PENDING: readonly string[] = [];

const TAKES_A_FUNCTION = "takes a function, which no plain value can stand for";
const NUMBERED_NODES = "a building block on numbered nodes; networks are solved by circuit.energise";

/** `room.function` → why it has no entry. */
export const EXCEPTIONS: Readonly<Record<string, string>> = {
  "numeric.bracketedRoot": TAKES_A_FUNCTION,
  "numeric.integrateOde": TAKES_A_FUNCTION,
  "numeric.largestFirst": TAKES_A_FUNCTION,
  "numeric.factorConductances": NUMBERED_NODES,
  "numeric.solveConductances": NUMBERED_NODES,
  "circuit.networkResponses": NUMBERED_NODES,
  "circuit.checkNetwork": "returns nothing: a check that every function on networks makes itself",
  "circuit.findBranch": "gives back a part of its own input",
  "bench.explanationGroupWords":
    "words for one group of a diagnosis; bench.diagnosisText puts all of them into words",
  "wiring.editionIssues":
    "takes a value of any shape, to say what is wrong with it; every function that takes an edition calls it",
};

/** `room.function input` → what narrows its range further in the docstring's example, so that an end cannot be tried there. */
export const NARROWED: Readonly<Record<string, string>> = {
  "circuit.switchFault failed": "switchedLines",
  "joint.barResistance temperature": "coefficient20",
  "wiring.designCurrent heaterCurrent": "motorCurrent",
  "wiring.shortCircuitSection initialTemperature": "finalTemperature",
  "wiring.shortCircuitSection finalTemperature": "initialTemperature",
  "wiring.conductorForLoad heaterCurrent": "motorCurrent",
  "wiring.ambientForConductor heaterCurrent": "motorCurrent",
  "material.conductorResistivity temperature": "conductor",
  "material.conductorResistance temperature": "conductor",
  "material.namedConductorResistance temperature": "conductor",
  "process.airHeatingPower outlet": "inlet",
  "process.airFlowForRise outlet": "inlet",
  "process.exhaustHeat oven": "makeUp",
  "process.airChangeHeat oven": "makeUp",
  "process.heatUpTime target": "ambient",
  "process.holdingPower target": "ambient",
  "process.coolDownTime target": "ambient",
  "process.coolDownTime start": "target",
  "process.ovenFromTwoReadings first": "ambient",
  "process.ovenFromTwoReadings second": "first",
  "process.cyclicTemperature hotTemperature": "coldTemperature",
  "process.ovenHeatUp target": "oven.ambient",
  "process.heatUpOptions target": "oven.ambient",
  "process.twoNodeHeatUp target": "ambient",
  "element.operatingPoint voltage": "power",
  "element.radiantSurfaceLoad temperature": "zeroCelsius",
  "element.radiantSurfaceLoad surroundingsTemperature": "zeroCelsius",
  "element.radiantTemperatureAtVoltage temperature": "zeroCelsius",
  "bench.degradedHeatUp target": "oven.ambient",
  "bench.degradedOptions target": "oven.ambient",
};

/** `room.function input` → field of the result that repeats the input as it was given. */
export const ECHOED: Readonly<Record<string, string>> = {
  "circuit.buildModule neutral": "plan",
  "joint.tightening allowedShare": "proofBasis",
};
