import { typescriptLanguage } from "@codemirror/lang-javascript";

type SyntaxNode = ReturnType<typeof typescriptLanguage.parser.parse>["topNode"];

/** Names at the top of a cell: those that it gives to other cells, and those that it takes from them. */
export interface CellNames {
  readonly defines: readonly string[];
  readonly uses: readonly string[];
}

/** What opens a scope of its own, so that names in it hide those outside. */
const SCOPES: ReadonlySet<string> = new Set([
  ...["Block", "ArrowFunction", "FunctionDeclaration", "FunctionExpression", "MethodDeclaration", "ClassBody"],
  ...["ForStatement", "CatchClause", "ClassExpression", "TypeAliasDeclaration", "InterfaceDeclaration", "SwitchBody"],
  "Property",
]);
const DEFINITIONS: ReadonlySet<string> = new Set(["VariableDefinition", "TypeDefinition"]);
const USES: ReadonlySet<string> = new Set(["VariableName", "TypeName"]);
/** Declarations whose own name belongs to the scope around them. */
const NAMED_OUTSIDE: ReadonlySet<string> = new Set([
  "FunctionDeclaration",
  "TypeAliasDeclaration",
  "InterfaceDeclaration",
]);

/** The names that a cell's code gives and takes, by the editor's own grammar; code that does not parse gives what can be read. */
export function cellNames(code: string): CellNames {
  const defines = new Set<string>();
  const uses = new Set<string>();
  const read = (node: SyntaxNode, inherited: ReadonlySet<string>): void => {
    const own = new Set(inherited);
    for (const name of definedIn(node, code)) own.add(name);
    visit(node, own);
  };
  const visit = (node: SyntaxNode, hidden: ReadonlySet<string>): void => {
    for (let child = node.firstChild; child; child = child.nextSibling) {
      if ((USES.has(child.name) && !isImported(child)) || isShorthand(child)) {
        const name = code.slice(child.from, child.to);
        if (!hidden.has(name)) uses.add(name);
      }
      if (SCOPES.has(child.name)) read(child, hidden);
      else visit(child, hidden);
    }
  };
  const top = typescriptLanguage.parser.parse(code).topNode;
  for (const name of definedIn(top, code)) defines.add(name);
  visit(top, new Set());
  return { defines: [...defines], uses: [...uses].filter((name) => !defines.has(name)) };
}

/** Names that are defined in a scope and not in one within it. */
function definedIn(scope: SyntaxNode, code: string): readonly string[] {
  const names: string[] = [];
  const look = (node: SyntaxNode): void => {
    for (let child = node.firstChild; child; child = child.nextSibling) {
      if (DEFINITIONS.has(child.name)) {
        const isOwnName = node === scope && NAMED_OUTSIDE.has(node.name) && child === firstDefinition(node);
        if (!isOwnName) names.push(code.slice(child.from, child.to));
      } else if (NAMED_OUTSIDE.has(child.name)) {
        const name = firstDefinition(child);
        if (name) names.push(code.slice(name.from, name.to));
      } else if (!SCOPES.has(child.name)) look(child);
    }
  };
  look(scope);
  return names;
}

function firstDefinition(node: SyntaxNode): SyntaxNode | null {
  return node.getChild("VariableDefinition") ?? node.getChild("TypeDefinition");
}

/** Whether a name is what a module calls something that is imported as something else. */
function isImported(node: SyntaxNode): boolean {
  return node.parent?.name === "ImportGroup";
}

/** Whether a name in an object is its own value: `{ kitchen }`. */
function isShorthand(node: SyntaxNode): boolean {
  return (
    node.name === "PropertyDefinition" && node.parent?.name === "Property" && !node.prevSibling && !node.nextSibling
  );
}
