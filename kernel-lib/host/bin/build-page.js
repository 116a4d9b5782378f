#!/usr/bin/env node
const { buildPage } = require("../dist/index.js");

buildPage().catch((error) => {
  console.error(`build-page: ${error.message}`);
  process.exitCode = 1;
});
