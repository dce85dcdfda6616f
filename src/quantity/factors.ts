/**
 * The one home of the defined factors between unit systems, written as they are defined. Powers of ten stand in
 * the scales themselves.
 */

/** Inch in meters; exact definition (international yard and pound, 1959). */
export const INCH = 25.4e-3;
/** Foot in meters: 12 in. */
export const FOOT = 0.3048;
/** Cubic foot in cubic meters: 0.3048³, all digits. */
export const CUBIC_FOOT = 0.028316846592;
/** Thousandth of an inch in meters. */
export const MIL = 25.4e-6;
/** Avoirdupois pound in kilograms; exact definition (international yard and pound, 1959). */
export const POUND = 0.45359237;
/** Standard gravity in m/s²; exact definition (CGPM 1901). */
export const GRAVITY = 9.80665;
/** International Table Btu in joules; exactly 2326 J/kg × 1 lb. The thermochemical Btu is another unit. */
export const BTU_IT = 1055.05585262;
/** Minute in seconds. */
export const MINUTE = 60;
/** Hour in seconds. */
export const HOUR = 3600;
/** π, for circular mils and degrees. A literal: bundlers keep a module-level read of `Math`. */
export const PI = 3.141592653589793;
