#!/usr/bin/env node
const { cli } = require("../dist/index.js");

for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => process.exit(130));
cli(process.argv.slice(2)).then((code) => {
  process.exitCode = code;
});
