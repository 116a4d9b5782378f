import { type Axes, attribute, type Box, round, stroke } from "./marks";
import type { Place, Shape } from "./trace";

/** The lines and boxes that a layout adds to one pair of axes. */
export function shapesSvg(shapes: readonly Shape[], xName: string, yName: string, { x, y }: Axes, box: Box): string {
  let svg = "";
  for (const shape of shapes) {
    const [xref, yref] = [shape.xref ?? "x", shape.yref ?? "y"];
    if (![xName, "paper", `${xName} domain`].includes(xref) || ![yName, "paper", `${yName} domain`].includes(yref))
      continue;
    const across = (place: Place | undefined): number =>
      xref === xName ? (x.at(place) ?? box.left) : box.left + Number(place) * (box.right - box.left);
    const down = (place: Place | undefined): number =>
      yref === yName ? (y.at(place) ?? box.bottom) : box.bottom - Number(place) * (box.bottom - box.top);
    const [left, right, top, bottom] = [across(shape.x0), across(shape.x1), down(shape.y0), down(shape.y1)];
    const colour = attribute(shape.line?.color ?? "#444");
    svg +=
      shape.type === "line"
        ? `<path d="M${round(left)} ${round(top)}L${round(right)} ${round(bottom)}" fill="none" ${stroke(shape, colour)}/>`
        : `<rect x="${round(Math.min(left, right))}" y="${round(Math.min(top, bottom))}" width="${round(Math.abs(right - left))}" height="${round(Math.abs(bottom - top))}" fill="${attribute(shape.fillcolor ?? "none")}" ${shape.line?.width === 0 ? "" : stroke(shape, colour)}/>`;
  }
  return svg;
}
