import { convertUnit } from "../../units/convert-unit";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "./figure";

/** The unit that an axis of a metric figure may be in, and what a US kitchen has in its place. */
const US: Readonly<Record<string, { readonly unit: string; readonly inOne: number; readonly moreDigits: number }>> = {
  mm: { unit: "in", inOne: 25.4, moreDigits: 1 },
  "°C": { unit: "°F", inOne: 5 / 9, moreDigits: 0 },
  g: { unit: "oz", inOne: convertUnit({ value: 1, from: "oz", to: "g" }), moreDigits: 1 },
};

type Loose = Readonly<Record<string, unknown>>;

/**
 * A figure drawn in millimetres, °C and grams, in a kitchen's own units: an axis whose title ends in `(mm)`, `(°C)` or `(g)`
 * is renamed, and all numbers on it are converted, those of error bars, ranges, lines, marks and hover texts too. The summary
 * is words, and left as it is.
 *
 * @param figure as it was drawn, in metric units
 * @param units the kitchen's own; a metric kitchen gets the figure back
 */
export function figureIn(figure: Figure, units: KitchenUnits): Figure {
  if (units === "metric") return figure;
  const unitOf = (axis: string): string | undefined => {
    const title = ((figure.layout[axis] as Loose | undefined)?.title as Loose | undefined)?.text;
    return /\((mm|°C|g)\)$/.exec(String(title ?? ""))?.[1];
  };
  const named = Object.entries(figure.layout).map(([key, value]): [string, unknown] => {
    if (/^[xy]axis\d*$/.test(key)) return [key, axisIn(value as Loose, unitOf(key))];
    if (key === "shapes" || key === "annotations")
      return [key, (value as readonly Loose[]).map((one) => placedIn(one, unitOf))];
    return [key, value];
  });
  return {
    ...figure,
    data: figure.data.map((trace) => traceIn(trace as Loose, unitOf)),
    layout: Object.fromEntries(named),
  };
}

function axisIn(axis: Loose, unit: string | undefined): Loose {
  if (unit === undefined) return axis;
  const title = axis.title as Loose;
  const range = axis.range === undefined ? {} : { range: valuesIn(axis.range, unit) };
  return {
    ...axis,
    ...range,
    title: { ...title, text: String(title.text).replace(`(${unit})`, `(${US[unit].unit})`) },
  };
}

/** A line, a mark or a note, on the axes that it names. */
function placedIn(one: Loose, unitOf: (axis: string) => string | undefined): Loose {
  const changed = (["x", "y"] as const).flatMap((letter) => {
    const unit = one[`${letter}ref`] === letter ? unitOf(`${letter}axis`) : undefined;
    if (unit === undefined) return [];
    return [letter, `${letter}0`, `${letter}1`]
      .filter((key) => typeof one[key] === "number")
      .map((key) => [key, valuesIn(one[key], unit)]);
  });
  return { ...one, ...Object.fromEntries(changed) };
}

function traceIn(trace: Loose, unitOf: (axis: string) => string | undefined): Loose {
  const changed = (["x", "y"] as const).flatMap((letter): [string, unknown][] => {
    const axis = String(trace[`${letter}axis`] ?? letter);
    const unit = unitOf(axis.replace(letter, `${letter}axis`));
    if (unit === undefined) return [];
    const lies = trace.type === "bar" && (trace.orientation === "h" ? "x" : "y") === letter;
    const bar = lies && trace.base !== undefined;
    const error = trace[`error_${letter}`] as Loose | undefined;
    return [
      [letter, bar ? differencesIn(trace[letter], unit) : valuesIn(trace[letter], unit)],
      ...(bar ? [["base", valuesIn(trace.base, unit)] as [string, unknown]] : []),
      ...(error === undefined ? [] : [[`error_${letter}`, errorIn(error, unit)] as [string, unknown]]),
    ];
  });
  const hover =
    trace.hovertemplate === undefined ? {} : { hovertemplate: hoverIn(String(trace.hovertemplate), trace, unitOf) };
  return { ...trace, ...Object.fromEntries(changed), ...hover };
}

function errorIn(error: Loose, unit: string): Loose {
  const changed = ["array", "arrayminus"]
    .filter((key) => error[key] !== undefined)
    .map((key) => [key, differencesIn(error[key], unit)]);
  return { ...error, ...Object.fromEntries(changed) };
}

/** `%{x:.1f} mm` becomes `%{x:.2f} in`, on the axes that were converted. */
function hoverIn(template: string, trace: Loose, unitOf: (axis: string) => string | undefined): string {
  return template.replace(
    /%\{(x|y|base):\.(\d)f\} (mm|°C|g)(?![\w/²³])/g,
    (whole, of: string, digits: string, unit: string) => {
      const letter = of === "base" ? (trace.orientation === "h" ? "x" : "y") : of;
      const axis = String(trace[`${letter}axis`] ?? letter).replace(letter, `${letter}axis`);
      if (unitOf(axis) !== unit) return whole;
      const { unit: own, moreDigits } = US[unit];
      return `%{${of}:.${Number(digits) + moreDigits}f} ${own}`;
    },
  );
}

function valuesIn(values: unknown, unit: string): unknown {
  if (Array.isArray(values)) return values.map((value) => valuesIn(value, unit));
  return typeof values === "number" ? values / US[unit].inOne + (unit === "°C" ? 32 : 0) : values;
}

function differencesIn(values: unknown, unit: string): unknown {
  if (Array.isArray(values)) return values.map((value) => differencesIn(value, unit));
  return typeof values === "number" ? values / US[unit].inOne : values;
}
