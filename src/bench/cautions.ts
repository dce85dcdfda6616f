/** What can hurt people, and who decides: printed with every assessment. */

/** Cautions that every assessment carries. Facts of the trade; common practice, no published source, unless one is named. */
export const CAUTIONS: readonly string[] = [
  "Ohm readings only on a module that is isolated, locked out and proved dead at the point of work; a transformer winding left across the lines is part of the reading.",
  "Millivolt drops and line currents are taken on energised equipment: only by people qualified and equipped for it. A dead joint can be measured with a four-wire meter or an injected direct current instead.",
  "An open element is not a dead one: with one branch of a star open the break stands at 1.5 times the branch voltage, with two open, or in a delta, at the full line voltage. A lost line floats live through the survivors.",
  "Elements, studs and jumper bars stay hot long after the supply is off.",
  "Resistances are taken as constant: amps and kilowatts are for full conduction at the voltages stated, not for a controller that is firing part of the time.",
  "The code adopted where the module is installed, the maker's instructions and a licensed electrician govern. These figures support their decision and do not replace it.",
];
