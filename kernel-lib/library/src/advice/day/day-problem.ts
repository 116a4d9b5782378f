import { freezeDeep } from "../../check/freeze-deep";
import type { TimeRange } from "../../heat/freezing/runs-over-doubt";
import type { ScheduleProblem, ScheduleTask } from "../../plan/schedule/schedule-problem";
import type { Kitchen } from "../../trials/kitchen";
import type { BatchTimes, CoreCurve, FreezingHeat } from "./batch-times";
import type { SettledPlaces } from "./day-places";

/** What is done in a step. */
export type DayStepKind = "mix" | "spread" | "freeze" | "temper" | "cut" | "coat" | "cook" | "freeze pieces" | "pack";

/** A step before it has its time. */
export interface PlannedStep {
  readonly id: string;
  readonly kind: DayStepKind;
  readonly variantId: string;
  readonly variantName: string;
  /** which pan of the batch, from 1; null for the whole batch */
  readonly pan: number | null;
  /** which load or tray of the pan, from 1, of how many; null where there is but one */
  readonly part: readonly [number, number] | null;
  /** how long the heat model says that it takes; null for work by hand */
  readonly wait: TimeRange | null;
  /** whether hands are wanted for all of it, for its beginning and end, or not at all */
  readonly hands: "all" | "ends" | "none";
  /** how much of a load's time goes into coating its pieces (min); 0 for every other step */
  readonly coatMin: number;
  /** what freezing takes away in this step; null for every other step */
  readonly heat: FreezingHeat | null;
}

/** A day as a problem of tasks that share places, and what each task is. */
export interface DayProblem {
  readonly problem: ScheduleProblem;
  readonly steps: readonly PlannedStep[];
  readonly curves: readonly BatchCurves[];
}

/** How the food of one batch cools, in slow air. */
export interface BatchCurves {
  readonly variantId: string;
  readonly variantName: string;
  /** which of the day's batches, from 1: what the ids of its steps begin with */
  readonly batch: number;
  readonly ambient: CoreCurve | null;
  readonly cooked: { readonly room: CoreCurve; readonly freezer: CoreCurve } | null;
  /** an egg wash or a batter that stands on the counter while pieces are coated */
  readonly hasWash: boolean;
}

/** Days that a batch day may run over into. */
/** What the freezer takes away, as something that is shared (W). */
const POWER = "freezer watts";
const DAYS = 3;
const DAY_MIN = 1440;
/** A spread pan is out of the cold for no longer than this (min): our judgement, well inside the 4 h that Food Code 3-501.19 allows (from memory). */
export const OUT_OF_COLD_MIN = 60;

/** Loads share a tray within this part of the time that the cooling limit leaves, so that other work fits between them; our judgement [-] */
const SPAN_USED = 0.6;

/** Coating takes at most this part of the time for which pieces are workable; our judgement [-] */
const COAT_USED = 0.75;

/** What `dayProblem` works from. */
export interface DayProblemOptions {
  readonly kitchen: Kitchen;
  readonly places: SettledPlaces;
  readonly batches: readonly BatchTimes[];
  /** pans that may stand above each other on one place: others take the whole place */
  readonly stacked: number;
  /** what freezes at the same time asks for no more than so many times what the freezer takes away; no bound unless given */
  readonly powerShare?: number;
}

/**
 * The tasks of a day, in minutes after midnight: a mix for every batch; every pan spread, frozen, tempered where it must,
 * cut, coated and cooked by loads, cooled, frozen in pieces and packed. A pan is taken from spreading until its last pieces
 * are off it, a place in the freezer from freezing on, an appliance with its recovery; hands are away in breaks and at night.
 * Longest waits keep slabs in the time in which they cut, pieces workable, and cooling within the two-stage limit.
 */
