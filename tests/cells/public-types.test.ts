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
const library = checker.getSymbolAtLocation((source.statements[0] as ts.ExportDeclaration).moduleSpecifier!)!;
const exported = checker.getExportsOfModule(library);

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

describe("the library as tslab's compiler sees it", () => {
  it("resolves by its package name and compiles", () => {
    const messages = ts
      .getPreEmitDiagnostics(program)
      .map((each) => ts.flattenDiagnosticMessageText(each.messageText, "\n"));
    expect(messages).toEqual([]);
    expect(exported.length).toBeGreaterThan(50);
  });

  const values = exported.filter(
    (symbol) => target(symbol).flags & (ts.SymbolFlags.Function | ts.SymbolFlags.Variable),
  );
  it.each(values.map((symbol) => [symbol.name, symbol] as const))("%s holds no any", (name, symbol) => {
    const type = checker.getTypeOfSymbolAtLocation(target(symbol), source);
    expect(anyInside(type, name, new Set())).toEqual([]);
  });

  it("would notice an any", () => {
    const probe = exported.find((symbol) => symbol.name === "show")!;
    expect(checker.typeToString(checker.getTypeOfSymbolAtLocation(target(probe), source))).toContain("Showable");
    expect(anyInside(checker.getAnyType(), "probe", new Set())).toEqual(["probe"]);
  });
});

function target(symbol: ts.Symbol): ts.Symbol {
  return symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
}
