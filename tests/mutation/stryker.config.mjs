/**
 * Changes the library line by line and asks whether a test notices: `npm run mutate -- FOLDER`, by hand, not in CI.
 * `run.mjs` beside this file says which files are changed and which tests are asked.
 */
export default {
  mutate: (process.env.MUTATION_FILES ?? "").split(",").filter(Boolean),
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "tests/mutation/vitest.config.mjs", related: false },
  coverageAnalysis: "perTest",
  // a word in a sentence is no number: what errors and readings say is asserted where it matters
  mutator: { excludedMutations: ["StringLiteral"] },
  concurrency: 1,
  timeoutMS: 20_000,
  timeoutFactor: 3,
  tempDirName: "out/mutation/sandbox",
  ignorePatterns: [
    "out",
    "notebooks",
    "kernel-lib/*/dist",
    "kernel-lib/host",
    "tests/browser",
    "tests/host",
    "tests/bench",
  ],
  reporters: ["clear-text", "json", "progress-append-only"],
  clearTextReporter: {
    allowColor: false,
    allowEmojis: false,
    logTests: false,
    reportTests: false,
    reportScoreTable: true,
  },
  jsonReporter: { fileName: process.env.MUTATION_REPORT ?? "out/mutation/report.json" },
  allowEmpty: false,
  // TypeScript 7 has not the functions that the rewriting of a tsconfig.json asks for, and vitest needs none
  tsconfigFile: "tests/mutation/no-tsconfig.json",
  disableTypeChecks: true,
};
