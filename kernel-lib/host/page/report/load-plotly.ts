/** What the report asks of plotly. */
export interface Plotly {
  react(place: HTMLElement, data: unknown, layout: unknown, options: unknown): Promise<unknown>;
}

let loading: Promise<Plotly> | undefined;

/**
 * plotly, which the page carries packed (gzip, in base64) as `#plotly`, unpacked when the first figure asks for it. The page's
 * policy allows this one text by its hash.
 */
export function loadPlotly(): Promise<Plotly> {
  loading ??= unpacked(document.getElementById("plotly")?.textContent ?? "").then((code) => {
    const script = document.createElement("script");
    script.textContent = code;
    document.body.append(script);
    const { Plotly } = window as { Plotly?: Plotly };
    if (Plotly === undefined) throw new Error("plotly could not be loaded");
    return Plotly;
  });
  return loading;
}

async function unpacked(base64: string): Promise<string> {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
}
