export * from "./assess.ts";
export * from "./assessTypes.ts";
export * from "./deltaReadings.ts";
export * from "./fit.ts";
export * from "./fitTypes.ts";
export * from "./meter.ts";
export * from "./record.ts";
export * from "./targets.ts";
