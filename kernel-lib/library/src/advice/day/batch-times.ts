import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { type ThermalModel, thermalProperties } from "../../food/thermal/thermal-properties";
import { CUTTING_LIMITS } from "../../heat/freezing/cutting-limits";
import { type FlashFreeze, flashFreeze } from "../../heat/freezing/flash-freeze";
import { freezeToCut } from "../../heat/freezing/freeze-to-cut";
import { freezerCoefficients } from "../../heat/freezing/freezer-coefficients";
import { freezingHeat } from "../../heat/freezing/freezer-load";
import { runsOverDoubt, type TimeRange } from "../../heat/freezing/runs-over-doubt";
import { temperToCut } from "../../heat/freezing/temper-to-cut";
import { workableTime } from "../../heat/freezing/workable-time";
import { type HeatRun, timeWhen } from "../../heat/solver/heat-run";
import { simulateSlab } from "../../heat/solver/simulate-slab";
import { panOutline } from "../../pan/freezer-fit";
import { faceAreaMm2 } from "../../pan/pan-volume";
import { COOLING_LIMITS } from "../../safety/cold/cooling-check";
import type { Appliance } from "../../trials/appliance";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { type BatchOnPan, batchOnPan } from "../../trials/pieces/batch-on-pan";
import { crispWindow } from "../window/crisp-window";
import { piecesOnFloor, wholeOnFloor } from "../window/load-plan";
import type { SettledPlaces } from "./day-places";

/** One product of a day. */
export interface DayBatch {
  readonly variantId: string;
  /** pans of it; 1 unless given */
  readonly pans?: number;
  /** mix on each (g); the variant's own unless given */
  readonly batchG?: number;
  /** the variant's own unless given */
  readonly panId?: string;
  /** how long a load cooks before it is frozen (min); 0: it is not cooked. Left out: as the formula's state says */
  readonly cookMin?: number;
}

/** How the pieces of a batch are cooked before they are frozen. */
export interface DayCooking {
  readonly applianceId: string;
  readonly applianceName: string;
  readonly timeMin: number;
  readonly piecesPerLoad: number;
  readonly loads: number;
  /** where the time is from */
  readonly source: string;
  /** until they may go into the freezer: hot core to `STEAM_OFF_C` in the room */
  readonly cool: TimeRange;
  /** from the oven until in the freezer at most, so that the two-stage limit is kept (min) */
  readonly longestOutMin: number;
  /** the hot core in slow air, in the room and then in the freezer */
  readonly curves: { readonly room: CoreCurve; readonly freezer: CoreCurve };
}

/** A core that cools, in the slowest air that the doubt allows. */
export interface CoreCurve {
  readonly timeMin: readonly number[];
  readonly coreC: readonly number[];
}

/** What freezing takes away of one pan. */
export interface FreezingHeat {
  readonly heatKJ: number;
  readonly iceKg: number;
}

/** Everything that a day needs to know of the time that one pan of a batch takes. */
export interface BatchTimes {
  readonly variant: KitchenVariant;
  readonly batch: BatchOnPan;
  readonly pans: number;
  /** in the freezer until it can be cut; null for a batter, which is not frozen before it is baked */
  readonly firm: TimeRange | null;
  /** on the counter until a slab that was frozen hard can be cut; null where it is cut on the way */
  readonly temper: TimeRange | null;
  /** it must be cut within this time after that (min); null for a batter */
  readonly cutWithinMin: number | null;
  /** pieces out of the freezer are coated within this time (min); null for a batter */
  readonly workable: TimeRange | null;
  readonly cooking: DayCooking | null;
  /** pieces in the freezer until they can be packed */
  readonly flash: TimeRange;
  /** trays that the pieces of one pan take in the freezer */
  readonly trays: number;
  /** of the slab until it can be cut, and of its pieces until they are as cold as the freezer */
  readonly heat: { readonly slab: FreezingHeat; readonly pieces: FreezingHeat };
  /** a mix from the room's temperature in slow freezer air; null for a batter, which is baked first */
  readonly ambient: CoreCurve | null;
  /** whether its pans and trays stand above each other in the freezer, with gaps */
  readonly isStacked: boolean;
  readonly notes: readonly string[];
}

