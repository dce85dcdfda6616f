/** Constants that several rooms reckon with, each in one place. */

/**
 * Stefan–Boltzmann constant, W/(m²·K⁴): 2·π⁵·k⁴/(15·h³·c²), exact since 2019, to the digits printed.
 * @source CODATA recommended values (2022)
 * @since 0.1.0
 */
export const STEFAN_BOLTZMANN = 5.670374419e-8;

/**
 * Zero of the Celsius scale in kelvins; textbooks of electric heating reckon with 273.
 * @source definition
 * @since 0.1.0
 */
export const ZERO_CELSIUS = 273.15;
