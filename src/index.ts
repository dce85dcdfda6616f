export * from "./quantity/index.ts";
