import { escapeHtml, scriptJson } from "../report/escape";

/** What a page of the server is made of. */
export interface PageParts {
  readonly title: string;
  /** HTML, already safe */
  readonly body: string;
  readonly scripts: readonly string[];
  readonly styles: readonly string[];
  /** what the page's script reads as its configuration */
  readonly data: Readonly<Record<string, unknown>>;
}

/** A page of the server; it loads only what the server itself serves. */
export function pageShell(parts: PageParts): string {
  const styles = parts.styles.map((name) => `<link rel="stylesheet" href="/assets/${name}">`).join("");
  const scripts = parts.scripts.map((name) => `<script type="module" src="/assets/${name}"></script>`).join("");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16'%3E%3Crect x='1' y='4' width='14' height='8' rx='1' fill='%23b8792b'/%3E%3Cpath d='M5.7 4v8M10.3 4v8M1 8h14' stroke='%23fff'/%3E%3C/svg%3E">
<title>${escapeHtml(parts.title)}</title>
${styles}
<script id="jupyter-config-data" type="application/json">${scriptJson(parts.data)}</script>
</head>
<body>
${parts.body}
${scripts}
</body>
</html>
`;
}
