/** Loads a TypeScript module of the worlds into plain node, with `slabwright` read from source as the tests read it. */
import { fileURLToPath } from "node:url";
import { createViteServer } from "vitest/node";

/** @param {string} file as `"make-worlds.ts"`, beside this one */
export async function withModule(file, use) {
  const root = fileURLToPath(new URL("../..", import.meta.url));
  const server = await createViteServer({
    root,
    configFile: fileURLToPath(new URL("../../vitest.config.mts", import.meta.url)),
    appType: "custom",
    logLevel: "error",
    server: { middlewareMode: true, hmr: false, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true, include: [] },
  });
  try {
    return await use(await server.ssrLoadModule(fileURLToPath(new URL(file, import.meta.url))));
  } finally {
    await server.close();
  }
}
