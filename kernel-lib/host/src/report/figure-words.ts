import type { Figure } from "./figure-of";
import { type FigurePanel, type FigureTrace, figureParts, plainWords } from "./figure-parts";

/** At most so many names are said; how many more there are is said too. */
const MOST_NAMES = 12;

/**
 * What a figure shows, in words for who does not see it: title, panels, both axes with the range of what is drawn, and what
 * each trace is.
 */
export function figureWords(figure: Figure): string {
  const { title, panels, traces } = figureParts(figure);
  const names = [...panels.values()].map(({ name }) => name).filter((name) => name !== "");
  const pairs = new Map<string, { panel: FigurePanel; traces: FigureTrace[] }>();
  for (const trace of traces) {
    const panel = panels.get(trace.panel) as FigurePanel;
    const key = JSON.stringify([panel.xTitle, panel.yTitle]);
    if (!pairs.has(key)) pairs.set(key, { panel, traces: [] });
    pairs.get(key)?.traces.push(trace);
  }
  const sentences = [title, panels.size > 1 && `${panels.size} panels${names.length ? `: ${listed(names)}` : ""}`];
  for (const { panel, traces } of pairs.values()) {
    sentences.push(axisWords("Across", panel.xTitle, traces, "x"));
    sentences.push(axisWords("Upwards", panel.yTitle, traces, "y"));
  }
  if (traces.length > 0) sentences.push(`Drawn: ${listed(traceWords(traces))}`);
  return sentences
    .filter((sentence) => typeof sentence === "string" && sentence !== "")
    .map((sentence) => `${sentence}${/[.!?]$/.test(sentence as string) ? "" : "."}`)
    .join(" ");
}

function axisWords(way: string, title: string, traces: readonly FigureTrace[], letter: "x" | "y"): string {
  const values = traces.flatMap(({ fields }) => (Array.isArray(fields[letter]) ? (fields[letter] as unknown[]) : []));
  const range = rangeWords(values);
  if (title === "" && range === "") return "";
  return `${way}: ${[title, range].filter((words) => words !== "").join(", ")}`;
}

function rangeWords(values: readonly unknown[]): string {
  const numbers = values.filter((value): value is number => typeof value === "number" && Number.isFinite(value));
  const texts = values.filter((value): value is string => typeof value === "string" && value !== "");
  if (numbers.length > 0 && texts.length === 0) {
    const least = numbers.reduce((one, other) => Math.min(one, other));
    const most = numbers.reduce((one, other) => Math.max(one, other));
    return least === most ? shortNumber(least) : `${shortNumber(least)} to ${shortNumber(most)}`;
  }
  if (texts.length === 0) return "";
  if (texts.every((text) => /^\d{4}-\d\d/.test(text))) {
    const days = texts.map((text) => text.slice(0, 16)).sort();
    return days[0] === days.at(-1) ? days[0] : `${days[0]} to ${days.at(-1)}`;
  }
  return listed([...new Set(texts.map(plainWords))]);
}

/** Four digits are enough to read an axis. */
function shortNumber(value: number): string {
  return String(Number(value.toPrecision(4))).replace("-", "−");
}

/** Each name once, with its kind and, where it is made of marks, how many they are. */
function traceWords(traces: readonly FigureTrace[]): string[] {
  const kinds = new Map<string, { kind: string; name: string; marks: number }>();
  for (const trace of traces) {
    const kind = kindWords(trace);
    const key = JSON.stringify([kind, trace.name]);
    const { x, y } = trace.fields;
    const points = Array.isArray(y) ? y.length : Array.isArray(x) ? x.length : 0;
    const known = kinds.get(key) ?? { kind, name: trace.name, marks: 0 };
    kinds.set(key, { ...known, marks: known.marks + points });
  }
  return [...kinds.values()].map(
    ({ kind, name, marks }) => `${/mark|bar/.test(kind) ? `${marks} ${kind}` : kind}${name === "" ? "" : ` “${name}”`}`,
  );
}

const KINDS: Readonly<Record<string, string>> = {
  bar: "bars",
  waterfall: "bars, each on the one before",
  heatmap: "a map in colours",
  contour: "lines of equal height",
  pie: "shares of a circle",
  table: "a table",
};

function kindWords({ type, fields }: FigureTrace): string {
  if (!/^scatter(gl)?$/.test(type)) return Object.hasOwn(KINDS, type) ? KINDS[type] : plainWords(type);
  const mode = typeof fields.mode === "string" ? fields.mode : "lines+markers";
  if (typeof fields.fill === "string" && fields.fill !== "none") return "a band";
  if (mode.includes("lines")) return mode.includes("markers") ? "a line with marks" : "a line";
  return mode.includes("markers") ? "marks" : "words";
}

function listed(words: readonly string[]): string {
  const more = words.length - MOST_NAMES;
  return more > 1 ? `${words.slice(0, MOST_NAMES).join(", ")} and ${more} more` : words.join(", ");
}
