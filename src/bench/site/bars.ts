/** Jumper bars to cut: length, stock, mass, and what the bar is as a conductor. */
import { barResistance, barTemperature, cutList, netSection } from "../../joint/index.ts";
import { COPPER_IACS, type ConductorDataset, type LinearResistivity } from "../../material/index.ts";
import {
  type Amperes,
  type Celsius,
  fail,
  failAll,
  type Issue,
  type KilogramsPerCubicMeter,
  type Meters,
} from "../../quantity/index.ts";
import type { CutLine } from "../assessmentTypes.ts";
import type { ParsedBars, ParsedRecord } from "../record/parsed.ts";
import { ask, type FieldNames, insist } from "./asking.ts";
import { figure, judgedFigure } from "./figure.ts";

/** Lost in each saw cut where the record does not say: a hand or band saw takes less. Common practice, no published source. */
const KERF = 0.003 as Meters;
/** A four-wire meter reads the bar cold on the bench. */
const COLD = 20 as Celsius;

/** Air round the bar where the record names none; a terminal box is warmer. */
const ROOM = 20 as Celsius;
/** Bare copper, dull from service. Common practice; heat-transfer handbooks have 0.2 to 0.6 for it. */
const DULL = 0.4;
/** Rise that bare copper bars are customarily sized by: a bar at 65 °C in air of 35 °C. DIN 43671:1975, base of its table. */
const MOST_RISE = 30;

const MELTS = "It balances at no temperature up to 1000 °C: the bar is far too small.";

const copper: ConductorDataset = COPPER_IACS;

/** Bars are of copper of 100 % IACS: bar stock is within a few per cent of it. */
function ofCopper(): { readonly law: LinearResistivity; readonly density: KilogramsPerCubicMeter } {
  return {
    law: copper.resistivity as LinearResistivity,
    density: copper.density?.value as KilogramsPerCubicMeter,
  };
}

/** A hole must have metal round it: at the end of the bar, and towards the next one. */
function checkHole({ hole, overhang, pitch }: ParsedBars): void {
  if (hole === undefined) return;
  const radius = hole.value / 2;
  if (overhang.value <= radius)
    fail({
      code: "inconsistent",
      path: "overhang",
      expected: `more than half the hole, ${radius}: else the hole runs out of the bar's end`,
      received: overhang.value,
      unit: "m",
    });
  if (pitch.value <= hole.value)
    fail({
      code: "inconsistent",
      path: "pitch",
      expected: `more than the hole, ${hole.value}: else one hole runs into the next`,
      received: pitch.value,
      unit: "m",
    });
}

/** How warm the bar gets by its own heat alone; joints come on top. */
function ownRise(
  section: Pick<Parameters<typeof barTemperature>[0]["bar"], "width" | "thickness">,
  law: LinearResistivity,
  air: Celsius,
  current: Amperes,
) {
  const label = "rise of the bar by its own heat, plate current";
  const basis =
    "heat balance of a bare bar on edge in still air; at most the rise that DIN 43671 sizes bars by";
  const caution =
    "As if one bar carried all of the line current, without the heat of its joints, the elements or the box: those come on top.";
  const bar = {
    ...section,
    emissivity: DULL,
    air,
    resistivity20: law.resistivity,
    coefficient20: law.coefficient,
  };
  const asked = ask([], {}, () => barTemperature({ bar, current }));
  if (asked.found !== null)
    return judgedFigure({
      label,
      value: asked.found.temperature - air,
      unit: "K",
      basis,
      high: MOST_RISE,
      caution,
    });
  // Where nothing balances up to 1000 °C the bar is far too small; any other refusal is no verdict on it.
  const melts = asked.refused.code === "no-convergence";
  return figure({
    label,
    value: null,
    unit: "K",
    basis,
    limit: melts ? { low: null, high: MOST_RISE } : null,
    verdict: melts ? "outside" : null,
    caution: `${melts ? MELTS : `${asked.why}.`} ${caution}`,
  });
}

function assessBar(bars: ParsedBars, plateCurrent: Amperes | null, air: Celsius): CutLine {
  checkHole(bars);
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
      ...(plateCurrent === null ? [] : [ownRise(section, law, air, plateCurrent)]),
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
  { bars = [], ambient }: Pick<ParsedRecord, "bars" | "ambient">,
  plateCurrent: Amperes | null,
): readonly CutLine[] {
  const issues: Issue[] = [];
  const lines = bars.flatMap((one, i): CutLine[] => {
    const names: FieldNames = {
      ...Object.fromEntries(["studs", "pitch", "overhang"].map((field) => [field, `bars.${i}.${field}`])),
      bars: `bars.${i}.count`,
      holeDiameter: `bars.${i}.hole`,
    };
    const line = insist(issues, names, () => assessBar(one, plateCurrent, ambient?.value ?? ROOM));
    return line === null ? [] : [line];
  });
  failAll(issues);
  return lines;
}
