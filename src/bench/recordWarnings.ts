/** What looks odd in a record that is legal all the same: never silence, never a refusal. */
import type { Warning } from "../quantity/index.ts";
import type { ResistanceAssessment } from "./assessTypes.ts";
import { DAYS, type Day } from "./day/readings.ts";
import type { ParsedRecord, ParsedSupply } from "./record/parsed.ts";
import { nameplateTargets } from "./targets.ts";

/** Fields of a plate that a record calls otherwise. */
const FIELDS: Readonly<Record<string, string>> = { lineVoltage: "voltage" };

/** The plate's own warnings: each bank's share would repeat them. */
export function plateWarnings(record: ParsedRecord): readonly Warning[] {
  const [bank] = record.wiring.banks;
  const { nameplate } = record;
  if (bank === undefined || nameplate === undefined) return [];
  const { warnings } = nameplateTargets({
    power: nameplate.power.value,
    lineVoltage: nameplate.voltage.value,
    connection: bank.connection,
    banks: record.wiring.banks.length,
  });
  return warnings.map((warning) => ({
    ...warning,
    path: `nameplate.${FIELDS[warning.path] ?? warning.path}`,
  }));
}

/** Elements of one module are of one kind more often than not: an equal share that makes them unlike is worth a word. Common practice. */
const UNLIKE = 0.05;

function shareWarnings({ wiring, nameplate }: ParsedRecord): readonly Warning[] {
  const { banks } = wiring;
  if (nameplate === undefined || banks.some(({ power }) => power !== undefined)) return [];
  const each = banks.map(
    ({ elementsInParallel = 1, elementsInSeries = 1 }) =>
      nameplate.power.value / (3 * banks.length * elementsInParallel * elementsInSeries),
  );
  const [most, least] = [Math.max(...each), Math.min(...each)];
  if (most <= least * (1 + UNLIKE)) return [];
  const shown = banks.map(({ id }, i) => `${Number((each[i] as number).toPrecision(3))} W in bank ${id}`);
  return [
    {
      code: "assumed",
      path: "wiring.banks",
      message: `plate power shared equally among the banks makes unlike elements, ${shown.slice(0, 4).join(", ")}: state the power of each bank if that is not so, or sound elements are called bad`,
      source: "common practice",
    },
  ];
}

/** A supply this far from the plate's voltage is more likely a voltage to neutral, or another system's. Common practice. */
const SUPPLY_OFF = 0.2;

function supplyWarnings(
  path: string,
  supply: ParsedSupply | undefined,
  nameplate: ParsedRecord["nameplate"],
): readonly Warning[] {
  if (supply === undefined || nameplate === undefined) return [];
  const plate = nameplate.voltage.value;
  return (["v12", "v23", "v31"] as const).flatMap((name): Warning[] => {
    const measured = supply[name].value;
    const off = measured / plate - 1;
    if (Math.abs(off) <= SUPPLY_OFF) return [];
    const hint =
      Math.abs(measured * Math.sqrt(3) - plate) < 0.05 * plate ? "; it looks like a voltage to neutral" : "";
    return [
      {
        code: "suspicious",
        path: `${path}.${name}`,
        message: `${measured} V between lines where the plate says ${plate} V${hint}`,
        limit: plate * (off < 0 ? 1 - SUPPLY_OFF : 1 + SUPPLY_OFF),
        unit: "V",
        source: "common practice",
      },
    ];
  });
}

/** Leads and probe contact of a hand-held meter stay below this, Ω. Common practice. */
const LEADS_HIGH = 1;

function leadWarnings({ leads, leadsUncertainty }: ResistanceAssessment): readonly Warning[] {
  if (leads === null || leadsUncertainty === null) return [];
  const base = {
    code: "suspicious",
    path: "instruments.ohmmeter.leads",
    unit: "Ω",
    source: "common practice",
  } as const;
  const shown = `${leads.toFixed(2)} Ω`;
  if (leads < -2 * leadsUncertainty) {
    return [
      {
        ...base,
        limit: 0,
        message: `the readings ask for leads of ${shown}, which cannot be: were they taken off some readings already, or is a star point reached through a joint?`,
      },
    ];
  }
  if (leads > LEADS_HIGH + 2 * leadsUncertainty) {
    return [
      {
        ...base,
        limit: LEADS_HIGH,
        message: `leads and probe contact of ${shown} are much: look for a bad lead, dirty studs, or a joint that every reading passes through`,
      },
    ];
  }
  return [];
}

