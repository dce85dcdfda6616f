export * from "./check.ts";
export * from "./errors.ts";
export * from "./tags.ts";
