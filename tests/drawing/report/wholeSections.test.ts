/**
 * Sections of the report held whole, as a reader gets them in Markdown: every cell is a figure of the assessment written by hand
 * (`assessments.ts`) in the words and digits it is to have. The page in HTML holds the same tables.
 */
import { benchReport } from "electroheat/drawing";
import { describe, expect, it } from "vitest";
import { everything, parsed } from "../parsed.ts";
import { FULL, SPARSE } from "./assessments.ts";

/** Spaces that do not break are spaces to a reader. */
const plain = (text: string): string =>
  text.replaceAll("\u00a0", " ").replace(/electroheat \d\S*/, "electroheat");

const SECTIONS: Readonly<Record<string, string>> = {
  "Curing oven, lower module (invented)": `
- Equipment: Curing oven 3
- Serial or asset number: CO-0417
- Work order: W-118
- Technician: R. Invented
- Date: 12 March
`,
  "What to do next": `
1. Lift the link of A-L1 and read it alone. It reads open.
2. Remake joint J4 with new hardware. It is at 45 times the best.
`,
  "Branch resistances": `
*Branch resistances, as found*

| branch | measured | verdict | deviation | target | ± (k = 2) |
| --- | ---: | --- | ---: | ---: | ---: |
| A-L1 | open | **open** |  | 11.08 Ω |  |
| A-L2 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| A-L3 | 12.15(2) Ω | undecided | +9.7 % | 11.08 Ω | ± 0.070 Ω |
| B-L1 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| B-L2 | 13.40(2) Ω | **outside** | +21.0 % | 11.08 Ω | ± 0.070 Ω |
| B-L3 | at least 40 Ω | **high or open** |  | 11.08 Ω |  |

- B-L2: 1 open element in parallel would explain the reading.
- Verdicts are against the tolerance given, −5 % to +10 %, at two standard uncertainties.
- Leads and probe contact: 0.21(1) Ω, taken off.
- The readings agree with each other. In brackets: standard uncertainty in the last digit.

*Branch resistances, as left*

| branch | measured | verdict | deviation | target | ± (k = 2) |
| --- | ---: | --- | ---: | ---: | ---: |
| A-L1 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| A-L2 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| A-L3 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| B-L1 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| B-L2 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |
| B-L3 | 11.10(2) Ω | within | +0.2 % | 11.08 Ω | ± 0.070 Ω |

- Verdicts are against the tolerance given, −5 % to +10 %, at two standard uncertainties.
- Leads and probe contact: 0.21(1) Ω, taken off.
- The readings agree with each other. In brackets: standard uncertainty in the last digit.
`,
  Joints: `
*Joints, as found, worst first*

| joint | resistance | comparison | to best | heat | rise | graded, at full load | severity level |
| --- | ---: | --- | ---: | ---: | ---: | ---: | --- |
| J4 | 3.180 ± 0.070 mΩ | **investigate** | 45.2× | 19.3 W | 71 K | 71.6 to 72.4 K | 4 |
| J5 | 70.0 ± 4.0 µΩ | like the best | 1× | 420 mW |  |  |  |

- J4, severity level 4: repair immediately.

- Rule: twice the best of alike joints: common practice; a licensed electrician decides
- Rule: ANSI/NETA ATS-2003, Table 100.18
`,
  "Currents and unbalance": `
*Currents, as found*

| what | value | verdict | limit | mind |
| --- | ---: | --- | ---: | --- |
| line current L1 | 24.10 ± 0.98 A | **outside** | 47.2 to 49.1 A | Taken live: only by people qualified and equipped for it. |
| line current L2 | 48.0 ± 1.5 A | within |  |  |

*Unbalance, as found*

| what | value | verdict | limit |
| --- | ---: | --- | ---: |
| line voltage unbalance | 1.32 % | within | at most 2 % |
`,
  Insulation: `
*Insulation to the frame, as found*

| what | value | verdict | limit |
| --- | ---: | --- | ---: |
| L1 to the frame at 500 V | 42 MΩ | within | at least 1 MΩ |

*Insulation to the frame, as left*

| what | value | verdict | limit |
| --- | ---: | --- | ---: |
| L1 to the frame at 500 V | 42 MΩ | within | at least 1 MΩ |
`,
  "Power and line currents": `
*Power and line currents at full conduction*

| state | power | ± (k = 2) | L1 | L2 | L3 |
| --- | ---: | ---: | ---: | ---: | ---: |
| as found | 31.20 kW | ± 0.18 kW | 26.1 A | 44.3 A | 45.0 A |
| faulty branches renewed | 39.60 kW | ± 0.20 kW | 47.7 A | 47.6 A | 47.9 A |
| the same at plate voltage | 39.80 kW |  | 47.9 A | 47.8 A | 48.0 A |

- From measured resistances.
- At plate voltage −0.5 % from the plate's power.
- Every branch is judged sound or taken as renewed: the repaired amps are something to accept the repair by.
`,
  "If an element opens": `
*One element open, as drawn and repaired*

| opens | power left | of full | L1 | L2 | L3 | hardest survivor | across the break |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
| A-L1, A-L2 | 32.00 kW | 80.0 % | 24.0 A | 44.1 A | 44.1 A | 1.44× | 333 V |

What delta would need:

- Three times the power at the same voltage: 120 kW, 144 A a line.
- Supply of 277 V between lines to keep the plate power.

*One element open, with all banks in delta*

| opens | power left | of full | L1 | L2 | L3 | hardest survivor | across the break |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
| A-L1L2 | 100.0 kW | 83.3 % | 110.0 A | 110.0 A | 144.0 A | B-L1L2 1.00× | not known, live |

× is the survivor's power, and so its surface load, over its own healthy value. The voltage across the break is live.
`,
  "Hardware and torque": `
> **Caution:** The equipment maker's torque governs.

*line studs: 6 × 1/4-20*

| what | value | verdict | limit |
| --- | ---: | --- | ---: |
| torque to use | 8.5 N·m |  | 7.6 to 9.3 N·m |
| preload | 6.7 ± 2.0 kN |  |  |
| torque applied | 6 N·m | **outside** | 7.6 to 9.3 N·m |

- Spring washers under the nuts are renewed.
`,
  "Feed and protection": `
> **Caution:** The code adopted locally and its authority decide; edition NEC 2023, Table 310.16.
>
> **Caution:** Opening the feed is work for a licensed electrician.

*Checked by NEC 2023*

| what | value | verdict |
| --- | ---: | --- |
| design current | 60.1 A |  |
| conductor | 4 AWG | within |
| terminals | 75 °C |  |
`,
  "First heat": `
> **Caution:** First heat is live work: only by people qualified and equipped for it.

*Amps and power to expect at full conduction*

| what | value | limit |
| --- | ---: | ---: |
| line current L1 | 47.7 A | 45.5 to 49.9 A |

*Rises of the thermal scan to act on*

| what | value |
| --- | ---: |
| rise over the air, act at | 40 K |
`,
  "Parts and bars": `
*Parts to bring*

| part | quantity | why |
| --- | ---: | --- |
| element A-L1 | 1 | open |

*Bars to cut*

| bar | pieces | length of each | stock with saw cuts | mass of all |
| --- | ---: | ---: | ---: | ---: |
| star bar | 2 | 228.6 mm | 460.2 mm | 247 g |

*star bar: section and resistance*

| what | value |
| --- | ---: |
| current density | 1.2 A/mm² |
`,
  "Checklist for return to service": `
States are what the record shows. What it does not show is to be done, whatever was done.

*Checklist, before energising*

| what | state | evidence in the record |
| --- | --- | --- |
| Isolated and proved dead. | ☐ to do |  |
| Torque applied. | **☒ not passed** | 6 N·m on the line studs |

*Checklist, first heat*

| what | state | evidence in the record |
| --- | --- | --- |
| Amps by line. | ☑ done | 47.7 A |

*Checklist, after cooling down*

| what | state | evidence in the record |
| --- | --- | --- |
| Nuts checked cold. | ☐ to do |  |
`,
  "Taken for granted": `
- Wired as drawn: banks A, B in star, star points tied and floating.
- Hot resistance is 1.04 times cold, as given.

Figures are printed in SI units; sizes keep the system they were named in.
`,
  "Readings against the fit": `
*Ohm readings, as found*

| probes | read | by the fit | off, in std. uncertainties | sound module, no leads |
| --- | ---: | ---: | ---: | ---: |
| L1 to S | 11.32 Ω | 11.31 Ω | +0.4 | 11.08 Ω |
| L2 to S | OL |  |  | OL |

χ² 2.3 with 2 to spare, p 0.315.

*Ohm readings, as left*

| probes | read | by the fit | off, in std. uncertainties | sound module, no leads |
| --- | ---: | ---: | ---: | ---: |
| L1 to S | 11.32 Ω | 11.31 Ω | +0.4 | 11.08 Ω |
| L2 to S | OL |  |  | OL |

χ² 2.3 with 2 to spare, p 0.315.
`,
  "Basis of each figure": `
*Formula, or source with edition and table*

| figure | where | basis |
| --- | --- | --- |
| line current L1 | currents, as found | clamp ±(2 % + 5 digits); band: sound module at the supply measured |
| line current L2 | currents, as found | invented for a test |
| line voltage unbalance | unbalance, as found | invented for a test |
| L1 to the frame at 500 V | insulation, as found | common practice, no published source |
| L1 to the frame at 500 V | insulation, as left | common practice, no published source |
| torque to use | line studs | maker |
| preload; torque applied | line studs | invented for a test |
| design current | feed | 125 % of the heater current, NEC 2023, 425.4(B) |
| conductor | feed | NEC 2023, Table 310.16, 75 °C |
| terminals | feed | invented for a test |
| line current L1 | first heat | invented for a test |
| rise over the air, act at | first heat | ANSI/NETA ATS-2003, Table 100.18 |
| current density | bar star bar | invented for a test |
`,
  "What was not tested": `
- Protection and enclosure.
- Air flow and overtemperature cut-out.
`,
  "Looks odd": `
- L2 to S reads open. (common practice)

---

Worked out by electroheat from the bench record alone. The code adopted where the module is installed, the maker's instructions and a licensed electrician govern.
`,
};

