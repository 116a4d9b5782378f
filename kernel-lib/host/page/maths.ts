import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import temml from "temml";

const DOLLARS = /\$\$([\s\S]+?)\$\$|\\\[([\s\S]+?)\\\]|\\\(([\s\S]+?)\\\)|\$(?!\s)((?:\\.|[^$\\])+?)(?<!\s)\$(?!\d)/g;

/** Shows maths between dollar signs as MathML, which browsers draw without a font or a script of their own. */
export const typesetter: IRenderMime.ILatexTypesetter = {
  typeset: (element) => {
    const texts: Text[] = [];
    const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (!(node.parentElement as Element).closest("pre, code, script, style, math")) texts.push(node as Text);
    }
    for (const text of texts) typesetText(text);
  },
};

function typesetText(text: Text): void {
  const source = text.data;
  const pieces = document.createDocumentFragment();
  let at = 0;
  for (const match of source.matchAll(DOLLARS)) {
    const display = match[1] ?? match[2];
    const place = document.createElement("span");
    temml.render(display ?? match[3] ?? match[4], place, { displayMode: display !== undefined, throwOnError: false });
    pieces.append(source.slice(at, match.index), place);
    at = match.index + match[0].length;
  }
  if (at === 0) return;
  pieces.append(source.slice(at));
  text.replaceWith(pieces);
}
