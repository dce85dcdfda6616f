/**
 * Every field of a bench record that the sheet has a place for. Form, record and the messages beside the fields are all made from
 * this one description; a test holds it to a record with everything in it.
 */
import {
  amps,
  choice,
  kilowatts,
  length,
  megohms,
  millivolts,
  number,
  ohms,
  percent,
  quantity,
  rise,
  temperature,
  text,
  torque,
  volts,
} from "./fieldTypes.mjs";

/** @import { Field, Group, Section, Table } from "./fieldTypes.mjs" */
/** @import { NutFactorCondition, StrengthStandard } from "electroheat/joint" */
/** @import { EquipmentClass, IecEditionName, NecEdition } from "electroheat/wiring" */

/** @type {readonly (NecEdition | IecEditionName)[]} */
const editions = ["NEC 2023", "NEC 2020", "NEC 2017", "IEC 60364-5-52:2009", "IEC 60204-1:2005"];
/** @type {readonly EquipmentClass[]} */
const equipment = ["process heating", "space heating", "appliance", "furnace standard", "machine"];
/** @type {readonly StrengthStandard[]} */
const standards = ["ISO 898-1", "ISO 3506-1", "SAE J429", "ASTM F593", "brass C36000"];
/** @type {readonly NutFactorCondition[]} */
const conditions = [
  "dry steel",
  "machine-oiled steel",
  "cadmium-plated",
  "phosphated and oiled",
  "zinc-plated",
  "dry stainless on stainless",
  "zinc-flake",
  "stainless with anti-seize",
  "black oxide and oil",
  "PTFE or wax coated",
];

/** What a field may suggest; anything else may be written all the same, and the library says what it does not know. */
export const SUGGESTIONS = {
  editions,
  equipment,
  standards,
  conditions,
  installations: ["raceway", "free air", "high-temperature raceway", "B2", "C", "E"],
  insulations: ["75 °C", "90 °C", "PVC", "XLPE"],
  conductors: ["copper", "aluminium"],
};

/** @param {string} path @param {string} legend @param {readonly Field[]} fields @param {string} [note] @returns {Group} */
const group = (path, legend, fields, note) => ({
  form: "group",
  path,
  legend,
  fields,
  ...(note ? { note } : {}),
});

/**
 * @param {Table["form"]} form @param {string} path @param {string} legend @param {string} one
 * @param {readonly Field[]} fields @param {string} [note] @returns {Table}
 */
const table = (form, path, legend, one, fields, note) => ({
  form,
  path,
  legend,
  one,
  fields,
  always: path === "wiring.banks",
  ...(note ? { note } : {}),
});

const needed = { needed: true };
const nodes = { list: "nodes" };
const parts = { list: "parts" };
const supply = [volts("v12", "L1 to L2"), volts("v23", "L2 to L3"), volts("v31", "L3 to L1")];
const accuracy = [percent("ofReading", "% of reading"), number("digits", "last digits")];

/** @param {string} day @param {string} title @param {boolean} open @returns {Section} */
const readings = (day, title, open) => ({
  title,
  open,
  parts: [
    table(
      "lines",
      `${day}.ohms`,
      "Ohms on the dead module",
      "ohm reading",
      [
        text("from", "from", { ...needed, ...nodes }),
        text("to", "to", { ...needed, ...nodes }),
        ohms("reads", "reads", needed),
        text("alone", "alone", parts),
        { name: "ownStuds", label: "on own studs", kind: "mark" },
      ],
      "Isolated, locked out, proved dead. OL where the meter shows an open path. Alone: the bank or branch read with the links of the others lifted; blank if all were in. On own studs: its own links lifted too, the probes on the element.",
    ),
    table("lines", `${day}.currents`, "Amps under load", "clamp reading", [
      text("at", "at", { ...needed, ...nodes }),
      text("into", "into", parts),
      amps("reads", "reads", needed),
    ]),
    table("lines", `${day}.insulation`, "Insulation to the frame", "insulation reading", [
      text("from", "from", { ...needed, ...nodes }),
      megohms("reads", "reads", needed),
      volts("testVoltage", "test voltage"),
    ]),
    table(
      "lines",
      `${day}.joints`,
      "Joints under load",
      "joint",
      [
        text("id", "name", needed),
        millivolts("drop", "drop"),
        amps("current", "current"),
        rise("rise", "rise"),
        number("loadRatio", "load ratio"),
      ],
      "A drop with the current at that moment, or the rise over the air with the load as a ratio of full load, or both.",
    ),
    group(`${day}.supply`, "Supply during these readings", supply, "Blank: as at the nameplate above."),
  ],
});

/** @param {string} name @param {string} legend @param {readonly Field[]} fields */
const instrument = (name, legend, ...fields) =>
  group(`instruments.${name}`, legend, [...accuracy, ...fields]);

