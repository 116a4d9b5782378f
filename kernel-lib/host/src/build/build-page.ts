import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readdir, readFile, rm } from "node:fs/promises";
import { dirname, extname, join, resolve } from "node:path";
import type { Plugin } from "esbuild";
import { writeWhole } from "../notebook/write-whole";
import { hostFolder } from "../report/plotly-source";

/**
 * Builds the scripts and styles of the notebook page into `dist/page`, unless they stand there already for the same
 * sources. Returns whether it built.
 */
export async function buildPage(): Promise<boolean> {
  const source = join(hostFolder(), "page");
  const goal = join(hostFolder(), "dist", "page");
  const stamp = await stampOf(source);
  const mark = join(goal, "stamp");
  if (existsSync(mark) && (await readFile(mark, "utf8")) === stamp) return false;
  if (!isInstalled("@jupyterlab/notebook")) {
    throw new Error('the notebook page is built from packages that are not installed; run "npm ci" without --omit=dev');
  }
  const { build } = await import("esbuild");
  await rm(goal, { recursive: true, force: true });
  await build({
    entryPoints: [
      join(source, "notebook.ts"),
      join(source, "start.ts"),
      join(source, "log.ts"),
      join(source, "report.ts"),
    ],
    outdir: goal,
    bundle: true,
    minify: true,
    format: "esm",
    target: "es2022",
    assetNames: "[name]-[hash]",
    legalComments: "linked",
    logLevel: "error",
    loader: { ".woff": "file", ".woff2": "file", ".ttf": "dataurl", ".eot": "dataurl" },
    define: { "process.env": "{}", "process.cwd": "String", global: "globalThis", __dirname: '"/"' },
    plugins: [styleImports, icons, leftOut],
  });
  await writeWhole(mark, stamp);
  return true;
}

/** Changes when a source of the pages, this file or a version of a package changes. */
async function stampOf(source: string): Promise<string> {
  const hash = createHash("sha256");
  const names = (await readdir(source, { recursive: true })).filter((name) => extname(name) !== "");
  const files = names.sort().map((name) => join(source, name));
  // a set that grows while it is gone through: what the pages take from the rest of the host comes behind them
  const all = new Set(files);
  for (const file of all) {
    const text = await readFile(file, "utf8");
    hash.update(file.slice(source.length)).update(text);
    for (const [, path] of text.matchAll(/ from "(\.\.?\/[^"]+)"/g)) {
      const taken = `${resolve(dirname(file), path)}.ts`;
      if (existsSync(taken)) all.add(taken);
    }
  }
  hash.update(await readFile(join(hostFolder(), "package.json"), "utf8"));
  hash.update(await readFile(__filename, "utf8"));
  return hash.digest("hex");
}

function isInstalled(name: string): boolean {
  try {
    require.resolve(`${name}/package.json`);
    return true;
  } catch {
    return false;
  }
}

/** Jupyter's style sheets name packages as `~package/file`. */
const styleImports: Plugin = {
  name: "style-imports",
  setup: (build) => {
    build.onResolve({ filter: /^~/ }, ({ path, resolveDir }) =>
      build.resolve(path.slice(1), { kind: "import-rule", resolveDir }),
    );
  },
};

/** An icon is text when a script asks for it and a data address when a style sheet does. */
const icons: Plugin = {
  name: "icons",
  setup: (build) => {
    build.onResolve({ filter: /\.svg$/ }, async ({ path, importer, kind, resolveDir }) => {
      const file =
        path.startsWith(".") || (kind === "url-token" && !path.startsWith("~"))
          ? resolve(resolveDir, path)
          : require.resolve(path.replace(/^~/, ""), { paths: [dirname(importer)] });
      return { path: file, namespace: kind === "url-token" ? "icon-address" : "icon-text" };
    });
    build.onLoad({ filter: /./, namespace: "icon-text" }, async ({ path }) => ({
      contents: await readFile(path, "utf8"),
      loader: "text",
    }));
    build.onLoad({ filter: /./, namespace: "icon-address" }, async ({ path }) => ({
      contents: await readFile(path, "utf8"),
      loader: "dataurl",
    }));
  },
};

/**
 * What the page does without: web components (their toolbar recurses on design tokens, a known open fault, and the page
 * has a bar of its own), other languages' editor modes.
 */
const leftOut: Plugin = {
  name: "left-out",
  setup: (build) => {
    const modules: Record<string, string> = {
      "@jupyter/web-components": `
        export const addJupyterLabThemeChangeListener = () => {};
        export const jpButton = () => {}, jpToolbar = () => {};
        export const provideJupyterDesignSystem = () => ({ register: () => {} });`,
      "@jupyter/react-components": `
        const nothing = () => null;
        export const Button = nothing, Search = nothing, TreeItem = nothing, TreeView = nothing;`,
    };
    build.onResolve({ filter: /^@jupyter\/(web|react)-components$/ }, ({ path }) => ({ path, namespace: "left-out" }));
    build.onResolve({ filter: /^@codemirror\/(legacy-modes\/|lang-)/ }, ({ path, kind }) =>
      kind === "dynamic-import" ? { path, namespace: "left-out" } : undefined,
    );
    build.onLoad({ filter: /./, namespace: "left-out" }, ({ path }) => ({
      contents: modules[path] ?? "export {};",
      loader: "js",
    }));
  },
};
