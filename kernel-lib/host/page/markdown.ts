import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import { Marked } from "marked";

const marked = new Marked({ gfm: true });

/** Turns markdown into HTML; Jupyter's renderer sanitises what comes out. */
export const markdownParser: IRenderMime.IMarkdownParser = {
  render: async (text) => marked.parse(text, { async: false }),
};
