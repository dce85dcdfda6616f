/**
 * Everything that needs neither a schema nor a decimal library: import from here, or from a room
 * (`electroheat/circuit`) to say where a name comes from.
 */
export * from "./circuit/index.ts";
export * from "./element/index.ts";
export * from "./material/index.ts";
export * from "./numeric/index.ts";
export * from "./process/index.ts";
export * from "./quantity/index.ts";
