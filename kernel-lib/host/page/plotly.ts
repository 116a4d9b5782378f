import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import { Widget } from "@lumino/widgets";

const MIME = "application/vnd.plotly.v1+json";

interface PlotlyModule {
  newPlot(place: HTMLElement, data: unknown, layout: unknown, options: unknown): Promise<unknown>;
  Plots: { resize(place: HTMLElement): void };
}

let loading: Promise<PlotlyModule> | undefined;

/** Loads plotly when the first figure asks for it. */
function plotly(): Promise<PlotlyModule> {
  loading ??= new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = "/assets/plotly.js";
    script.onload = () => resolve((window as unknown as { Plotly: PlotlyModule }).Plotly);
    script.onerror = () => reject(new Error("plotly could not be loaded"));
    document.head.append(script);
  });
  return loading;
}

/** Draws plotly's figures; where that fails, the figure's own words stand in its place. */
export const plotlyFactory: IRenderMime.IRendererFactory = {
  safe: true,
  mimeTypes: [MIME],
  defaultRank: 0,
  createRenderer: () => new PlotlyFigure(),
};

class PlotlyFigure extends Widget implements IRenderMime.IRenderer {
  private drawn = false;

  constructor() {
    super();
    this.addClass("figure");
    this.node.dataset.mimeType = MIME;
  }

  async renderModel(model: IRenderMime.IMimeModel): Promise<void> {
    const { data, layout } = model.data[MIME] as { data: unknown; layout?: Record<string, unknown> };
    const words = String(model.data["text/plain"] ?? "");
    const canvas = document.createElement("div");
    canvas.style.height = `${typeof layout?.height === "number" ? layout.height : 420}px`;
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", words);
    const caption = document.createElement("p");
    caption.textContent = words;
    this.node.replaceChildren(canvas, ...(words ? [caption] : []));
    try {
      const { newPlot } = await plotly();
      const { width: _, ...rest } = layout ?? {};
      await newPlot(canvas, data, { ...rest, autosize: true }, { responsive: true, displaylogo: false });
      this.drawn = true;
    } catch (error) {
      canvas.remove();
      caption.textContent = `${words} (The figure could not be drawn: ${(error as Error).message}.)`;
      this.node.replaceChildren(caption);
    }
  }

  protected onResize(): void {
    const canvas = this.node.firstElementChild;
    if (this.drawn && canvas instanceof HTMLElement && this.isVisible)
      void plotly().then(({ Plots }) => Plots.resize(canvas));
  }
}
