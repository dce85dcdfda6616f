/** What the instruments of a record make of its readings: error limits by the maker's statement. */
import { failAll, type Issue, issue } from "../../quantity/index.ts";
import { readingWorth } from "../fit/meter.ts";
import type { ParsedInstrument, ParsedRecord, ParsedSupply, Read } from "../record/parsed.ts";
import { DAYS } from "./readings.ts";

type Kind = "clamp" | "voltmeter" | "millivoltmeter" | "insulationTester";
type Quoted = readonly [path: string, read: Read<unknown> | undefined];

const voltages = (path: string, supply: ParsedSupply | undefined): Quoted[] =>
  (["v12", "v23", "v31"] as const).map((name) => [`${path}.${name}`, supply?.[name]] as const);

/** Every reading of each instrument, with its path. */
function readingsOf(record: ParsedRecord): Readonly<Record<Kind, readonly Quoted[]>> {
  const days = DAYS.map((day) => [day, record[day] ?? {}] as const);
  return {
    clamp: days.flatMap(([day, { currents = [], joints = [] }]) => [
      ...currents.map(({ reads }, i): Quoted => [`${day}.currents.${i}.reads`, reads]),
      ...joints.map(({ current }, i): Quoted => [`${day}.joints.${i}.current`, current]),
    ]),
    voltmeter: [
      ...voltages("supply", record.supply),
      ...days.flatMap(([day, { supply }]) => voltages(`${day}.supply`, supply)),
    ],
    millivoltmeter: days.flatMap(([day, { joints = [] }]) =>
      joints.map(({ drop }, i): Quoted => [`${day}.joints.${i}.drop`, drop]),
    ),
    insulationTester: days.flatMap(([day, { insulation = [] }]) =>
      insulation.map(({ reads }, i): Quoted => [`${day}.insulation.${i}.reads`, reads]),
    ),
  };
}

/** A plain number does not show its last digit: the instrument's must be given then. Once for each instrument. */
export function checkInstruments(record: ParsedRecord): void {
  const found: Issue[] = [];
  for (const [kind, quoted] of Object.entries(readingsOf(record))) {
    const instrument = record.instruments?.[kind as Kind];
    if (instrument === undefined || instrument.resolution !== undefined) continue;
    const plain = quoted.find(
      ([, read]) => read !== undefined && read.value !== "open" && read.resolution === null,
    );
    if (plain === undefined) continue;
    found.push(
      issue({
        code: "missing",
        path: `instruments.${kind}.resolution`,
        expected: `one unit of the instrument's last digit, because ${plain[0]} is a plain number`,
        received: undefined,
      }),
    );
  }
  failAll(found);
}

/** One unit of the last digit of a reading: as quoted, or the instrument's; the lack of both has been refused. */
export const lastDigit = <Q>(read: Read<Q>, instrument: ParsedInstrument<Q>): number =>
  read.resolution ?? (instrument.resolution?.value as unknown as number);

/** Largest error of a reading by the maker's statement; null without the instrument. */
export function errorLimit<Q>(read: Read<Q>, instrument: ParsedInstrument<Q> | undefined): number | null {
  if (instrument === undefined) return null;
  return readingWorth({
    reading: read.value as unknown as number,
    resolution: lastDigit(read, instrument),
    accuracy: instrument,
  }).limit;
}
