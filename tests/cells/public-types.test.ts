import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import ts from "@tslab/typescript-for-tslab";
import { describe, expect, it } from "vitest";

/**
 * What a notebook cell sees of the library: the built declarations, read by the compiler that tslab carries
 * (TypeScript 5.0.4) with tslab's own options. A type this compiler cannot follow silently becomes `any`, and completion
 * and checking are lost without a message; so every exported function is walked, through its options and its result.
 */
const program = ts.createProgram([resolve("tests/cells/every-export.ts")], {
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Node10,
  esModuleInterop: true,
  target: ts.ScriptTarget.ES2022,
  lib: ["lib.es2022.d.ts"],
  skipLibCheck: true,
  types: ["node"],
  noEmit: true,
});
const checker = program.getTypeChecker();
const source = program.getSourceFile(resolve("tests/cells/every-export.ts"))!;

/** Each door by the name that a cell imports, the file its types came from, and what it shows. */
const doors = source.statements.map((statement) => {
  const specifier = (statement as ts.ExportDeclaration).moduleSpecifier as ts.StringLiteral;
  const symbol = checker.getSymbolAtLocation(specifier);
  return {
    door: specifier.text,
    file: symbol?.declarations?.[0].getSourceFile().fileName ?? "not found",
    exported: symbol === undefined ? [] : checker.getExportsOfModule(symbol).map(target),
  };
});

/** Types that belong to others and are theirs to keep whole. */
const FOREIGN = /node_modules[\\/](?!slabwright[\\/])/;

function anyInside(type: ts.Type, path: string, seen: Set<ts.Type>): string[] {
  if (type.flags & ts.TypeFlags.Any) return [path];
  if (seen.has(type)) return [];
  seen.add(type);
  if (type.isUnionOrIntersection()) return type.types.flatMap((part) => anyInside(part, path, seen));
  const declared = type.symbol?.declarations?.[0]?.getSourceFile().fileName ?? "";
  if (FOREIGN.test(declared) && !/library[\\/]dist/.test(declared)) {
    const argumentsOf = checker.getTypeArguments(type as ts.TypeReference);
    return argumentsOf.flatMap((argument) => anyInside(argument, `${path}<>`, seen));
  }
  const calls = type
    .getCallSignatures()
    .flatMap((call) => [
      ...anyInside(call.getReturnType(), `${path}()`, seen),
      ...call.parameters.flatMap((parameter) =>
        anyInside(checker.getTypeOfSymbolAtLocation(parameter, source), `${path}(${parameter.name})`, seen),
      ),
    ]);
  const elements = [
    checker.getIndexTypeOfType(type, ts.IndexKind.Number),
    checker.getIndexTypeOfType(type, ts.IndexKind.String),
  ];
  return [
    ...calls,
    ...elements.flatMap((element) => (element ? anyInside(element, `${path}[]`, seen) : [])),
    ...type
      .getProperties()
      .flatMap((property) =>
        anyInside(checker.getTypeOfSymbolAtLocation(property, source), `${path}.${property.name}`, seen),
      ),
  ];
}

/** Types of the library that the declaration of a function or constant names, with the file of each. */
function typesNamedBy(symbol: ts.Symbol): Map<string, string> {
  const named = new Map<string, string>();
  const visit = (node: ts.Node): void => {
    if (ts.isTypeReferenceNode(node)) {
      const type = target(checker.getSymbolAtLocation(node.typeName)!);
      const declared = type.declarations?.[0];
      if (declared !== undefined && !ts.isTypeParameterDeclaration(declared))
        named.set(type.name, declared.getSourceFile().fileName);
    }
    ts.forEachChild(node, visit);
  };
  symbol.declarations?.forEach(visit);
  return named;
}

describe("the library as tslab's compiler sees it", () => {
  it("compiles", () => {
    const messages = ts
      .getPreEmitDiagnostics(program)
      .map((each) => ts.flattenDiagnosticMessageText(each.messageText, "\n"));
    expect(messages).toEqual([]);
  });

  it("walks every door of the package", () => {
    const { exports } = JSON.parse(readFileSync("kernel-lib/library/package.json", "utf8"));
    expect(doors.map(({ door }) => door.replace("slabwright", "."))).toEqual(Object.keys(exports));
  });

  describe.each(doors)("$door", ({ door, file, exported }) => {
    const room = door.replace("slabwright", "");
    const values = exported.filter((symbol) => symbol.flags & (ts.SymbolFlags.Function | ts.SymbolFlags.Variable));

    it("resolves by its name to its own declarations", () => {
      expect(file).toBe(resolve(`kernel-lib/library/dist${room}/index.d.ts`));
      expect(values.length).toBeGreaterThan(0);
    });

    it.each(values.map((symbol) => [symbol.name, symbol] as const))("%s holds no any", (name, symbol) => {
      expect(anyInside(checker.getTypeOfSymbolAtLocation(symbol, source), name, new Set())).toEqual([]);
    });

    it("shows the types that its functions take and give", () => {
      const home = resolve(`kernel-lib/library/dist${room}`);
      const shown = new Set(exported.map((symbol) => symbol.name));
      const hidden = values.flatMap((value) =>
        [...typesNamedBy(value)]
          .filter(([type, declaredIn]) => declaredIn.startsWith(`${home}/`) && !shown.has(type))
          .map(([type]) => `${value.name} names ${type}`),
      );
      expect(hidden).toEqual([]);
    });
  });

  it("would notice an any", () => {
    const probe = doors[0].exported.find((symbol) => symbol.name === "show")!;
    expect(checker.typeToString(checker.getTypeOfSymbolAtLocation(probe, source))).toContain("Showable");
    expect(anyInside(checker.getAnyType(), "probe", new Set())).toEqual(["probe"]);
  });
});

function target(symbol: ts.Symbol): ts.Symbol {
  return symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
}
