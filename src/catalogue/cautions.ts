/** Cautions that several entries share. Common practice, no published source. */

export const LIVE_WORK =
  "Results guide work on equipment that may be live: readings on live parts are for qualified people, by the local code.";
export const DEAD_WORK =
  "An ohmmeter belongs on a dead, isolated and locked-out module, proved dead before the probes touch it.";
