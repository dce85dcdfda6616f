/** What a diagnosis accepts: every refusal names the argument, what was seen and what is allowed. */
import { buildModule, type HeatingModule } from "../../circuit/index.ts";
import {
  checkBetween,
  checkNonNegative,
  checkOneOf,
  checkOpenOr,
  checkPositive,
  fail,
  failAll,
  given,
  type Issue,
  type Ohms,
  type Open,
  onlyFields,
} from "../../quantity/index.ts";
import { readingWorth } from "../fit/meter.ts";
import { collect } from "../record/issues.ts";
import { isLive } from "./likelihood/model.ts";
import type { FieldMeasurement, FieldReading } from "./question/fieldReading.ts";
import { INSTRUMENT_OF, KINDS } from "./question/instruments.ts";
import { isLine } from "./question/lines.ts";
import type { DiagnosisInput, Instrument, LeadedOhmmeter } from "./question/types.ts";

const FIELDS: Readonly<Record<FieldReading["kind"], readonly string[]>> = {
  resistance: ["kind", "from", "to", "reads", "only"],
  current: ["kind", "at", "into", "reads"],
  voltage: ["kind", "from", "to", "reads"],
  drop: ["kind", "across", "reads"],
  insulation: ["kind", "from", "reads", "only"],
};

const UNITS = { resistance: "Ω", current: "A", voltage: "V", drop: "V", insulation: "Ω" } as const;

const INPUT = [
  "module",
  "alternatives",
  "readings",
  "instruments",
  "supply",
  "spread",
  "priors",
  "depth",
  "candidates",
];

/** Largest figure any reading may have: beyond it a unit has gone wrong by more than any slip. */
const LARGEST = 1e15;

/** Names that readings may use: those of the module and of its alternatives. Those of parts and joints are seldom asked for. */
class Names {
  readonly nodes = new Set<string>();
  #parts: Set<string> | null = null;
  #joints: Set<string> | null = null;

  constructor(readonly modules: readonly HeatingModule[]) {
    for (const { network } of modules) {
      for (const { from, to } of network.branches) this.nodes.add(from).add(to);
    }
  }

  /** Banks, branches and elements. */
  get parts(): ReadonlySet<string> {
    if (this.#parts === null) {
      this.#parts = new Set();
      for (const { elements } of this.modules) {
        for (const { id, bank, branch } of elements) this.#parts.add(bank).add(`${bank}-${branch}`).add(id);
      }
    }
    return this.#parts;
  }

  get joints(): ReadonlySet<string> {
    this.#joints ??= new Set(this.modules.flatMap(({ plan }) => (plan.joints ?? []).map(({ id }) => id)));
    return this.#joints;
  }
}

/** Names told of in a refusal: a large module has hundreds. */
const TOLD = 60;

function checkName(path: string, name: unknown, names: ReadonlySet<string>): void {
  if (typeof name === "string" && names.has(name)) return;
  checkOneOf(path, name, [...names].slice(0, TOLD));
}

/** The code of what is no list: nothing there, or something else; null for a list. */
const codeOfNoList = (list: unknown): "missing" | "wrong-type" | null =>
  Array.isArray(list) ? null : list === undefined || list === null ? "missing" : "wrong-type";

function checkOnly(path: string, only: readonly string[] | undefined, names: Names): void {
  if (only === undefined) return;
  const code = codeOfNoList(only) ?? (only.length === 0 ? "missing" : null);
  if (code !== null) fail({ code, path, expected: "at least one bank, branch or element", received: only });
  only.forEach((name, i) => {
    checkName(`${path}.${i}`, name, names.parts);
  });
}

function checkTwoNodes(path: string, from: string, to: string): void {
  if (from === to) {
    fail({
      code: "inconsistent",
      path: `${path}to`,
      expected: "two different nodes",
      received: `${from} to ${to}`,
    });
  }
}

/** Whether a node is a terminal, or one that a drawn joint on it sets apart. */
function isOn(node: string | undefined, at: string): boolean {
  const end = node?.indexOf("|") ?? -1;
  return (end < 0 ? node : node?.slice(0, end)) === at;
}

/** Whether some part of a module ends on a node, the one named if there is one. */
function endsOn({ elements, network }: HeatingModule, at: string, into: string | undefined): boolean {
  return elements.some(({ id, bank, branch }, i) => {
    if (into !== undefined && into !== id && into !== bank && into !== `${bank}-${branch}`) return false;
    const ends = network.branches[i];
    return isOn(ends?.from, at) || isOn(ends?.to, at);
  });
}

/** A wire that a clamp goes around must feed something, and at a floating star point be one of several. */
function checkClamp(at: string, into: string | undefined, names: Names): void {
  checkName("at", at, names.nodes);
  if (into !== undefined) checkName("into", into, names.parts);
  const fits = names.modules.some(
    (module) =>
      (into !== undefined || isLine(at) || (at === "N" && module.plan.neutral === "connected")) &&
      endsOn(module, at, into),
  );
  if (fits) return;
  const expected =
    into === undefined
      ? "a line, or what the wire feeds in `into`: all currents at a star point add up to 0"
      : `a part that ends on ${at}`;
  fail({ code: "inconsistent", path: "into", expected, received: into });
}

/** Volts are read to the neutral whether or not the module is on it. */
function checkNodeOrNeutral(path: string, name: string, { nodes }: Names): void {
  if (name !== "N" && !nodes.has(name)) checkName(path, name, new Set([...nodes, "N"]));
}

