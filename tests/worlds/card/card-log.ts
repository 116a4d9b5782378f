import { seededRandom } from "slabwright/statistics";
import { minuteOf } from "../plan/course-emulator";
import { type AskedTrial, runTrial, TRIALS_A_MORNING } from "../plan/run-trial";
import { limitOf } from "../world";
import type { LoggedTrial } from "../world-kitchen";
import type { CardKitchen } from "./card-kitchen";

type Way = "crisp" | "early" | "late";

const half = (value: number): number => Math.round(2 * value) / 2;

/** The log that a kitchen keeps: trials until crisp, taken out early for the core, left in for the browning. */
export function cardLog({ plan, setting, habits }: CardKitchen): readonly LoggedTrial[] {
  const random = seededRandom(31 * plan.seed + 5);
  const { world, emulator } = plan;
  const { levels } = emulator.courses;
  const { limitC, holdS } = limitOf(world.product);
  const pick = <T>(of: readonly T[]): T => of[random.integer(of.length)];
  const oneThickness = !habits.tidy && random.uniform() < 0.3;
  const logged: LoggedTrial[] = [];
  const kept: LoggedTrial[] = [];
  let thicker = 1;
  for (let at = 0; at < habits.trials; at++) {
    const morning = Math.floor(at / TRIALS_A_MORNING);
    if (habits.tidy) thicker = [1, 1.2, 0.83][morning % 3];
    else if (!oneThickness && random.uniform() < 0.5) thicker = Math.exp(0.35 * (random.uniform() - 0.5));
    const other = random.uniform() < 0.25;
    const place = {
      thicknessMm: thicker * setting.thicknessMm,
      setpointC: setting.setpointC + (other ? pick([-12, 12]) : 0),
      loadFraction: Math.min(0.95, setting.loadFraction + (random.uniform() < 0.15 ? 0.15 : 0)),
    };
    const minutes = emulator.minutesAt({ ...place, coefficient: 1, coat: 1 });
    // cooks know about how long, not how long
    const guess = Math.exp(0.1 * random.normal());
    const guessCrisp = guess * minuteOf(levels.dryMm, minutes.dryMm, world.crispMm);
    const guessCore = guess * (minuteOf(levels.coreC, minutes.coreC, limitC) + holdS / 60);
    const way = habits.tidy
      ? (["crisp", "early", "late", "crisp", "early", "crisp"] as const)[at % 6]
      : pick<Way>(["crisp", "crisp", "crisp", "late", "early"]);
    const ask: AskedTrial = {
      ...place,
      timeMin: half(guessCore * (0.55 + 0.4 * random.uniform())),
      looksMin: [],
      probe: habits.tidy || random.uniform() < 0.7,
      probedThicker: habits.tidy ? undefined : random.normal(),
    };
    const trial = runTrial(
      plan,
      logged,
      way === "early" ? ask : untilCrisp(plan, logged, ask, guessCrisp, way, random.uniform()),
    );
    logged.push(trial);
    kept.push(habits.tidy ? trial : carelessly(trial, random.normal()));
  }
  return kept;
}

/** Looks every minute or two from well before it should be crisp, and takes out soon after it is, or well after. */
function untilCrisp(
  plan: CardKitchen["plan"],
  logged: readonly LoggedTrial[],
  ask: AskedTrial,
  guessMin: number,
  way: Way,
  chance: number,
): AskedTrial {
  const every = guessMin > 14 ? 2 : guessMin > 9 ? 1.5 : 1;
  const first = half(guessMin * (0.65 + 0.15 * chance));
  const looksMin = Array.from({ length: 40 }, (_, at) => first + at * every).filter((look) => look < 2.5 * guessMin);
  const last = looksMin[looksMin.length - 1];
  const watched = runTrial(plan, logged, { ...ask, looksMin, timeMin: last + every });
  const crispMin = watched.crispMin ?? last;
  const timeMin = way === "late" ? half(crispMin * (1.25 + 0.3 * chance)) : crispMin + half(1.4 * chance);
  return { ...ask, timeMin, looksMin: looksMin.filter((look) => look <= crispMin && look < timeMin) };
}

/** As a hurried cook writes it down: one or two probes of the slab, whole degrees, a core read beside the coldest point. */
function carelessly(trial: LoggedTrial, off: number): LoggedTrial {
  const warm = 1.5 * Math.abs(off);
  const read = (core: number | null): number | null => (core === null ? null : Math.round(Math.min(99, core + warm)));
  return {
    ...trial,
    probesMm: trial.probesMm.slice(0, 2),
    outCoreC: read(trial.outCoreC),
    restedCoreC: read(trial.restedCoreC),
  };
}
