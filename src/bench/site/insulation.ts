/** Insulation readings to the frame against every published limit that can apply: there is no common one. */
import type { Celsius, LineVolts, Ohms, Open, Volts } from "../../quantity/index.ts";
import { type InsulationCriterion, type InsulationVerdict, insulationVerdicts } from "../../wiring/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import { errorLimit } from "../day/instrumentLimits.ts";
import type { ParsedInstrument, ParsedReadings, Read } from "../record/parsed.ts";
import { ask } from "./asking.ts";
import { cautionOf, figure, judgedFigure, messagesOf, printedText } from "./figure.ts";

/** Every named limit; a new one would not compile until it is listed. */
const CRITERIA: Readonly<Record<InsulationCriterion, null>> = {
  "1 MΩ per kV": null,
  "IEC 60364-6": null,
  "IEC 60364-6 SELV or PELV": null,
  "IEC 60204-1": null,
  "NETA 100.1": null,
  "maker assembly": null,
  "maker element": null,
  "maker production": null,
  "maker storage": null,
};

const NO_RANGE =
  'The reading lies above the range of the tester, which is not in the record: note the range, as in ">550 MΩ".';
const NO_TEST_VOLTAGE = "The test voltage is not in the record.";
const TEMPERATURE = "Not corrected for temperature.";
/** The one limit that asks the same of every voltage it holds for: it is judged where no voltage is known. */
const FLOOR: InsulationCriterion = "IEC 60204-1";
/** Stands for a voltage nobody knows; the floor does not depend on it. */
const ANY_VOLTAGE = 230 as LineVolts;
const UNKNOWN = "The voltage is not known: only the limit that does not depend on it is judged.";
/** Stands for whatever reads less than an ohm, and for finding the limit where there is no figure to judge. */
const ONE_OHM = 1 as Ohms;

type InsulationReading = NonNullable<ParsedReadings["insulation"]>[number];

/** What the tester's accuracy makes of a reading; half of the last digit where only that is known. */
function halfWidthOf(reads: Read<Ohms | Open>, tester: ParsedInstrument<Ohms> | undefined): Ohms {
  const { value, resolution } = reads;
  if (value === "open") return 0 as Ohms;
  return (errorLimit({ value, resolution }, tester) ?? (resolution ?? 0) / 2) as Ohms;
}

/** The end of a range is no reading: it has the tester's percentage, and no last digit that could be off. */
const rangeHalfWidth = (end: Read<Ohms>, tester: ParsedInstrument<Ohms> | undefined): Ohms =>
  (end.value * (tester?.ofReading ?? 0)) as Ohms;

/** Only the range was passed: never outside a limit, and within it only where the end of the range is. */
const ABOVE = "Above the range of the tester, which ends at this value: it is more than this.";

function byCriterion(
  reading: InsulationReading,
  criterion: InsulationCriterion,
  nominal: { readonly lineVoltage: LineVolts; readonly elements: number },
  tester: ParsedInstrument<Ohms> | undefined,
): readonly Figure[] {
  const { reads, testVoltage } = reading;
  const { above } = reads;
  const read = above ?? reads;
  const resistance = read.value === "open" || read.value === 0 ? ONE_OHM : read.value;
  const halfWidth = above === undefined ? halfWidthOf(reads, tester) : rangeHalfWidth(above, tester);
  const asked = ask([], {}, (): InsulationVerdict => {
    const [only] = insulationVerdicts({
      resistance,
      halfWidth,
      nominalVoltage: nominal.lineVoltage,
      testVoltage: testVoltage?.value ?? (nominal.lineVoltage as number as Volts),
      // Kept with the answer and not corrected for; nobody quotes it here.
      temperature: 20 as Celsius,
      elementsInParallel: nominal.elements,
      criteria: [criterion],
    });
    // One limit asked, one answer.
    return only as InsulationVerdict;
  });
  // A limit that ends below this voltage has nothing to say of it.
  if (asked.found === null) return [];
  const { minimum, warnings, kind } = asked.found;
  const about = warnings.filter(({ path }) => path !== "testVoltage" || testVoltage !== undefined);
  const asking = about.find(({ path }) => path === "testVoltage")?.limit ?? 0;
  const tooLow = testVoltage !== undefined && testVoltage.value < asking;
  const shown = {
    label: `insulation at ${reading.from}, ${criterion}`,
    unit: "Ω",
    basis: `${printedText(asked.found)}; ${kind}`,
  };
  const caution = cautionOf([
    above === undefined ? null : ABOVE,
    ...messagesOf(about),
    testVoltage === undefined ? NO_TEST_VOLTAGE : null,
    TEMPERATURE,
  ]);
  if (read.value === "open") {
    const limit = { low: minimum, high: null };
    const why = cautionOf([NO_RANGE, caution]);
    return [figure({ ...shown, value: "open", limit, verdict: "undecided", caution: why })];
  }
  const judged = judgedFigure({ ...shown, value: read.value, halfWidth, low: minimum, caution });
  const verdict = tooLow ? asked.found.value : judged.verdict;
  // Of what lies above the range only the range's end is known.
  return [{ ...judged, verdict: above !== undefined && verdict !== "within" ? "undecided" : verdict }];
}

/**
 * Every reading by every criterion, worst reading of a node last as written.
 * @param readings - insulation readings of one day
 * @param lineVoltage - rated voltage between lines, V; `null` where it is not known, and then only the floor is judged
 * @param more.elements - elements measured together, 1 or more; 1 if left out, which asks most of them
 * @param more.tester - accuracy of the tester
 */
export function assessInsulation(
  readings: readonly InsulationReading[] | undefined,
  lineVoltage: LineVolts | null,
  more: { readonly elements?: number; readonly tester?: ParsedInstrument<Ohms> | undefined } = {},
): readonly Figure[] {
  const { elements = 1, tester } = more;
  return (readings ?? []).flatMap((reading): readonly Figure[] => {
    if (lineVoltage === null) {
      const { above } = reading.reads;
      const { value } = above ?? reading.reads;
      const basis = "not judged by the other limits: the voltage is not known";
      const floor = byCriterion(reading, FLOOR, { lineVoltage: ANY_VOLTAGE, elements }, tester);
      return [
        ...floor.map((one) => ({ ...one, caution: cautionOf([UNKNOWN, one.caution]) })),
        figure({
          label: `insulation at ${reading.from}`,
          value,
          unit: "Ω",
          basis,
          caution: above === undefined ? null : ABOVE,
        }),
      ];
    }
    return (Object.keys(CRITERIA) as InsulationCriterion[]).flatMap((criterion) =>
      byCriterion(reading, criterion, { lineVoltage, elements }, tester),
    );
  });
}
