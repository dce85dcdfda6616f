/** Cautions that several entries share. Common practice, no published source. */

export const LIVE_WORK =
  "Results guide work on equipment that may be live: readings on live parts are for qualified people, by the local code.";
export const DEAD_WORK =
  "An ohmmeter belongs on a dead, isolated and locked-out module, proved dead before the probes touch it.";
export const TIGHTENING =
  "A joint is opened, cleaned or tightened only dead, isolated, locked out and cold; the maker's torque comes before a calculated one.";
export const NO_AMPACITY =
  "A limit of stability, not an ampacity: well below it a bar is too hot to use. The local code and a licensed electrician decide what it may carry.";
export const INSULATION_TEST =
  "An insulation tester is for a dead, isolated and locked-out module, semiconductors and controls disconnected; discharge what was tested.";
export const HOT_EQUIPMENT =
  "Hot equipment is judged by measuring it, never by a calculated temperature alone; the maker's limits, the local code and a licensed electrician decide.";
