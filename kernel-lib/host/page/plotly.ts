import type { IRenderMime } from "@jupyterlab/rendermime-interfaces";
import { Widget } from "@lumino/widgets";

import { plotFit } from "../src/report/plot-fit";

const MIME = "application/vnd.plotly.v1+json";

interface PlotlyModule {
  react(place: HTMLElement, data: unknown, layout: unknown, options: unknown): Promise<unknown>;
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

const dark = matchMedia("(prefers-color-scheme: dark)");

class PlotlyFigure extends Widget implements IRenderMime.IRenderer {
  private readonly canvas: HTMLElement = document.createElement("div");
  private figure: Parameters<typeof plotFit>[0] | undefined;
  private drawnAt = "";

  constructor() {
    super();
    this.addClass("figure");
    this.node.dataset.mimeType = MIME;
    dark.addEventListener("change", this.drawAgain);
  }

  dispose(): void {
    dark.removeEventListener("change", this.drawAgain);
    super.dispose();
  }

  async renderModel(model: IRenderMime.IMimeModel): Promise<void> {
    const figure = model.data[MIME] as unknown as Parameters<typeof plotFit>[0];
    const words = String(model.data["text/plain"] ?? "");
    this.drawnAt = "";
    this.canvas.style.height = `${plotFit(figure, { widthPx: 800, isDark: false }).heightPx}px`;
    this.canvas.setAttribute("role", "img");
    this.canvas.setAttribute("aria-label", words);
    const caption = document.createElement("p");
    caption.textContent = words;
    this.node.replaceChildren(this.canvas, ...(words ? [caption] : []));
    try {
      await plotly();
      await this.draw(figure);
      this.figure = figure;
    } catch (error) {
      caption.textContent = `${words} (The figure could not be drawn: ${(error as Error).message}.)`;
      this.node.replaceChildren(caption);
    }
  }

  protected onResize(): void {
    this.drawAgain();
  }

  private readonly drawAgain = (): void => {
    if (this.figure !== undefined && this.isVisible) void this.draw(this.figure);
  };

  private async draw(figure: Parameters<typeof plotFit>[0]): Promise<void> {
    const place = { widthPx: this.canvas.clientWidth || 800, isDark: dark.matches };
    const at = `${place.widthPx} ${place.isDark}`;
    if (at === this.drawnAt) return;
    this.drawnAt = at;
    const { react } = await plotly();
    const { data, layout, heightPx } = plotFit(figure, place);
    this.canvas.style.height = `${heightPx}px`;
    await react(this.canvas, data, { ...layout, width: place.widthPx }, { responsive: false, displaylogo: false });
  }
}
