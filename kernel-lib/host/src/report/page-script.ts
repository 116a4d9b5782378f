import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { scriptText } from "./page-policy";
import { hostFolder } from "./plotly-source";

/** The script of the report's page (`page/report.ts`), as it was built. */
export async function pageScript(): Promise<string> {
  const built = join(hostFolder(), "dist", "page", "report.js");
  if (!existsSync(built)) throw new Error("the report's script must be built first: npm run build");
  return scriptText((await readFile(built, "utf8")).trim());
}
