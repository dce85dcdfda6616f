import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const src = fileURLToPath(new URL("./src/", import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      // How often properties run is decided in one place.
      {
        find: /^fast-check$/,
        replacement: fileURLToPath(new URL("./tests/support/fastCheck.ts", import.meta.url)),
      },
      { find: /^electroheat$/, replacement: `${src}index.ts` },
      { find: /^electroheat\/(.+)$/, replacement: `${src}$1/index.ts` },
    ],
  },
  test: {
    // One worker for each processor: the test runner would leave one of two idle.
    maxWorkers: "100%",
    // `npm run coverage`: by rooms, for docs/reliability.md.
    coverage: {
      provider: "v8",
      include: ["src/**/*.ts"],
      reporter: ["text-summary", "json"],
      reportsDirectory: "coverage",
    },
    testTimeout: 120_000,
    hookTimeout: 300_000,
    setupFiles: [fileURLToPath(new URL("./tests/support/seed.ts", import.meta.url))],
    projects: [
      {
        extends: true,
        test: { name: "rooms", include: ["tests/**/*.test.ts"], exclude: ["tests/package/**"] },
      },
      {
        // Builds, packs and installs once, and only when a test of this project runs.
        extends: true,
        test: {
          name: "package",
          include: ["tests/package/**/*.test.ts"],
          globalSetup: ["tests/package/setup.ts"],
        },
      },
    ],
  },
});
