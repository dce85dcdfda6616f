/** What an assessment takes for granted, said in full: a wrong one of these changes every figure below it. */
import { siteSupply } from "./day/assessDay.ts";
import { DAYS } from "./day/readings.ts";
import type { ParsedRecord } from "./record/parsed.ts";

function wiringText({ wiring }: ParsedRecord): string {
  const banks = (connection: "star" | "delta"): string => {
    const names = wiring.banks.filter((bank) => bank.connection === connection).map(({ id }) => id);
    if (names.length === 0) return "";
    return `${names.length > 1 ? "banks" : "bank"} ${names.join(", ")} in ${connection}`;
  };
  const stars = wiring.banks.filter(({ connection }) => connection === "star").length;
  const points =
    stars === 0
      ? ""
      : wiring.neutral === "connected"
        ? ", star points on the neutral"
        : stars > 1
          ? `, star points ${wiring.starPoints} and floating`
          : ", star point floating";
  return [banks("star"), banks("delta")].filter((part) => part !== "").join(" and ") + points;
}

/** Readings between lines alone, links in, are the same for a star and for a delta of three times its branches. */
function blindToWiring({ asFound, asLeft }: ParsedRecord): boolean {
  const readings = [...(asFound?.ohms ?? []), ...(asLeft?.ohms ?? [])];
  const lines = ["L1", "L2", "L3"];
  return (
    readings.length > 0 &&
    readings.every(({ from, to, alone }) => alone === undefined && lines.includes(from) && lines.includes(to))
  );
}

function supplyWords(measured: boolean, plate: boolean, lostLine: string | null): string {
  if (!measured) {
    return plate
      ? "No supply voltages given: the plate's voltage, balanced."
      : "No voltage known: neither draw nor what-if can be worked out.";
  }
  if (lostLine === null) return "Supply as measured line to line; its neutral is taken at the centre.";
  return `${lostLine} lost; everything after the repair at ${plate ? "the plate's voltage" : "the voltage left between the other two lines"}, balanced.`;
}

/** The assumptions behind an assessment. */
export function assumptionsOf(
  record: ParsedRecord,
  atTarget: readonly string[],
  lostLine: string | null,
  diagnosed: boolean,
): readonly string[] {
  const { temperatureFactor, nameplate } = record;
  const supply = siteSupply(record);
  return [
    `Wired as drawn: ${wiringText(record)}.`,
    ...(blindToWiring(record)
      ? [
          "These readings, line to line with the links in, cannot tell star from delta: if the drawing is wrong, verdicts and what-if are wrong with it. Look at the links, or read a branch alone.",
        ]
      : []),
    "Ohm readings were taken at about 20 °C. Resistances are constant at working temperature; the supply is sinusoidal.",
    temperatureFactor === undefined
      ? "No temperature factor given: hot resistance is taken equal to cold. Heating alloys rise a few per cent, so a sound cold branch reads that much below its target here, and the module draws that much less than printed."
      : `Hot resistance is ${Number(temperatureFactor.toPrecision(5))} times cold, as given.`,
    ...(nameplate === undefined
      ? [
          "No nameplate: a branch is held against the median of the branches with as many elements. What is wrong in all of them alike does not show.",
        ]
      : record.wiring.banks.length > 1
        ? [
            record.wiring.banks.some(({ power }) => power !== undefined)
              ? "Banks have the power that the record states; those without share equally what is left of the plate's."
              : "Plate power is shared equally among the banks.",
          ]
        : []),
    supplyWords(supply !== undefined, nameplate !== undefined, lostLine),
    ...(DAYS.some((day) => (record[day]?.currents ?? []).length > 0)
      ? ["Amps were taken hot, at full conduction, at the voltages stated."]
      : []),
    ...(DAYS.some((day) => (record[day]?.joints ?? []).length > 0)
      ? [
          "Joints listed together are alike and were measured alike; drops include what bar lies between the probes; rises are the joint's own, on a matt target or with the emissivity set.",
        ]
      : []),
    ...(diagnosed
      ? [
          "The diagnosis weighs each single fault, and two open elements, by odds that are our judgement before any reading; elements are made to −5 to +10 % in common and differ by 2 %; sound joints are like the lowest measured.",
        ]
      : []),
    ...(atTarget.length > 0
      ? [`Taken at target in the repaired module, because faulty or not known: ${atTarget.join(", ")}.`]
      : []),
  ];
}
