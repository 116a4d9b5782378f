import { positive, within } from "../check/check";
import { freezeDeep } from "../check/freeze-deep";
import { largestOf } from "../statistics/extremes";

/** The floor of a basket, a rack or a tray, seen from above. */
export type Floor =
  | { readonly shape: "rectangle"; readonly lengthMm: number; readonly widthMm: number }
  | { readonly shape: "round"; readonly diameterMm: number };

/** A piece as it lies. */
export type LyingPiece = { readonly lengthMm: number; readonly widthMm: number } | { readonly diameterMm: number };

/** What `wholePieces` works from. */
export interface WholePiecesOptions {
  readonly floor: Floor;
  readonly piece: LyingPiece;
  /** left free between neighbours (mm); 0 unless given */
  readonly gapMm?: number;
}

/** Where one piece lies, from the floor's middle. */
export interface PiecePlace {
  readonly xMm: number;
  readonly yMm: number;
  /** its longer side lies across */
  readonly turned: boolean;
}

/** How many whole pieces lie on a floor, and where. */
export interface WholePieces {
  readonly pieces: number;
  readonly places: readonly PiecePlace[];
  /** what the areas alone would claim */
  readonly byArea: number;
  /** share of the floor that they cover [-] */
  readonly coverFraction: number;
}

/** Rounding that still counts as touching (mm). */
const TOUCH_MM = 1e-7;
/** Shifts of a lattice of round pieces that are tried along each of its sides. */
const SHIFTS = 24;

/**
 * Whole pieces that lie flat on a floor in one layer: cut pieces in straight rows (on a round floor each row as long as it
 * may be, the stack of rows shifted to where most fit; on a rectangle also turned, or partly turned), round ones in straight
 * or in offset rows. Every count has its places; an arrangement without rows may hold one more.
 *
 * @returns count and places; `byArea` is what the areas would claim, which is too many
 *
 * @example
 * const squares = wholePieces({ floor: { shape: "round", diameterMm: 228 }, piece: { lengthMm: 40, widthMm: 40 } });
 * squares.pieces; // → 19
 * squares.byArea; // → 25
 * wholePieces({ floor: { shape: "round", diameterMm: 150 }, piece: { diameterMm: 50 } }).pieces; // → 7
 */
export function wholePieces({ floor, piece, gapMm = 0 }: WholePiecesOptions): WholePieces {
  const where = "wholePieces";
  const gap = within(gapMm, 0, 500, `${where}: gapMm`, "mm");
  const size = (value: number, name: string): number => within(value, 3, 5000, `${where}: ${name}`, "mm");
  const [length, width] =
    floor.shape === "round"
      ? [size(floor.diameterMm, "floor.diameterMm"), floor.diameterMm]
      : [size(floor.lengthMm, "floor.lengthMm"), size(floor.widthMm, "floor.widthMm")];
  const round = "diameterMm" in piece;
  const [long, short] = round
    ? [size(piece.diameterMm, "piece.diameterMm"), piece.diameterMm]
    : [size(piece.lengthMm, "piece.lengthMm"), size(piece.widthMm, "piece.widthMm")];
  const candidates = round
    ? discs(floor, long, gap)
    : floor.shape === "round"
      ? [rowsInRound(length, long, short, gap, false), rowsInRound(length, short, long, gap, true)]
      : blocks(length, width, long, short, gap);
  const most = largestOf(candidates.map((places) => places.length));
  const places = candidates.find((one) => one.length === most) ?? [];
  const pieceMm2 = round ? (Math.PI * long * long) / 4 : long * short;
  const floorMm2 = floor.shape === "round" ? (Math.PI * length * length) / 4 : length * width;
  return freezeDeep({
    pieces: places.length,
    places,
    byArea: Math.floor(positive(floorMm2, `${where}: floor`, "mm²") / pieceMm2),
    coverFraction: (places.length * pieceMm2) / floorMm2,
  });
}

const fitting = (length: number, piece: number, gap: number): number =>
  Math.max(0, Math.floor((length + gap + TOUCH_MM) / (piece + gap)));

