import type { NotebookPanel } from "@jupyterlab/notebook";
import { element } from "./element";
import { wordAt } from "./word-at";

/** The names that have a page in the reference; none while it is not written. */
let names: Promise<readonly string[]> | null = null;
function referenceNames(): Promise<readonly string[]> {
  names ??= fetch("/reference/names.json")
    .then(async (answer) => Object.keys(await answer.json()))
    .catch(() => {
      names = null;
      return [];
    });
  return names;
}

function addressOf(name: string): string {
  return name === "" ? "/reference/" : `/reference/of/${encodeURIComponent(name)}`;
}

/** Opens the reference in a tab of its own, at the page of the name at the cursor where it has one. */
export function openReference({ content }: NotebookPanel): void {
  const editor = content.activeCell?.editor;
  const code = editor?.model.sharedModel.getSource() ?? "";
  const name = editor ? wordAt(code, editor.getOffsetAt(editor.getCursorPosition())) : "";
  window.open(addressOf(name), "_blank", "noopener");
}

/** A link to the page of what the kernel's words tell of, which holds the same text and more; null where that has none. */
export async function referenceLink(words: string): Promise<HTMLElement | null> {
  const known = await referenceNames();
  const told = [...words.matchAll(/^(?:\(alias\) )?(?:function |interface |type |const )?(\w+)/gm)].map(
    ([, name]) => name,
  );
  const name = told.find((one) => known.includes(one));
  if (name === undefined) return null;
  return element("a", {
    href: addressOf(name),
    target: "_blank",
    rel: "noopener",
    className: "button",
    textContent: "its page in the reference",
  });
}
