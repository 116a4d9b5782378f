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
  const letters = atob(base64);
  const bytes = new Uint8Array(letters.length);
  // a call a letter (Uint8Array.from) takes thirty times as long
  for (let at = 0; at < letters.length; at++) bytes[at] = letters.charCodeAt(at);
  return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
}