describe("a section, word for word", () => {
  it.each(Object.entries(SECTIONS))("%s", (heading, body) => {
    const report = plain(benchReport({ assessment: FULL, format: "markdown" }));
    const own = report.split(/^#{1,3} /m).find((one) => one.startsWith(`${heading}\n`));
    expect(own).toBe(`${heading}\n${body}\n`.replace(/\n+$/, own?.endsWith("\n\n") ? "\n\n" : "\n"));
  });
});

it("of nothing says what is left out and why", () => {
  expect(
    plain(benchReport({ assessment: SPARSE, format: "markdown" })),
  ).toBe(`# Module without readings (invented)

## The answer

1. Nothing was read: nothing can be said of the module.

## Cautions

> **Caution:** Ohm readings only on a module that is isolated, locked out and proved dead.
>
> **Caution:** The code adopted where the module is installed, the maker's instructions and a licensed electrician govern.

## Evidence

## Working

### Taken for granted

Figures are printed in SI units; sizes keep the system they were named in.

### What was not tested

Left out of this report, because the record gives nothing for it:

- No next steps follow from the record.
- No diagnosis: it needs a nameplate, and readings as found that it can weigh.
- No ohm readings.
- No joint was measured: neither millivolt drops nor a thermal scan.
- No current was read under load.
- No insulation resistance was read.
- No connection diagram: there is nothing to write on it.
- No power or currents worked out: not every branch is known, or no voltage is.
- No what-if table: the power of the module is not known.
- No ways of running on compared: nothing is open, or the record says nothing of the process.
- No studs, nuts or screws in the record: no torque is given.
- The feed of the module was not checked.
- No amps to expect at the first heat: the draw is not known.
- No parts to bring and no bars to cut follow from the record.
- No checklist.
- No targets: the record has no nameplate. Branches are judged against each other, if at all.

---

Worked out by electroheat from the bench record alone. The code adopted where the module is installed, the maker's instructions and a licensed electrician govern.
`);
});

it.each(["SI", "US"] as const)("has the same tables in either form, cell by cell (%s)", (units) => {
  const markdown = benchReport({ assessment: FULL, format: "markdown", units });
  const rows = markdown
    .split("\n")
    .filter((line) => line.startsWith("| ") && !/^\| -{3}/.test(line))
    .map((line) =>
      line
        .slice(2, -2)
        .split(" | ")
        .map((cell) => cell.replace(/\*\*|\\/g, "").trim()),
    );
  const page = parsed(benchReport({ assessment: FULL, format: "html", units }));
  const cells = everything(page)
    .filter(({ name }) => name === "tr")
    .map(({ children }) => children.map(({ text, children: inner }) => (inner[0]?.text ?? text).trim()));
  expect(cells).toEqual(rows);
});
