import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import { Widget } from "@lumino/widgets";

const MIME = "application/vnd.jupyter.error";

/** Shows why a cell failed: what the kernel said, as text, set apart from a notice on stderr. */
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
    const { ename, evalue, traceback } = model.data[MIME] as { ename: string; evalue: string; traceback: string[] };
    const words = document.createElement("pre");
    words.textContent = traceback.join("\n") || `${ename}: ${evalue}`;
    this.node.replaceChildren(words);
  }
}
