import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const source = (path: string): string => fileURLToPath(new URL(`kernel-lib/${path}/src/index.ts`, import.meta.url));

export default defineConfig({
  resolve: { alias: { "slabwright-host": source("host"), slabwright: source("library") } },
  test: { include: ["tests/**/*.test.ts"], setupFiles: ["tests/property-seed.ts"], testTimeout: 30_000 },
});
