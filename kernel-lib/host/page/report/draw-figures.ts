import { plotFit } from "../../src/report/plot-fit";
import { loadPlotly, type Plotly } from "./load-plotly";

/** How far below and above the window figures are drawn ahead. */
const AHEAD = "800px 0px";
/** Of the paper: what a figure without a still picture is fitted to. */
const PAPER_PX = { width: 640, height: 900 };
const OPTIONS = {
  responsive: false,
  displaylogo: false,
  // where nothing hovers it would always lie on the title
  displayModeBar: matchMedia("(hover: hover)").matches ? "hover" : false,
};
const LATER_MS = 150;

interface Place {
  readonly canvas: HTMLElement;
  readonly figure: Parameters<typeof plotFit>[0];
  readonly still: HTMLElement | null;
  /** the width and darkness that it was last drawn for; empty before that */
  drawnAt: string;
  isWanted: boolean;
}

/**
 * Draws the page's figures when they come near the window, one after another, and again when its width or darkness changes. On
 * paper stand their still pictures; a figure that has none is drawn at once, and for the paper before it is printed. One that
 * plotly cannot draw shows its still picture, or why not. `data-figures` on the body counts what is done.
 */
export function drawFigures(): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const places = [...document.querySelectorAll<HTMLElement>("script[data-for]")].map(placeOf);
  if (places.length === 0) return;
  const byCanvas = new Map(places.map((place) => [place.canvas as Element, place]));
  const waiting: Place[] = [];
  let plotly: Plotly | undefined;
  let done = 0;
  let isDrawing = false;
  document.body.dataset.figures = "0";

  const plot = async (place: Place, { width, isDark, most }: Look): Promise<void> => {
    if (plotly === undefined) return;
    const share = Math.min(1, most / plotFit(place.figure, { widthPx: width, isDark }).heightPx);
    const { data, layout, heightPx } = plotFit(place.figure, { widthPx: width / share, isDark });
    place.drawnAt = `${width} ${isDark}`;
    place.canvas.style.height = `${heightPx}px`;
    place.canvas.style.width = share < 1 ? `${width / share}px` : "";
    place.canvas.style.zoom = share < 1 ? String(share) : "";
    await plotly.react(place.canvas, data, { ...layout, width: width / share }, OPTIONS);
    // its caption and its words say it better than the loose texts of a drawing; plotly's buttons stay
    for (const drawing of place.canvas.querySelectorAll(".main-svg")) drawing.ariaHidden = "true";
  };
  const onScreen = ({ canvas }: Place): Look => ({ width: canvas.clientWidth, isDark: dark.matches, most: Infinity });
  const draw = async (place: Place): Promise<void> => {
    try {
      plotly ??= await loadPlotly();
      await plot(place, onScreen(place));
    } catch (error) {
      place.drawnAt = "";
      giveUp(place, error as Error);
    }
    document.body.dataset.figures = String(++done);
  };
  const drawWaiting = async (): Promise<void> => {
    if (isDrawing) return;
    isDrawing = true;
    for (let place = waiting.shift(); place !== undefined; place = waiting.shift()) {
      await draw(place);
      await new Promise((resolve) => setTimeout(resolve));
    }
    isDrawing = false;
  };
  const want = (wanted: readonly Place[]): void => {
    const fresh = wanted.filter(({ isWanted }) => !isWanted);
    for (const place of fresh) place.isWanted = true;
    waiting.unshift(...fresh); // what is read now before what was scrolled past
    void drawWaiting();
  };
  const watch = new IntersectionObserver(
    (changes) => {
      const near = changes.filter(({ isIntersecting }) => isIntersecting).map(({ target }) => target);
      for (const canvas of near) watch.unobserve(canvas);
      want(near.map((canvas) => byCanvas.get(canvas) as Place));
    },
    { rootMargin: AHEAD },
  );
  /** The heights that the figures will have, so that nothing moves when they are drawn. */
  const makeRoom = (place: Place): void => {
    try {
      const { width, isDark } = onScreen(place);
      place.canvas.style.height = `${plotFit(place.figure, { widthPx: width, isDark }).heightPx}px`;
    } catch {
      // a layout that cannot be fitted keeps its room, and says why when it is drawn
    }
  };
  const again = (look: (place: Place) => Look): void => {
    for (const place of places) {
      const { width, isDark } = look(place);
      if (place.drawnAt === "") {
        if (!place.isWanted) makeRoom(place);
      } else if (place.drawnAt !== `${width} ${isDark}`) void plot(place, look(place)).catch(() => undefined);
    }
  };
  for (const place of places) makeRoom(place);
  for (const { canvas } of places) watch.observe(canvas);
  want(places.filter(({ still }) => still === null));

  let later: ReturnType<typeof setTimeout> | undefined;
  const afterAWhile = (): void => {
    clearTimeout(later);
    later = setTimeout(() => again(onScreen), LATER_MS);
  };
  addEventListener("resize", afterAWhile);
  dark.addEventListener("change", afterAWhile);
  addEventListener("beforeprint", () => {
    const paper = { width: PAPER_PX.width, isDark: false, most: PAPER_PX.height };
    again((place) => (place.still === null ? paper : onScreen(place)));
  });
  addEventListener("afterprint", () => again(onScreen));
}

interface Look {
  readonly width: number;
  readonly isDark: boolean;
  /** pixels that it may be high */
  readonly most: number;
}

function placeOf(source: HTMLElement): Place {
  const canvas = document.getElementById(source.dataset.for as string) as HTMLElement;
  return {
    canvas,
    figure: JSON.parse(source.textContent as string),
    still: (source.parentElement as HTMLElement).querySelector<HTMLElement>("img.still"),
    drawnAt: "",
    isWanted: false,
  };
}

function giveUp({ canvas, still }: Place, error: Error): void {
  canvas.style.height = "auto";
  if (still === null) canvas.textContent = `This figure could not be drawn: ${error.message}`;
  else canvas.closest("figure")?.classList.add("undrawn");
}