/** @type {readonly Section[]} */
export const SECTIONS = [
  {
    title: "Equipment",
    open: true,
    parts: [
      { ...group("", "Record", [text("title", "Title", { ...needed, wide: true })]), quiet: true },
      group("identity", "Identity", [
        text("equipment", "Equipment", { wide: true }),
        text("serialNumber", "Serial or asset number"),
        text("location", "Location"),
        text("workOrder", "Work order"),
        text("technician", "Technician"),
        text("date", "Date"),
      ]),
    ],
  },
  {
    title: "Nameplate and supply",
    open: true,
    parts: [
      group("nameplate", "Nameplate", [kilowatts("power", "Power"), volts("voltage", "Line voltage")]),
      group("supply", "Site voltage, measured", supply, "Blank: the plate's."),
      group("", "Elements", [
        number("temperatureFactor", "Hot over cold resistance"),
        temperature("ambient", "Air at the terminals"),
      ]),
      group("tolerance", "Allowed deviation from target", [
        percent("low", "Low (%)", { hint: "such as −5" }),
        percent("high", "High (%)", { hint: "such as 10" }),
      ]),
    ],
  },
  {
    title: "Wiring",
    open: true,
    parts: [
      table("lines", "wiring.banks", "Banks", "bank", [
        text("id", "name", needed),
        choice(
          "connection",
          "connection",
          [
            ["", "choose"],
            ["star", "star"],
            ["delta", "delta"],
          ],
          needed,
        ),
        number("elementsInParallel", "in parallel"),
        number("elementsInSeries", "in series"),
        kilowatts("power", "power, if not shared equally"),
      ]),
      group("wiring", "Star points", [
        choice("starPoints", "Of several star banks", [
          ["", "not said"],
          ["tied", "tied"],
          ["separate", "separate"],
        ]),
        choice("neutral", "Supply neutral", [
          ["", "not said: floating"],
          ["floating", "floating"],
          ["connected", "connected"],
        ]),
      ]),
      table(
        "lines",
        "wiring.joints",
        "Joints as drawn",
        "drawn joint",
        [
          text("id", "name", needed),
          text("at", "at", { ...needed, ...nodes }),
          { name: "behind", label: "behind it", kind: "names" },
        ],
        "Only joints to be judged by their place in the network. Behind it: banks or branches with commas between; blank for all.",
      ),
    ],
  },
  {
    title: "Instruments",
    open: false,
    note: "The maker's accuracy on the range in use. Ohms are not judged without it.",
    parts: [
      instrument(
        "ohmmeter",
        "Ohmmeter",
        ohms("resolution", "resolution"),
        choice(
          "leads",
          "Leads",
          [
            ["", "not said"],
            ["unknown", "unknown"],
            ["taken off", "taken off"],
            ["shorted", "read when shorted"],
          ],
          { record: "shorted" },
        ),
        ohms("leads.shorted", "Shorted leads read", { when: ["leads", "shorted"] }),
      ),
      instrument("clamp", "Clamp", amps("resolution", "resolution")),
      instrument("voltmeter", "Voltmeter", volts("resolution", "resolution")),
      instrument("millivoltmeter", "Millivoltmeter", millivolts("resolution", "resolution")),
      instrument("insulationTester", "Insulation tester", megohms("resolution", "resolution")),
    ],
  },
  readings("asFound", "Readings as found", true),
  readings("asLeft", "Readings as left", false),
  {
    title: "Hardware",
    open: false,
    parts: [
      table("cards", "hardware", "Studs, nuts and screws", "kind of fastening", [
        text("id", "Where", needed),
        text("thread", "Thread", { ...needed, hint: "M8, 1/4-20" }),
        number("count", "How many"),
        text("strength.standard", "Strength by", { list: "standards" }),
        text("strength.grade", "Grade or class"),
        text("condition", "Thread condition", { list: "conditions" }),
        torque("makerTorque", "Maker's torque"),
        torque("applied", "Torque applied"),
        { name: "renew", label: "To be renewed", kind: "mark" },
      ]),
    ],
  },
  {
    title: "Feed",
    open: false,
    note: "Checked against the edition named. The code adopted where the module stands and a licensed electrician decide.",
    parts: [
      group("feed", "Conductors, terminals, protection", [
        text("edition", "Edition of the code", { list: "editions" }),
        text("equipment", "Equipment class", { list: "equipment", hint: "North America" }),
        text("conductor", "Conductor", { hint: "3 AWG, 25 mm²; blank looks it up" }),
        text("material", "Material", { list: "conductors" }),
        text("installation", "Laid as", { list: "installations", hint: "table, or IEC method" }),
        text("insulation", "Insulation", { list: "insulations", hint: "90 °C, or IEC name" }),
        temperature("terminals", "Terminals marked", { hint: "North America" }),
        number("conductorsPerLine", "Conductors in parallel per line"),
        number("grouped", "Conductors or circuits grouped"),
        amps("device", "Fuse or breaker"),
        choice("deviceKind", "Which of them (IEC)", [
          ["", "not known: a fuse is taken"],
          ["gG fuse", "gG fuse"],
          ["circuit-breaker", "circuit-breaker"],
        ]),
      ]),
    ],
  },
  {
    title: "Jumper bars",
    open: false,
    parts: [
      table("cards", "bars", "Bars to cut from flat copper", "kind of bar", [
        text("id", "Which", needed),
        number("count", "How many"),
        number("studs", "Studs each", needed),
        length("pitch", "Stud to stud", needed),
        length("overhang", "Last hole to end", needed),
        length("width", "Width", needed),
        length("thickness", "Thickness", needed),
        length("hole", "Hole"),
        length("kerf", "Saw cut"),
      ]),
    ],
  },
  {
    title: "Process",
    open: false,
    note: "For a comparison of ways to run on until parts come.",
    parts: [
      group("process", "What the module heats", [
        temperature("target", "Set point"),
        quantity("W/K")("lossConductance", "Heat lost per kelvin"),
        quantity("J/K", "kJ/K")("heatCapacity", "Heat stored per kelvin"),
        quantity("s", "h")("shift", "Shift"),
        number("shifts", "Shifts until parts come"),
        number("tariff", "Price of a kilowatt-hour"),
      ]),
    ],
  },
];
