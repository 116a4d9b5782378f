import { expect, it } from "vitest";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { coreFigure } from "../../../../kernel-lib/library/src/views/crisp/core-figure";
import { successFigure } from "../../../../kernel-lib/library/src/views/crisp/success-figure";
import { unsafeTime } from "../../../../kernel-lib/library/src/views/crisp/unsafe-time";

it("greys the times before every piece is safe alike in the figures of core and success, and says what the grey is", () => {
  const kitchen = loadKitchen();
  const window = crispWindow({ kitchen, variantId: "turkey-sage", draws: 100 });
  const { shapes, annotations } = unsafeTime(window.chances.safeFromMin);
  for (const { layout } of [coreFigure(window, kitchen.trials), successFigure(window)]) {
    expect(layout.shapes).toEqual(shapes);
    expect(layout.annotations).toEqual(annotations);
  }
  expect(shapes).toMatchObject([{ x0: 0, x1: window.chances.safeFromMin }]);
  expect(annotations).toMatchObject([{ text: "core not surely safe" }]);
});
