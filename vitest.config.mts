import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const source = (path: string): string => fileURLToPath(new URL(`kernel-lib/${path}/index.ts`, import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: "slabwright-host", replacement: source("host/src") },
      { find: /^slabwright$/, replacement: source("library/src") },
      { find: /^slabwright\/(\w+)$/, replacement: source("library/src/$1") },
    ],
  },
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/draw-property-seed.ts"],
    setupFiles: ["tests/property-seed.ts"],
    testTimeout: 30_000,
  },
});
