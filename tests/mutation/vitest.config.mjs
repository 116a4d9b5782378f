import { fileURLToPath } from "node:url";
import base from "../../vitest.config.mts";

/** The project's tests, only those that `npm run mutate` names. */
export default {
  ...base,
  test: {
    ...base.test,
    include: (process.env.MUTATION_TESTS ?? "tests/library/**/*.test.ts").split(","),
    runner: fileURLToPath(new URL("failing-files.mjs", import.meta.url)),
  },
};
