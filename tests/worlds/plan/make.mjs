/**
 * Simulates the courses that trials of a plan are read off: `node tests/worlds/plan/make.mjs` writes `courses/*.json`, the same
 * every time; a word after it picks the products whose name holds it. About ten minutes for all on one core.
 */
import { withModule } from "../load.mjs";

await withModule("plan/make-courses.ts", ({ makeCourses }) =>
  makeCourses(process.argv[2], (line) => console.log(line)),
);