/** Tolerances of elements are some per cent; wider than this is a slip, such as 10 for 10 %. Common practice. */
const TOLERANCE_HIGH = 0.5;

/** A tolerance that looks like a figure in per cent, or judges nothing. */
function wideTolerance({ tolerance }: ParsedRecord): readonly Warning[] {
  return (["low", "high"] as const).flatMap((side): Warning[] => {
    const given = tolerance?.[side] ?? 0;
    if (Math.abs(given) <= TOLERANCE_HIGH) return [];
    const percent = `${Number((given * 100).toPrecision(6))} %`;
    return [
      {
        code: "suspicious",
        path: `tolerance.${side}`,
        message: `a tolerance is a ratio, 0.1 for 10 %: ${given} lets a branch be off by ${percent}, and no verdict is worth anything by it`,
        limit: side === "low" ? -TOLERANCE_HIGH : TOLERANCE_HIGH,
        source: "common practice",
      },
    ];
  });
}

/** A tolerance so wide that a branch with one of its parallel elements open would pass. */
function toleranceWarnings({ tolerance, wiring }: ParsedRecord): readonly Warning[] {
  if (tolerance === undefined) return [];
  return wiring.banks.flatMap(({ id, elementsInParallel: n = 1 }): Warning[] => {
    if (n < 2 || n / (n - 1) > 1 + tolerance.high) return [];
    return [
      {
        code: "suspicious",
        path: "tolerance.high",
        message: `bank ${id}: with ${n} elements in parallel this tolerance would pass a branch with one of them open; read them one by one`,
        limit: n / (n - 1) - 1,
        source: "common practice",
      },
    ];
  });
}

/** A reading off by about a thousand is a slip of the unit: within these ratios of 1000 or 1/1000. Common practice. */
const SLIP = { low: 500, high: 2000 };

/** Ohms that read about a thousand times, or a thousandth, of what a sound module would show. */
function slipWarnings(day: Day, { readings, expectedReadings }: ResistanceAssessment): readonly Warning[] {
  return readings.flatMap(({ reads, from, to }, i): Warning[] => {
    const sound = expectedReadings[i];
    if (typeof reads !== "number" || typeof sound !== "number" || reads <= 0 || sound <= 0) return [];
    const times = Math.max(reads / sound, sound / reads);
    if (times < SLIP.low || times > SLIP.high) return [];
    return [
      {
        code: "suspicious",
        path: `${day}.ohms.${i}.reads`,
        message: `${from} to ${to} reads about ${reads > sound ? "a thousand times" : "a thousandth of"} what a sound module shows: was the unit mistaken (Ω, kΩ, mΩ)?`,
        limit: sound * (reads > sound ? SLIP.low : 1 / SLIP.low),
        unit: "Ω",
        source: "common practice",
      },
    ];
  });
}

/** All that looks odd. */
export function recordWarnings(
  record: ParsedRecord,
  days: readonly ResistanceAssessment[],
): readonly Warning[] {
  const { nameplate } = record;
  // What judges nothing at all need not be told that it passes an open element as well.
  const wide = wideTolerance(record);
  return [
    ...plateWarnings(record),
    ...shareWarnings(record),
    ...supplyWarnings("supply", record.supply, nameplate),
    ...DAYS.flatMap((day) => supplyWarnings(`${day}.supply`, record[day]?.supply, nameplate)),
    ...(wide.length > 0 ? wide : toleranceWarnings(record)),
    ...days.flatMap((one, i) => slipWarnings(DAYS[i] as Day, one)),
    ...days.flatMap(leadWarnings),
  ];
}