export function dayProblem({ kitchen, places, batches, stacked, powerShare }: DayProblemOptions): DayProblem {
  const { minutes } = places;
  const tasks: ScheduleTask[] = [];
  const steps: PlannedStep[] = [];
  const links: ScheduleProblem["links"][number][] = [];
  const holds: NonNullable<ScheduleProblem["holds"]>[number][] = [];
  const watts = Math.max(1, Math.floor((powerShare ?? 1) * places.freezerRemovesW));
  // a load that alone asks for more than there is takes all of it
  const powerOf = (heatKJ: number, min: number): number =>
    Math.min(watts, Math.ceil((heatKJ * 1000) / (60 * whole(min))));
  const whole = (min: number): number => Math.max(1, Math.ceil(min));

  for (const [at, times] of batches.entries()) {
    const { variant, batch, pans, firm, temper, cutWithinMin, workable, cooking, flash } = times;
    const name = `${at + 1} ${variant.variantId}`;
    // one that stands alone takes a whole place
    const amount = times.isStacked ? 1 : stacked;
    const panId = `pan ${batch.pan.id}`;
    const recoverMin = places.recoverMin?.[cooking?.applianceId ?? ""] ?? minutes.recover;
    const add = (step: Omit<PlannedStep, "variantId" | "variantName">, task: Omit<ScheduleTask, "id">): string => {
      steps.push({ ...step, variantId: variant.variantId, variantName: variant.name });
      tasks.push({ ...task, id: step.id });
      return step.id;
    };
    const byHand = (kind: DayStepKind, id: string, duration: number, of: Pick<PlannedStep, "pan" | "part">): string =>
      add(
        { id, kind, ...of, wait: null, hands: "all", coatMin: 0, heat: null },
        { duration: whole(duration), uses: { hands: 1 } },
      );
    const waiting = (
      kind: DayStepKind,
      id: string,
      wait: TimeRange,
      of: Pick<PlannedStep, "pan" | "part">,
      heat: FreezingHeat | null = null,
    ): string =>
      add(
        { id, kind, pan: of.pan, part: of.part, wait, hands: "none", coatMin: 0, heat },
        {
          duration: whole(wait.timeMin),
          uses:
            powerShare !== undefined && heat !== null && heat.heatKJ > 0
              ? { [POWER]: powerOf(heat.heatKJ, wait.timeMin) }
              : undefined,
        },
      );
    const link = (before: string, after: string, most?: number, least?: number): void => {
      links.push({ before, after, ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) });
    };

    const mix = byHand("mix", `${name}: mix`, minutes.mix, { pan: null, part: null });
    let previous = mix;
    for (let pan = 1; pan <= pans; pan++) {
      const one = { pan, part: null };
      const idOf = (word: string): string => `${name} ${pan}: ${word}`;
      const spread: string = byHand("spread", idOf("spread"), minutes.spread, one);
      link(previous, spread);
      previous = spread;
      const pieces = batch.pieces.pieces;
      const loads =
        variant.form === "batter"
          ? 1
          : Math.max(cooking?.loads ?? times.trays, portionsOf(workable, minutes.coatPiece * pieces));
      let before: string | null = null;
      let last = spread;
      let most: number | undefined = OUT_OF_COLD_MIN;
      if (firm !== null) {
        const frozen = waiting("freeze", idOf("freeze"), firm, one, times.heat.slab);
        link(spread, frozen, most);
        last = frozen;
        if (temper !== null && temper.timeMin > 0) {
          const out = waiting("temper", idOf("temper"), temper, one);
          link(frozen, out);
          holds.push({ resource: "freezer", amount, from: frozen, until: out });
          last = out;
        }
        const cut = byHand("cut", idOf("cut"), minutes.cut, one);
        link(last, cut, cutWithinMin ?? undefined);
        if (last === frozen) holds.push({ resource: "freezer", amount, from: frozen, until: cut });
        last = cut;
        // more than one load: the others lie in the freezer again until it is their turn
        most = loads > 1 ? undefined : firmly(workable, whole(minutes.coatPiece * pieces));
      }

      const coatMin = workable === null ? 0 : whole((minutes.coatPiece * pieces) / loads);
      const trays = traysOf(times, loads, coatMin + minutes.fillOven + minutes.emptyOven + recoverMin);
      const trayIds = Array.from({ length: trays }, (_, tray) => idOf(`freeze pieces ${tray + 1}`));
      for (let load = 0; load < loads; load++) {
        const part: readonly [number, number] | null = loads === 1 ? null : [load + 1, loads];
        const own = { pan, part };
        const tray = trayIds[Math.floor((load * trays) / loads)];
        let done = last;
        if (cooking !== null) {
          // coated and cooked in one go: the appliance comes back to its setpoint while its pieces are coated
          const filling = Math.ceil(minutes.fillOven);
          const emptying = Math.ceil(minutes.emptyOven);
          const end = coatMin + filling + cooking.timeMin + emptying;
          done = add(
            { id: idOf(`cook ${load + 1}`), kind: "cook", ...own, wait: null, hands: "ends", coatMin, heat: null },
            {
              duration: end,
              parts: [
                {
                  resource: `appliance ${cooking.applianceId}`,
                  from: Math.max(0, coatMin - Math.ceil(recoverMin)),
                  until: end,
                },
                { resource: "hands", from: 0, until: coatMin + filling },
                { resource: "hands", from: end - emptying, until: end },
              ].filter(({ from, until }) => until > from),
            },
          );
          link(done, tray, cooking.longestOutMin, Math.min(cooking.cool.timeMin, cooking.longestOutMin));
        } else if (workable !== null) {
          done = byHand("coat", idOf(`coat ${load + 1}`), coatMin, own);
          link(done, tray, Math.max(0, Math.floor(workable.earliestMin) - coatMin));
        } else link(last, tray, most);
        if (done !== last) {
          link(last, done, most);
          if (loads > 1 && load === loads - 1) holds.push({ resource: "freezer", amount, from: last, until: done });
        }
        if (before !== null && done !== last) link(before, done);
        before = done;
      }
      for (const [tray, id] of trayIds.entries()) {
        const part: readonly [number, number] | null = trays === 1 ? null : [tray + 1, trays];
        waiting("freeze pieces", id, flash, { pan, part }, shareOf(times.heat.pieces, trays));
        const packed = byHand("pack", idOf(`pack ${tray + 1}`), minutes.pack / trays, { pan, part });
        link(id, packed);
        holds.push({ resource: "freezer", amount, from: id, until: packed });
        // a batter stays in its pan until it is packed, a slab until its last pieces are coated
        if (tray === trays - 1)
          holds.push({ resource: panId, from: spread, until: variant.form === "batter" ? packed : id });
      }
    }
  }

  const away = awaySpans(places);
  const used = new Set(batches.flatMap(({ cooking }) => cooking?.applianceId ?? []));
  const panIds = new Set(batches.map(({ batch }) => batch.pan.id));
  return freezeDeep({
    steps,
    curves: batches.map(({ variant, ambient, cooking }, at) => ({
      variantId: variant.variantId,
      variantName: variant.name,
      batch: at + 1,
      ambient: ambient ?? null,
      cooked: cooking?.curves ?? null,
      hasWash: variant.formula.coating.some(({ layer }) => layer === "wash"),
    })),
    problem: {
      tasks,
      links,
      holds,
      resources: [
        { id: "hands", capacity: places.hands, less: away },
        { id: "freezer", capacity: places.freezerPlaces * stacked },
        ...(powerShare !== undefined ? [{ id: POWER, capacity: watts }] : []),
        ...kitchen.pans
          .filter(({ id }) => panIds.has(id))
          .map(({ id, count }) => ({ id: `pan ${id}`, capacity: count })),
        ...[...used].map((id) => ({ id: `appliance ${id}`, capacity: places.appliances[id] ?? 1 })),
      ],
      horizon: DAYS * DAY_MIN,
    },
  });
}

