/**
 * Makes the worlds of the tests: `node tests/worlds/make.mjs` writes `truth/*.json`, the same every time; a word after it
 * picks the products whose name holds it. About half an hour for all on one core.
 */
import { withModule } from "./load.mjs";

await withModule("make-worlds.ts", ({ makeWorlds }) => makeWorlds(process.argv[2], (line) => console.log(line)));
