import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const src = fileURLToPath(new URL("./src/", import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: /^electroheat$/, replacement: `${src}index.ts` },
      { find: /^electroheat\/(.+)$/, replacement: `${src}$1/index.ts` },
    ],
  },
  test: { include: ["tests/**/*.test.ts"], testTimeout: 120_000, hookTimeout: 300_000 },
});