/** A cooked core goes into the freezer from here on: the worst steam is off (°C); common practice, no source. */
export const STEAM_OFF_C = 40;
/** Pieces cover at most so much of a tray [-]; our judgement. */
const TRAY_COVER = 0.7;
/** A window for cutting that is shorter than this is left alone, and the slab frozen hard (min); our judgement. */
const SHORTEST_CUT_MIN = 12;
/** A par-cook that sets the coating, and a batter's bake, where nobody says: stand-ins (min); common practice, no source. */
const PAR_COOK_MIN = 5;
const BAKE_MIN = 20;
const DRAWS = 300;
/** A coefficient of air may be off by this share either way [-], as `freezeToCut` has it. */
const AIR_DOUBT = 0.4;
/** Time that it takes to move a load at least (min). */
const SHORTEST_OUT_MIN = 5;

/** What `batchTimes` works from. */
export interface BatchTimesOptions {
  readonly kitchen: Kitchen;
  readonly batch: DayBatch;
  readonly places: SettledPlaces;
  /** pans that stand above each other on one place of the freezer */
  readonly stacked: number;
}

/**
 * The times of one batch, from the heat model, each with the range that the air's doubt gives it: freezing to cut, or hard
 * and then tempered; workable for coating; cooked by loads; cooled within the two-stage limit; frozen through.
 */
export function batchTimes({ kitchen, batch, places, stacked }: BatchTimesOptions): BatchTimes {
  const where = "batchDay";
  const variant = variantOf(kitchen, batch.variantId);
  const pan = panOf(kitchen, batch.panId ?? variant.panId);
  const pans = batch.pans ?? 1;
  if (!(Number.isInteger(pans) && pans >= 1 && pans <= 100))
    fail(`${where}: pans of ${variant.variantId}`, "must be a whole number from 1 to 100", pans);
  const onPan = batchOnPan({ kitchen, variant, pan, batchG: batch.batchG ?? variant.batchG });
  const food = thermalProperties(variant.composition, { airFraction: variant.formula.airFraction, thawedAtC: 5 });
  const { thicknessMm } = onPan.slab;
  const [lengthMm, widthMm] = onPan.sidesMm;
  const air = { airC: places.freezerC, airflow: places.airflow };
  const freezer = freezerCoefficients({ ...air, stackGapMm: stacked > 1 ? places.gapMm : undefined });
  const piece = { food, thicknessMm, lengthMm, widthMm };
  const isCooked = cooked(batch, variant);
  const pieces = flashFreeze({
    ...piece,
    ...freezer,
    airC: places.freezerC,
    startC: isCooked ? STEAM_OFF_C : COOLING_LIMITS.coldC,
  });
  const cooking = isCooked ? cookingOf({ kitchen, batch, variant, onPan, places, food, pieces }) : null;
  const notes = cooking === null ? [] : [`${variant.name}: cooked for ${cooking.timeMin} min, ${cooking.source}.`];
  const flash = rangeOf(pieces);
  const trayMm2 = TRAY_COVER * faceAreaMm2(pan, 0);
  const trays =
    variant.form === "batter" ? 1 : Math.max(1, Math.ceil((onPan.pieces.pieces * lengthMm * widthMm) / trayMm2));
  const massKg = (onPan.pieces.pieces * onPan.pieces.pieceG) / 1000;
  const heatOf = (kg: number, fromC: number, toC: number): FreezingHeat =>
    fromC <= toC ? { heatKJ: 0, iceKg: 0 } : freezingHeat({ food, massKg: kg, fromC, toC });
  const common = { variant, batch: onPan, pans, cooking, flash, trays, isStacked: stacked > 1 };
  if (variant.form === "batter")
    return freezeDeep({
      ...common,
      firm: null,
      temper: null,
      cutWithinMin: null,
      workable: null,
      heat: { slab: { heatKJ: 0, iceKg: 0 }, pieces: heatOf(massKg, STEAM_OFF_C, places.freezerC) },
      ambient: null,
      notes,
    });

  const freezing = freezeToCut({ food, thicknessMm, ...freezer, airC: places.freezerC });
  const onCounter = workableTime({ ...piece, airC: places.roomC });
  const workable = rangeOf(onCounter);
  const ambient = curveOf(
    simulateSlab({
      food,
      thicknessMm,
      startC: places.roomC,
      airC: places.freezerC,
      coefficientWm2K: (1 - AIR_DOUBT) * freezer.coefficientWm2K,
      coefficientBelowWm2K: (1 - AIR_DOUBT) * freezer.coefficientBelowWm2K,
      drying: "none",
      endMin: 1500,
      stopCoreC: COOLING_LIMITS.coldC - 0.5,
    }),
  );
  const warmC = isCooked ? STEAM_OFF_C : Math.max(onCounter.meanC, places.freezerC);
  const heatTo = (slabC: number): BatchTimes["heat"] => ({
    slab: heatOf(onPan.slab.batchG / 1000, COOLING_LIMITS.coldC, slabC),
    pieces: heatOf(massKg, warmC, places.freezerC),
  });
  const onTheWay =
    freezing.brittle === undefined
      ? Number.POSITIVE_INFINITY
      : freezing.brittle.earliestMin - freezing.firm.earliestMin;
  if (freezing.cutsOnTheWay && onTheWay >= SHORTEST_CUT_MIN)
    return freezeDeep({
      ...common,
      firm: rangeOf(freezing.firm),
      temper: null,
      cutWithinMin: Number.isFinite(onTheWay) ? Math.floor(onTheWay) : null,
      workable,
      heat: heatTo(CUTTING_LIMITS.softAboveC),
      ambient,
      notes,
    });
  const tempering = temperToCut({ food, thicknessMm, startC: places.freezerC, airC: places.roomC });
  return freezeDeep({
    ...common,
    firm: rangeOf(freezing.hardThrough ?? freezing.firm),
    temper: rangeOf(tempering.from),
    cutWithinMin: Math.max(1, Math.floor(tempering.until.earliestMin - tempering.from.earliestMin)),
    workable,
    heat: heatTo(CUTTING_LIMITS.brittleBelowC),
    ambient,
    notes,
  });
}

