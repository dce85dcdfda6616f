/** How a record writes a quantity. */

/**
 * A quantity in a record: text with its unit as read (`"7.90 Ω"`, `"OL"`, `"60 kW"`), or a number in the canonical unit (Ω, V, A, W, N·m, m, s, °C).
 * Text keeps the digits that the meter showed, and with them its resolution.
 * @since 0.1.0
 */
export type Quoted = string | number;
