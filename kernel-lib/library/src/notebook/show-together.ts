import { type NamedFigure, smallMultiples } from "../views/figure/small-multiples";
import { show } from "./show";

/**
 * Shows figures of one kind, one a variant, as one figure with a panel each; one alone as it is, and nothing where there is none.
 *
 * @param title of the whole
 * @param panels each figure with its name
 * @example
 * const { times, fit } = variantCrispTime({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * showTogether("Crisp time", [{ name: "beet and lentil bites", figure: crispTimeFigure(times, fit) }]); // → undefined
 */
export function showTogether(title: string, panels: readonly NamedFigure[]): void {
  if (panels.length > 0) show(smallMultiples(panels, title));
}
