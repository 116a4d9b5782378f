import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { makeReference } from "./make-reference.js";

const project = fileURLToPath(new URL("../../../", import.meta.url));
await makeReference({
  library: join(project, "kernel-lib/library"),
  documents: [],
  readme: "none",
  work: join(project, "kernel-lib/reference/dist"),
  out: join(project, "out/reference"),
});
