import { freezeDeep } from "../../check/freeze-deep";
import { type CoolingCheck, coolingCheck } from "../../safety/cold/cooling-check";
import { type HoldingCheck, holdingCheck } from "../../safety/cold/holding-check";
import { largestOf } from "../../statistics/extremes";
import type { CoreCurve } from "./batch-times";
import type { BatchCurves } from "./day-problem";
import type { DayStep } from "./day-step";

/** A batch of a day against the limits of cooling and of time out of the cold. */
export interface DayLimits {
  readonly variantId: string;
  readonly variantName: string;
  /** of a hot core, at the load that waits longest; null where nothing is cooked */
  readonly cooked: CoolingCheck | null;
  /** of a mix made from ingredients at room temperature, on its pan; null for a batter */
  readonly ambient: CoolingCheck | null;
  /** the pan and the portion that are out of the cold longest */
  readonly pieces: HoldingCheck;
  /** the wash on the counter; null without one */
  readonly wash: HoldingCheck | null;
  /** the core that `cooked` or else `ambient` is about, for a figure: minutes and °C */
  readonly curve: CoreCurve | null;
}

const DAY_MIN = 1440;

/**
 * Every batch of a planned day against the limits: cooked cores by the two-stage limit and mixes from warm ingredients by 4 h
 * (`coolingCheck`), in air as slow as its doubt allows and with the waits of the plan; time out of the cold while it is spread,
 * cut and coated, and the wash on the counter (`holdingCheck`).
 */
export function dayLimits(steps: readonly DayStep[], curves: readonly BatchCurves[]): readonly DayLimits[] {
  return freezeDeep(
    curves.map(({ batch, variantId, variantName, ambient, cooked, hasWash }): DayLimits => {
      const own = steps.filter(({ id }) => id.startsWith(`${batch} `));
      const of = (kind: DayStep["kind"]): readonly DayStep[] => own.filter((step) => step.kind === kind);
      const [mix] = of("mix");
      const mixMin = mix.endMin - mix.startMin;
      const pans = [...new Set(own.flatMap(({ pan }) => pan ?? []))];
      const loads = [...of("coat"), ...of("cook")];
      const trayOf = ({ pan, part }: DayStep): DayStep => {
        const trays = of("freeze pieces")
          .filter((one) => one.pan === pan)
          .sort((a, b) => (a.part?.[0] ?? 1) - (b.part?.[0] ?? 1));
        const [which, count] = part ?? [1, 1];
        return trays[Math.floor(((which - 1) * trays.length) / count)];
      };
      const spreadMin = (pan: number): number => {
        const [spread, next] = ["spread", ambient === null ? "cook" : "freeze"].map((kind) =>
          own.find((step) => step.pan === pan && step.kind === kind),
        );
        const end = next ?? own.find((step) => step.pan === pan && step.kind === "freeze pieces");
        return mixMin + ((end as DayStep).startMin - (spread as DayStep).startMin);
      };
      const cutMin = (pan: number): readonly [number, number] => {
        const cut = own.find((step) => step.pan === pan && step.kind === "cut");
        if (cut === undefined) return [0, 0];
        const temper = own.find((step) => step.pan === pan && step.kind === "temper");
        const all = cut.endMin - (temper?.startMin ?? cut.startMin);
        return [all, all + Math.max(0, (temper?.readyMin?.[1] ?? 0) - (temper?.endMin ?? 0))];
      };
      const coatMin = (pan: number): number =>
        largestOf([
          0,
          ...loads
            .filter((load) => load.pan === pan)
            .map((load) => (load.kind === "cook" ? load.coatMin : trayOf(load).startMin - load.startMin)),
        ]);
      const worst = pans.reduce((one, other) => {
        const sum = (pan: number): number => spreadMin(pan) + cutMin(pan)[1] + coatMin(pan);
        return sum(other) > sum(one) ? other : one;
      });
      const spans = [
        { what: "mixed and spread", minutes: [spreadMin(worst), spreadMin(worst)] as const },
        ...(cutMin(worst)[1] > 0 ? [{ what: "tempered and cut", minutes: cutMin(worst) }] : []),
        ...(coatMin(worst) > 0 ? [{ what: "coated", minutes: [coatMin(worst), coatMin(worst)] as const }] : []),
      ];
      const washMin = washOf(loads);
      const outMin = largestOf([0, ...of("cook").map((load) => trayOf(load).startMin - load.endMin)]);
      const hot = cooked === null ? null : joined(cooked.room, cooked.freezer, outMin);
      const warmMin = largestOf(pans.map(spreadMin));
      const warm =
        ambient === null
          ? null
          : {
              timeMin: [0, ...ambient.timeMin.map((min) => min + Math.max(1, warmMin))],
              coreC: [ambient.coreC[0], ...ambient.coreC],
            };
      return {
        variantId,
        variantName,
        cooked: hot === null ? null : coolingCheck({ timesMin: hot.timeMin, temperaturesC: hot.coreC }),
        ambient:
          warm === null ? null : coolingCheck({ timesMin: warm.timeMin, temperaturesC: warm.coreC, from: "ambient" }),
        pieces: holdingCheck({ what: variantName, spans }),
        wash:
          hasWash && washMin !== null
            ? holdingCheck({
                what: `wash of the ${variantName}`,
                spans: [{ what: "from the first piece to the last of a day", minutes: [washMin, washMin] }],
              })
            : null,
        curve: hot ?? warm,
      };
    }),
  );
}

/** From the first piece that is coated to the last one, on the day on which that is longest (min). */
function washOf(loads: readonly DayStep[]): number | null {
  const days = new Map<number, [number, number]>();
  for (const { kind, coatMin, startMin, endMin } of loads) {
    const until = kind === "cook" ? startMin + coatMin : endMin;
    const day = Math.floor(startMin / DAY_MIN);
    const [from, last] = days.get(day) ?? [startMin, until];
    days.set(day, [Math.min(from, startMin), Math.max(last, until)]);
  }
  return days.size === 0 ? null : largestOf([...days.values()].map(([from, until]) => until - from));
}

/** A core that cools in the room for so long and then in the freezer; warmer than the freezer's curve begins, it is taken to go on as in the room. */
function joined(room: CoreCurve, freezer: CoreCurve, outMin: number): CoreCurve {
  const stay = room.timeMin.filter((min, at) => min <= outMin || room.coreC[at] > freezer.coreC[0]).length;
  const last = room.coreC[stay - 1];
  const from = freezer.coreC.findIndex((celsius) => celsius < last);
  if (from === -1) return { timeMin: room.timeMin.slice(0, stay), coreC: room.coreC.slice(0, stay) };
  // a minute for the way where the freezer's curve begins colder
  const begun = from === 0 ? freezer.timeMin[0] - 1 : freezer.timeMin[from - 1];
  // beyond the end of the room's curve it is taken to get no colder
  const stays = outMin > room.timeMin[stay - 1] && stay === room.timeMin.length ? [outMin] : [];
  const at = stays[0] ?? room.timeMin[stay - 1];
  return {
    timeMin: [...room.timeMin.slice(0, stay), ...stays, ...freezer.timeMin.slice(from).map((min) => at + min - begun)],
    coreC: [...room.coreC.slice(0, stay), ...stays.map(() => last), ...freezer.coreC.slice(from)],
  };
}