/** Rows of pieces in a circle: the stack starts where some row just gets its last piece in. */
function rowsInRound(diameter: number, along: number, across: number, gap: number, turned: boolean): PiecePlace[] {
  const radius = diameter / 2;
  const pitch = across + gap;
  const firsts = [-radius];
  for (let count = 1; count <= fitting(diameter, along, gap); count++) {
    const half = (count * along + (count - 1) * gap) / 2;
    const reach = Math.sqrt(Math.max(0, radius * radius - half * half));
    for (const edge of [-reach, reach - across]) firsts.push(edge - pitch * Math.floor((edge + radius) / pitch));
  }
  const rowsFrom = (first: number): { readonly y: number; readonly count: number }[] => {
    const rows: { readonly y: number; readonly count: number }[] = [];
    for (let low = first; low + across <= radius + TOUCH_MM; low += pitch) {
      const edge = Math.max(Math.abs(low), Math.abs(low + across));
      const chord = edge > radius + TOUCH_MM ? -1 : 2 * Math.sqrt(Math.max(0, radius * radius - edge * edge));
      rows.push({ y: low + across / 2, count: chord < 0 ? 0 : fitting(chord, along, gap) });
    }
    return rows;
  };
  const stacks = firsts.map(rowsFrom);
  const held = stacks.map((rows) => rows.reduce((sum, { count }) => sum + count, 0));
  return stacks[held.indexOf(largestOf(held))].flatMap(({ y, count }) =>
    Array.from({ length: count }, (_, at) => ({ xMm: (at - (count - 1) / 2) * (along + gap), yMm: y, turned })),
  );
}

/** Rows on a rectangle: all one way, all the other, and a block of each side by side or one above the other. */
function blocks(length: number, width: number, long: number, short: number, gap: number): PiecePlace[][] {
  const block = (box: { x: number; y: number; length: number; width: number }, turned: boolean): PiecePlace[] => {
    const [along, across] = turned ? [short, long] : [long, short];
    const [columns, rows] = [fitting(box.length, along, gap), fitting(box.width, across, gap)];
    return Array.from({ length: columns * rows }, (_, at) => ({
      xMm: box.x + along / 2 + (at % columns) * (along + gap),
      yMm: box.y + across / 2 + Math.floor(at / columns) * (across + gap),
      turned,
    }));
  };
  const [x, y] = [-length / 2, -width / 2];
  const all: PiecePlace[][] = [];
  for (const turned of [false, true]) {
    const [along, across] = turned ? [short, long] : [long, short];
    for (let columns = fitting(length, along, gap); columns >= 0; columns--) {
      const used = columns * (along + gap);
      const rest = { x: x + used, y, length: length - used, width };
      all.push([...block({ x, y, length: used, width }, turned), ...block(rest, !turned)]);
    }
    for (let rows = fitting(width, across, gap); rows >= 0; rows--) {
      const used = rows * (across + gap);
      const rest = { x, y: y + used, length, width: width - used };
      all.push([...block({ x, y, length, width: used }, turned), ...block(rest, !turned)]);
    }
  }
  return all;
}

/** Round pieces in straight and in offset rows, the lattice shifted about. */
function discs(floor: Floor, diameter: number, gap: number): PiecePlace[][] {
  const pitch = diameter + gap;
  const [halfX, halfY] =
    floor.shape === "round" ? [floor.diameterMm / 2, floor.diameterMm / 2] : [floor.lengthMm / 2, floor.widthMm / 2];
  const inside = (x: number, y: number): boolean =>
    floor.shape === "round"
      ? Math.hypot(x, y) + diameter / 2 <= halfX + TOUCH_MM
      : Math.abs(x) + diameter / 2 <= halfX + TOUCH_MM && Math.abs(y) + diameter / 2 <= halfY + TOUCH_MM;
  const lattice = (rise: number, offset: number, swapped: boolean, startX: number, startY: number): PiecePlace[] => {
    const places: PiecePlace[] = [];
    const [reachX, reachY] = swapped ? [halfY, halfX] : [halfX, halfY];
    const rows = Math.ceil(reachY / rise) + 1;
    const columns = Math.ceil(reachX / pitch) + 1;
    for (let row = -rows; row <= rows; row++)
      for (let column = -columns; column <= columns; column++) {
        const u = startX + column * pitch + (row % 2 === 0 ? 0 : offset);
        const v = startY + row * rise;
        const [xMm, yMm] = swapped ? [v, u] : [u, v];
        if (inside(xMm, yMm)) places.push({ xMm, yMm, turned: false });
      }
    return places;
  };
  const all: PiecePlace[][] = [];
  for (const [rise, offset] of [
    [pitch, 0],
    [(pitch * Math.sqrt(3)) / 2, pitch / 2],
  ])
    for (const swapped of [false, true]) {
      const [reachX, reachY] = swapped ? [halfY, halfX] : [halfX, halfY];
      const shiftsOf = (step: number, reach: number): number[] => [
        ...Array.from({ length: SHIFTS }, (_, at) => (at * step) / SHIFTS),
        step / 3,
        // the first row against the edge
        -reach + diameter / 2,
      ];
      for (const startX of [...shiftsOf(pitch, reachX), -reachX + diameter / 2 - offset])
        for (const startY of shiftsOf(rise, reachY)) all.push(lattice(rise, offset, swapped, startX, startY));
    }
  return all;
}
