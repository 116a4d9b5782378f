import { fail, within } from "../check/check";
import { freezeDeep } from "../check/freeze-deep";
import type { Pan } from "./pan";
import { wholePieces } from "./whole-pieces";

/** Equal things for the freezer: pans, bare slabs, trays, bags or boxes. */
export interface FreezerThing {
  readonly name: string;
  /** as it lies (mm) */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly count: number;
  /** whether air must get between those that stand above each other; yes unless given, no for what is frozen already */
  readonly apart?: boolean;
}

/** A freezer's shelves, all alike. */
export interface FreezerShelves {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** clear height above a shelf (mm) */
  readonly clearMm: number;
  readonly shelves: number;
}

/** What `freezerFit` works from. */
export interface FreezerFitOptions {
  readonly shelves: FreezerShelves;
  /** in the order in which they go in */
  readonly things: readonly FreezerThing[];
  /** clear height between what must stand apart (mm); 30 unless given */
  readonly gapMm?: number;
}

/** How one kind of thing fits. */
export interface FittedThing {
  readonly name: string;
  /** side by side on a shelf */
  readonly perShelf: number;
  /** above each other on one place */
  readonly stack: number;
  readonly fits: number;
  /** how many must wait until there is room */
  readonly waits: number;
  readonly shelvesUsed: number;
}

/** What fits into a freezer, and what must wait. */
export interface FreezerFit {
  readonly kind: "freezer fit";
  readonly things: readonly FittedThing[];
  readonly shelvesLeft: number;
  /** of the shelves' room, what is taken [-] */
  readonly filled: number;
  readonly sentence: string;
}

/** Left free around what stands beside each other (mm); our judgement. */
const BESIDE_MM = 10;

/**
 * What fits on a freezer's shelves: side by side as whole things (`wholePieces`), above each other as far as the clear height
 * lets them, with a gap for the air where they are still to freeze. A shelf takes one kind of thing; what comes first gets its shelves
 * first.
 *
 * stack = ⌊(clear + gap)/(height + gap)⌋; the top one needs its gap too where air must pass over it.
 *
 * @example
 * const shelves = { lengthMm: 620, widthMm: 460, clearMm: 210, shelves: 2 };
 * const fit = freezerFit({ shelves, things: [{ name: "half sheet", lengthMm: 446, widthMm: 319, heightMm: 25, count: 9 }] });
 * fit.things[0].stack; // → 3
 * fit.things[0].waits; // → 3
 */
export function freezerFit({ shelves, things, gapMm = 30 }: FreezerFitOptions): FreezerFit {
  const where = "freezerFit";
  const gap = within(gapMm, 0, 500, `${where}: gapMm`, "mm");
  const { clearMm, lengthMm, widthMm } = shelves;
  within(clearMm, 10, 3000, `${where}: shelves.clearMm`, "mm");
  if (!(Number.isInteger(shelves.shelves) && shelves.shelves >= 1 && shelves.shelves <= 100))
    fail(`${where}: shelves.shelves`, "must be a whole number from 1 to 100", shelves.shelves);
  let left = shelves.shelves;
  let takenMm3 = 0;
  const fitted = things.map((thing): FittedThing => {
    const { count, heightMm, name } = thing;
    if (!(Number.isInteger(count) && count >= 0 && count <= 100_000))
      fail(`${where}: count of ${name}`, "must be a whole number from 0", count);
    const { perShelf, stack } = placesOnShelf({ shelves, thing, gapMm: gap });
    const most = perShelf * stack;
    const shelvesUsed = most === 0 ? 0 : Math.min(left, Math.ceil(count / most));
    const fits = Math.min(count, shelvesUsed * most);
    left -= shelvesUsed;
    takenMm3 += fits * thing.lengthMm * thing.widthMm * (heightMm + (thing.apart === false ? 0 : gap));
    return { name, perShelf, stack, fits, waits: count - fits, shelvesUsed };
  });
  const waiting = fitted.filter(({ waits }) => waits > 0);
  return freezeDeep({
    kind: "freezer fit" as const,
    things: fitted,
    shelvesLeft: left,
    filled: takenMm3 / (lengthMm * widthMm * clearMm * shelves.shelves),
    sentence:
      waiting.length === 0
        ? `All of it fits; ${left} of ${shelves.shelves} shelves stay free.`
        : `${waiting.map(({ fits, name, waits }) => `${waits} of ${fits + waits} ${name}`).join(", ")} must wait until there is room.`,
  });
}

/** How many of a thing stand on one shelf, and how many above each other. */
export function placesOnShelf({
  shelves,
  thing,
  gapMm,
}: {
  readonly shelves: Omit<FreezerShelves, "shelves">;
  readonly thing: Pick<FreezerThing, "lengthMm" | "widthMm" | "heightMm" | "apart">;
  readonly gapMm: number;
}): { readonly perShelf: number; readonly stack: number } {
  const { heightMm, lengthMm, widthMm } = thing;
  const floor = { shape: "rectangle" as const, lengthMm: shelves.lengthMm, widthMm: shelves.widthMm };
  const { pieces } = wholePieces({ floor, piece: { lengthMm, widthMm }, gapMm: BESIDE_MM });
  const gap = thing.apart === false ? 0 : gapMm;
  const stack = Math.floor(shelves.clearMm / (within(heightMm, 1, 3000, "freezerFit: heightMm", "mm") + gap) + 1e-9);
  return { perShelf: pieces, stack };
}

/** A pan's rim stands out by so much on each side (mm); our judgement of sheet pans. */
const RIM_MM = 8;

/** What a pan takes of a shelf (mm): its upper opening and its rim. Wells stand in a square, a quarter of a well apart. */
export function panOutline(pan: Pan): Pick<FreezerThing, "lengthMm" | "widthMm" | "heightMm"> {
  const wider = 2 * pan.depthMm * Math.tan((pan.wallTaperDeg * Math.PI) / 180);
  const heightMm = pan.depthMm;
  const outline = (lengthMm: number, widthMm: number): ReturnType<typeof panOutline> => ({
    lengthMm: lengthMm + 2 * RIM_MM,
    widthMm: widthMm + 2 * RIM_MM,
    heightMm,
  });
  if (pan.shape === "rectangle") return outline(pan.bottomLengthMm + wider, pan.bottomWidthMm + wider);
  if (pan.shape === "round") return outline(pan.bottomDiameterMm + wider, pan.bottomDiameterMm + wider);
  const rows = Math.max(1, Math.floor(Math.sqrt(pan.wells)));
  const pitch = 1.25 * (pan.bottomDiameterMm + wider);
  return outline(Math.ceil(pan.wells / rows) * pitch, rows * pitch);
}
