/** What to set a torque wrench to when an adapter moves the nut away from its square drive. */
import {
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
  fail,
  given,
  type Meters,
  type NewtonMeters,
} from "../quantity/index.ts";

/**
 * Setting of a torque wrench with an adapter (crow-foot, open end): torque × wrenchLength/(wrenchLength + extension).
 *
 * The hand pulls at the middle of the grip, and its lever to the nut is longer than its lever to the drive. An adapter at right angles to
 * the wrench has an extension of 0; one at an angle counts with the part along the wrench (length × cos angle). For a click wrench or one
 * that reads, pulled at the mark of its grip only: a pipe on the handle, or a hand elsewhere, makes another lever. A socket extension straight
 * above the nut has no lever and changes nothing.
 * @param input.torque - torque wanted at the nut: the maker's, else of a table (N·m), 0 or more; not an energy
 * @param input.wrenchLength - from the centre of the square drive to the middle of the grip (m), more than 0
 * @param input.extension - from the centre of the drive to the centre of the nut, along the wrench (m): more than 0 away from the grip, less
 *   than 0 back towards it, and then shorter than the wrench
 * @returns what the wrench is set to, or must read (N·m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source US Army TM 1-1500-204-23-9, torque wrench attachments; balance of moments
 * @example
 * ```ts
 * wrenchSetting({ torque: newtonMeters(12), wrenchLength: millimeters(300), extension: millimeters(50) }) // => 10.28571
 * ```
 * @since 0.1.0
 */
export function wrenchSetting(input: {
  readonly torque: NewtonMeters;
  readonly wrenchLength: Meters;
  readonly extension: Meters;
}): NewtonMeters {
  given(input);
  const { torque, wrenchLength, extension } = input;
  checkMeasurableOrZero("torque", torque, "N·m");
  checkMeasurable("wrenchLength", wrenchLength, "m");
  checkMeasurableSigned("extension", extension, "m");
  if (!(extension > -wrenchLength)) {
    fail({
      code: "out-of-range",
      path: "extension",
      expected: `more than the wrench's length backwards, ${-wrenchLength}`,
      received: extension,
      unit: "m",
    });
  }
  return ((torque * wrenchLength) / (wrenchLength + extension)) as NewtonMeters;
}
