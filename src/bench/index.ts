export * from "./deltaReadings.ts";
export * from "./fit.ts";
export * from "./fitTypes.ts";
export * from "./meter.ts";
export * from "./targets.ts";
