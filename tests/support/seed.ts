/**
 * The gate throws the same values in every run, so that it says the same of the same code. `ELECTROHEAT_FUZZ_SEED=…` throws others; a
 * failing seed is printed by the run and becomes a named test.
 */
import fc from "fast-check";

fc.configureGlobal({ seed: Number(process.env["ELECTROHEAT_FUZZ_SEED"] ?? 20261128) });
