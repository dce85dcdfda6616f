/** Absolute temperature for laws that divide by it. */
import { type Celsius, checkFinite, fail, toAbsoluteKelvins } from "../quantity/index.ts";

/** The argument `temperature` in kelvins, more than 0: refused under its own name, which the converter does not know. */
export function positiveKelvins(temperature: Celsius): number {
  checkFinite("temperature", temperature, "°C");
  if (temperature > -273.15) return toAbsoluteKelvins(temperature);
  const expected = "more than −273.15";
  return fail({ code: "out-of-range", path: "temperature", expected, received: temperature, unit: "°C" });
}