function checkPlaces(reading: FieldReading | FieldMeasurement, names: Names): void {
  switch (reading.kind) {
    case "resistance":
      checkName("from", reading.from, names.nodes);
      checkName("to", reading.to, names.nodes);
      checkTwoNodes("", reading.from, reading.to);
      checkOnly("only", reading.only, names);
      break;
    case "voltage":
      checkNodeOrNeutral("from", reading.from, names);
      checkNodeOrNeutral("to", reading.to, names);
      checkTwoNodes("", reading.from, reading.to);
      break;
    case "current":
      checkClamp(reading.at, reading.into, names);
      break;
    case "drop":
      checkName("across", reading.across, names.joints);
      break;
    case "insulation":
      checkName("from", reading.from, names.nodes);
      checkOnly("only", reading.only, names);
      break;
  }
}

function checkSize(path: string, reads: number, unit?: string): void {
  checkNonNegative(path, reads, unit);
  checkBetween(path, reads, 0, LARGEST, unit);
}

function checkReads(reading: FieldReading): void {
  const { kind, reads } = reading;
  if (kind === "resistance" || kind === "insulation") checkOpenOr("reads", reads as Ohms | Open, checkSize);
  else checkSize("reads", reads as number, UNITS[kind]);
}

function checkReading(reading: FieldReading | FieldMeasurement, names: Names, taken: boolean): void {
  const kind = checkOneOf("kind", reading.kind, ["resistance", "current", "voltage", "drop", "insulation"]);
  onlyFields(reading, taken ? FIELDS[kind] : FIELDS[kind].filter((name) => name !== "reads"));
  checkPlaces(reading, names);
  if (taken) checkReads(reading as FieldReading);
}

/** Checks one reading against the names of a module, as a question would. */
export function checkFieldReading(reading: FieldReading, module: HeatingModule): void {
  checkReading(given(reading, "reading"), new Names([module]), true);
}

function checkInstrument(path: string, instrument: Instrument): void {
  given(instrument, path);
  const { ofReading, digits, resolution } = instrument;
  const found: Issue[] = [];
  collect(found, `${path}.`, () => checkPositive("resolution", resolution));
  collect(found, `${path}.`, () =>
    readingWorth({ reading: 0, resolution: 1, accuracy: { ofReading, digits } }),
  );
  failAll(
    found.map((one) => ({
      ...one,
      path: one.path.replace("accuracy.", ""),
      message: one.message.replace("accuracy.", ""),
    })),
  );
}

function checkLeads({ leads }: LeadedOhmmeter): void {
  const path = "instruments.ohmmeter.leads";
  if (typeof leads === "object" && leads !== null) {
    checkNonNegative(`${path}.shorted`, leads.shorted, "Ω");
    checkBetween(`${path}.shorted`, leads.shorted, 0, 1e6, "Ω");
  } else checkOneOf(path, leads, ["unknown", "taken off"]);
}

/**
 * Checks a question; all readings are looked at before any is refused.
 * @returns the module built, and its alternatives
 */
export function checkQuestion(
  input: DiagnosisInput,
  planned: readonly FieldMeasurement[] = [],
): readonly HeatingModule[] {
  onlyFields(input, INPUT);
  const { module, alternatives = [], readings, instruments, supply, depth } = input;
  if (!Array.isArray(alternatives)) {
    fail({ code: "wrong-type", path: "alternatives", expected: "a list of plans", received: alternatives });
  }
  const found: Issue[] = [];
  const modules = [module, ...alternatives].flatMap((plan, i) => {
    const built = collect(found, i === 0 ? "module." : `alternatives.${i - 1}.`, () => buildModule(plan));
    return built === undefined ? [] : [built];
  });
  failAll(found);
  const checkList = (path: string, list: unknown, expected: string): void => {
    const code = codeOfNoList(list);
    if (code !== null) fail({ code, path, expected, received: list });
  };
  checkList("readings", readings, "a list of readings");
  checkList("candidates", planned, "a list of measurements");
  if (depth !== undefined) checkOneOf("depth", depth, ["single", "pairs"]);
  given(instruments, "instruments");
  onlyFields(instruments, KINDS, "instruments");
  const names = new Names(modules);
  const checkAll = (list: string, all: readonly (FieldReading | FieldMeasurement)[], taken: boolean): void =>
    all.forEach((one, i) => {
      const path = `${list}.${i}`;
      const there = collect(found, "", () => given(one, path));
      if (there !== undefined) collect(found, `${path}.`, () => checkReading(there, names, taken));
    });
  checkAll("readings", readings, true);
  checkAll("candidates", planned, false);
  failAll(found);
  for (const kind of KINDS) {
    const instrument = instruments[kind];
    if (instrument !== undefined) checkInstrument(`instruments.${kind}`, instrument);
    else if (readings.some((reading: FieldReading) => INSTRUMENT_OF[reading.kind] === kind)) {
      fail({
        code: "missing",
        path: `instruments.${kind}`,
        expected: "the instrument that readings were taken with",
        received: instrument,
      });
    }
  }
  if (instruments.ohmmeter !== undefined) checkLeads(instruments.ohmmeter);
  if (supply !== undefined) {
    checkPositive("supply.lineVoltage", supply?.lineVoltage, "V");
    checkBetween("supply.lineVoltage", supply.lineVoltage, 1e-3, 1e6, "V");
  } else if ([...readings, ...planned].some(isLive)) {
    const expected = "the nominal line voltage, since there are energised readings";
    fail({ code: "missing", path: "supply", expected, received: supply });
  }
  return modules;
}
