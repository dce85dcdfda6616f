export * from "./check.ts";
export * from "./errors.ts";
export * from "./tags.ts";
export * from "./units/index.ts";
export * from "./warning.ts";
