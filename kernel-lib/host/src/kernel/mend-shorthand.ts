/*
 * Loaded into the kernel's process before tslab: mends one fault of tslab 1.0.22. Its converter turns a name from an
 * earlier cell into `exports.name`, but overlooks the short form in an object, `{ name }`, and the cell then fails with
 * "name is not defined". As the converter is read, the short form is taught to it; a tslab that reads otherwise is left
 * as it is.
 */
import { readFileSync } from "node:fs";

import Module = require("node:module");

const START = "function wrapPrevIdentifier(node) {";
const LESSON = `${START}
            if (ts.isShorthandPropertyAssignment(node)) {
                const symbol = checker.getShorthandAssignmentValueSymbol(node);
                const earlier = symbol && symbol.declarations && symbol.declarations.some((one) => one.getSourceFile() === declsFile);
                if (!earlier) return node;
                const value = ts.factory.createPropertyAccessExpression(ts.factory.createIdentifier("exports"), node.name);
                return ts.factory.createPropertyAssignment(ts.factory.createIdentifier(node.name.text), value);
            }`;

interface Loader {
  readonly _extensions: Record<string, (module: { _compile(code: string, path: string): void }, path: string) => void>;
}

const extensions = (Module as unknown as Loader)._extensions;
const load = extensions[".js"];
extensions[".js"] = (module, path) => {
  if (!/[\\/]tslab[\\/]dist[\\/]converter\.js$/.test(path)) return load(module, path);
  module._compile(readFileSync(path, "utf8").replace(START, LESSON), path);
};
