export * from "./compare.ts";
export * from "./judge.ts";