const shareOf = ({ heatKJ, iceKg }: FreezingHeat, among: number): FreezingHeat => ({
  heatKJ: heatKJ / among,
  iceKg: iceKg / among,
});

/** When no hands are there, over all days. */
function awaySpans({
  opensMin,
  closesMin,
  breaksMin,
}: SettledPlaces): { from: number; until: number; capacity: number }[] {
  return Array.from({ length: DAYS }, (_, day) => day * DAY_MIN).flatMap((midnight) =>
    [{ from: 0, until: opensMin }, ...breaksMin, { from: closesMin, until: DAY_MIN }].map(({ from, until }) => ({
      from: midnight + from,
      until: midnight + until,
      capacity: 0,
    })),
  );
}

/** What is left of the time in which pieces are workable, once they are coated (min). */
function firmly(workable: TimeRange | null, coatMin: number): number {
  return Math.max(0, Math.floor(workable?.earliestMin ?? 0) - coatMin);
}

/** Trays of a pan: as many as its pieces need, and so many that the first load on each is not too long out of the cold. */
function traysOf({ cooking, trays, variant }: BatchTimes, loads: number, byHandMin: number): number {
  if (variant.form === "batter") return trays;
  if (cooking === null) return loads;
  const room = cooking.longestOutMin - Math.min(cooking.cool.timeMin, cooking.longestOutMin);
  const loadsOnTray = 1 + Math.floor((SPAN_USED * room) / (cooking.timeMin + byHandMin));
  return Math.min(loads, Math.max(trays, Math.ceil(loads / loadsOnTray)));
}

/** Portions in which pieces are taken out and coated, so that each is coated while it is workable. */
function portionsOf(workable: TimeRange | null, coatMin: number): number {
  return workable === null ? 1 : Math.ceil(coatMin / (COAT_USED * Math.max(1, workable.earliestMin)));
}
