import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import { Widget } from "@lumino/widgets";
import { errorWords, type KernelError } from "../src/notebook/error-words";

const MIME = "application/vnd.jupyter.error";

/** Shows why a cell failed: the sentence alone, and folded behind it the line and the calls that it came from. */
export const errorFactory: IRenderMime.IRendererFactory = {
  safe: true,
  mimeTypes: [MIME],
  defaultRank: 0,
  createRenderer: () => new ErrorOutput(),
};

class ErrorOutput extends Widget implements IRenderMime.IRenderer {
  constructor() {
    super();
    this.addClass("failure");
    this.node.dataset.mimeType = MIME;
  }

  async renderModel(model: IRenderMime.IMimeModel): Promise<void> {
    const { sentence, where } = errorWords(model.data[MIME] as unknown as KernelError);
    const words = document.createElement("p");
    words.textContent = sentence;
    this.node.setAttribute("role", "group");
    this.node.setAttribute("aria-label", "why the cell failed");
    this.node.replaceChildren(words, ...(where ? [folded("where", where)] : []));
  }
}

function folded(label: string, text: string): HTMLElement {
  const details = document.createElement("details");
  const summary = document.createElement("summary");
  summary.textContent = label;
  const lines = document.createElement("pre");
  lines.textContent = text;
  details.append(summary, lines);
  return details;
}
