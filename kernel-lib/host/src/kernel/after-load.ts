import Module = require("node:module");

interface Loader {
  readonly _extensions: Record<string, (module: Loaded, path: string) => void>;
}

interface Loaded {
  readonly exports: unknown;
}

/** Calls `mend` with what the named file of tslab exports, as soon as the kernel's process has loaded it. */
export function afterLoad<Exports>(name: string, mend: (exports: Exports) => void): void {
  const extensions = (Module as unknown as Loader)._extensions;
  const load = extensions[".js"];
  const file = new RegExp(`[\\\\/]tslab[\\\\/]dist[\\\\/]${name}\\.js$`);
  extensions[".js"] = (module, path) => {
    load(module, path);
    if (file.test(path)) mend(module.exports as Exports);
  };
}
