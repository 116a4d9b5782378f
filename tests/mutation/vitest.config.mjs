import { defineConfig, mergeConfig } from "vitest/config";
import base from "../../vitest.config.mts";

/** The project's tests, only those that `npm run mutate` names; a fixed order, and no wait for a mutant that hangs. */
const config = mergeConfig(base, defineConfig({}));
export default {
  ...config,
  test: { ...config.test, include: (process.env.MUTATION_TESTS ?? "tests/library/**/*.test.ts").split(",") },
};
