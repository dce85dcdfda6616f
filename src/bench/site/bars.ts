/** Jumper bars to cut: length, stock, mass, and what the bar is as a conductor. */
import { barResistance, cutList, netSection } from "../../joint/index.ts";
import { COPPER_IACS, type ConductorDataset, type LinearResistivity } from "../../material/index.ts";
import {
  type Amperes,
  type Celsius,
  failAll,
  type Issue,
  type KilogramsPerCubicMeter,
  type Meters,
} from "../../quantity/index.ts";
import type { CutLine } from "../assessmentTypes.ts";
import type { ParsedBars, ParsedRecord } from "../record/parsed.ts";
import { type FieldNames, insist } from "./asking.ts";
import { figure } from "./figure.ts";

/** Lost in each saw cut where the record does not say: a hand or band saw takes less. Common practice, no published source. */
const KERF = 0.003 as Meters;
/** A four-wire meter reads the bar cold on the bench. */
const COLD = 20 as Celsius;

const copper: ConductorDataset = COPPER_IACS;

/** Bars are of copper of 100 % IACS: bar stock is within a few per cent of it. */
function ofCopper(): { readonly law: LinearResistivity; readonly density: KilogramsPerCubicMeter } {
  return {
    law: copper.resistivity as LinearResistivity,
    density: copper.density?.value as KilogramsPerCubicMeter,
  };
}

function assessBar(bars: ParsedBars, plateCurrent: Amperes | null): CutLine {
  const { id, count = 1, studs } = bars;
  const { law, density } = ofCopper();
  const section = { width: bars.width.value, thickness: bars.thickness.value };
  const pitch = bars.pitch.value;
  const cut = cutList({
    studs,
    pitch,
    overhang: bars.overhang.value,
    bars: count,
    kerf: bars.kerf?.value ?? KERF,
    ...section,
    density,
  });
  const net = netSection({
    ...section,
    ...(bars.hole === undefined ? {} : { holeDiameter: bars.hole.value }),
  });
  // Holes lie clamped under their nuts: they belong to the joints, not to the bar between them.
  const resistance = barResistance({
    resistivity20: law.resistivity,
    coefficient20: law.coefficient,
    temperature: COLD,
    length: ((studs - 1) * pitch) as Meters,
    ...section,
  });
  const hole = bars.hole === undefined ? "no hole in the record: full section" : "(width − hole)·thickness";
  return {
    id,
    count,
    ...cut,
    figures: [
      figure({ label: "section net of the hole", value: net, unit: "m²", basis: hole }),
      figure({
        label: "current density at plate current",
        value: plateCurrent === null ? null : plateCurrent / net,
        unit: "A/m²",
        basis:
          plateCurrent === null
            ? "no plate current: no nameplate in the record"
            : "line current at plate voltage over net section, as if one bar carried all of it",
      }),
      figure({
        label: "resistance of a bar, first stud to last, 20 °C",
        value: resistance,
        unit: "Ω",
        basis: "R = ρ·length/(width·thickness), copper of 100 % IACS (IEC 60028); joints not in it",
      }),
    ],
  };
}

/**
 * What to cut for the bars of the record.
 * @throws ElectroheatError listing bars that cannot be, by path
 */
export function assessBars(
  { bars = [] }: Pick<ParsedRecord, "bars">,
  plateCurrent: Amperes | null,
): readonly CutLine[] {
  const issues: Issue[] = [];
  const lines = bars.flatMap((one, i): CutLine[] => {
    const fields = ["studs", "pitch", "overhang", "kerf", "width", "thickness"];
    const names: FieldNames = {
      ...Object.fromEntries(fields.map((field) => [field, `bars.${i}.${field}`])),
      bars: `bars.${i}.count`,
      holeDiameter: `bars.${i}.hole`,
      length: `bars.${i}.pitch`,
    };
    const line = insist(issues, names, () => assessBar(one, plateCurrent));
    return line === null ? [] : [line];
  });
  failAll(issues);
  return lines;
}