/** Whether a batch is cooked before it is frozen in pieces. */
function cooked({ cookMin }: DayBatch, { formula, variantId }: KitchenVariant): boolean {
  if (cookMin === undefined) return formula.state === "par-cooked" || formula.state === "cooked and cooled";
  if (!(cookMin >= 0 && cookMin <= 600))
    fail(`batchDay: cookMin of ${variantId}`, "must be between 0 and 600 min", cookMin);
  return cookMin > 0;
}

interface CookingOptions {
  readonly kitchen: Kitchen;
  readonly batch: DayBatch;
  readonly variant: KitchenVariant;
  readonly onPan: BatchOnPan;
  readonly places: SettledPlaces;
  readonly food: ThermalModel;
  /** its pieces in the freezer, from `STEAM_OFF_C` */
  readonly pieces: FlashFreeze;
}

function cookingOf(options: CookingOptions): DayCooking {
  const { kitchen, batch, variant, onPan, pieces } = options;
  const appliance = applianceOf(kitchen, variant.applianceId);
  const [lengthMm, widthMm] = onPan.sidesMm;
  const batter = variant.form === "batter";
  const { timeMin, source } =
    batch.cookMin === undefined ? cookTime(options) : { timeMin: Math.ceil(batch.cookMin), source: "as given" };
  const piecesPerLoad = Math.max(
    1,
    batter ? pansOnFloor(appliance, onPan) : piecesOnFloor(appliance, LOOSE_LOAD, [lengthMm, widthMm]),
  );
  const { range } = runsOverDoubt(AIR_DOUBT, (factor) => inTheRoom(options, factor));
  const slow = pieces.latestMin / pieces.timeMin;
  const until = (celsius: number): number => slow * timeWhen(pieces.run, { column: "coreC", value: celsius });
  const slowRoom = inTheRoom(options, 1 - AIR_DOUBT, Math.max(COOLING_LIMITS.firstC, options.places.roomC + 1));
  const { coldC, cookedMin, firstC, firstMin } = COOLING_LIMITS;
  const longestOutMin = Math.floor(Math.min(firstMin - until(firstC), cookedMin - until(coldC)));
  if (longestOutMin < SHORTEST_OUT_MIN)
    fail(
      `batchDay: ${variant.variantId}`,
      `must be cooled faster: its pieces take so long to ${firstC} °C in this freezer that the two-stage limit leaves no time to move them; thinner pieces, colder or moving air`,
      `${Math.round(until(firstC))} min in the freezer`,
    );
  return {
    applianceId: appliance.applianceId,
    applianceName: appliance.name,
    timeMin,
    piecesPerLoad,
    loads: Math.ceil((batter ? 1 : onPan.pieces.pieces) / piecesPerLoad),
    source,
    cool: rangeOf(range((run) => timeWhen(run, { column: "coreC", value: STEAM_OFF_C }))),
    longestOutMin,
    curves: {
      room: curveOf(slowRoom),
      freezer: { timeMin: pieces.run.timeMin.map((min) => slow * min), coreC: pieces.run.coreC },
    },
  };
}

/** How long a load cooks where nobody says. */
function cookTime({ kitchen, variant }: CookingOptions): { readonly timeMin: number; readonly source: string } {
  if (variant.form === "batter")
    return {
      timeMin: BAKE_MIN,
      source: "a stand-in, common practice without a source: say your own bake as cookMin, and probe the core",
    };
  if (variant.formula.state === "par-cooked")
    return {
      timeMin: PAR_COOK_MIN,
      source: "a stand-in that sets the coating, common practice without a source: it stays raw, and is cooled at once",
    };
  const { recommended } = crispWindow({ kitchen, variantId: variant.variantId, draws: DRAWS });
  return {
    timeMin: Math.ceil(recommended.cardMin),
    source: "the time to print for it from frozen, which is on the safe side from the bench: probe the core",
  };
}

/** A hot slab that cools on a rack in the room, in still air: without its edges, and so rather late. */
function inTheRoom(
  { food, onPan, places, variant }: CookingOptions,
  factor: number,
  untilC: number = STEAM_OFF_C - 0.5,
): HeatRun {
  return simulateSlab({
    food,
    thicknessMm: onPan.slab.thicknessMm,
    startC: Math.max(variant.limit.limitC, COOLING_LIMITS.startC) + 10,
    airC: places.roomC,
    coefficientWm2K: 10 * factor,
    drying: "none",
    endMin: 1500,
    stopCoreC: untilC,
  });
}

/** Pans of a batter that stand in an appliance side by side: by its sides where they are known, else by area. */
function pansOnFloor(appliance: Appliance, { pan }: BatchOnPan): number {
  const { lengthMm, widthMm } = panOutline(pan);
  return wholeOnFloor(appliance, [lengthMm, widthMm]) ?? Math.floor((appliance.floorCm2 * 100) / (lengthMm * widthMm));
}

/** Every so many minutes of a run are kept; it is read between them (min). */
const CURVE_STEP_MIN = 2;

function curveOf({ coreC, timeMin }: HeatRun): CoreCurve {
  const kept = timeMin.flatMap((min, at) =>
    at === 0 ||
    at === timeMin.length - 1 ||
    Math.floor(min / CURVE_STEP_MIN) > Math.floor(timeMin[at - 1] / CURVE_STEP_MIN)
      ? [at]
      : [],
  );
  return { timeMin: kept.map((at) => timeMin[at]), coreC: kept.map((at) => coreC[at]) };
}

const rangeOf = ({ timeMin, earliestMin, latestMin }: TimeRange): TimeRange => ({
  timeMin: Math.ceil(timeMin),
  earliestMin: Math.floor(earliestMin),
  latestMin: Math.ceil(latestMin),
});
