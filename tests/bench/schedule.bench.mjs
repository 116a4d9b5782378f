/**
 * Schedules. day.plan.ms: three products of the demo from the heat model to the list; day.replan.ms: the rest of that day with a
 * slower freezer. day.random: days drawn at random, each held against checkSchedule, which shares no code with the search. day.j30optimal: how many of 44 published instances (tests/published/psplib) come out at their proven optimum,
 * 10,000 orders each, which takes less than a second. No peer in the registry solves the same problem; the optimum is the peer.
 */
import { readFileSync } from "node:fs";
import { batchDay, replanDay, settlePlaces } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { checkSchedule, scheduleTasks } from "slabwright/plan";
import { seededRandom } from "slabwright/statistics";
import { batchOnPan } from "slabwright/trials";
import { dayProblem } from "../../kernel-lib/library/dist/advice/day/day-problem.js";

const instances = JSON.parse(readFileSync(new URL("../published/psplib/j30.json", import.meta.url), "utf8"));

function problemOf({ capacity, duration, use, followers }) {
  return {
    tasks: duration.map((lasts, at) => ({
      id: String(at + 1),
      duration: lasts,
      uses: Object.fromEntries(use.map((row, resource) => [`R${resource + 1}`, row[at]])),
    })),
    resources: capacity.map((most, at) => ({ id: `R${at + 1}`, capacity: most })),
    links: followers.flatMap((list, at) => list.map((after) => ({ before: String(at + 1), after: String(after) }))),
  };
}

const DAYS = 10_000;

/** Days of one or two products with times as they come; how many found no plan, how many broke their problem. */
function randomDays(kitchen) {
  const random = seededRandom(1);
  const between = (low, high) => low + random.integer(high - low + 1);
  const around = (timeMin) => ({
    timeMin,
    earliestMin: Math.floor(0.7 * timeMin),
    latestMin: Math.ceil(1.7 * timeMin),
  });
  const batchOf = () => {
    const variant = kitchen.variants[random.integer(kitchen.variants.length)];
    const pan = kitchen.pans.find(({ id }) => id === variant.panId);
    const slab = variant.form !== "batter";
    return {
      variant,
      batch: batchOnPan({ kitchen, variant, pan, batchG: variant.batchG }),
      pans: between(1, 2),
      firm: slab ? around(between(30, 300)) : null,
      temper: slab && random.uniform() < 0.3 ? around(between(5, 40)) : null,
      cutWithinMin: slab ? between(12, 120) : null,
      workable: slab ? around(between(20, 90)) : null,
      cooking:
        random.uniform() < 0.5
          ? null
          : {
              applianceId: "small-basket",
              applianceName: "small basket",
              timeMin: between(3, 25),
              piecesPerLoad: 12,
              loads: between(1, 5),
              source: "as given",
              cool: around(between(10, 60)),
              longestOutMin: 90,
            },
      flash: around(between(40, 300)),
      trays: slab ? between(1, 2) : 1,
      heat: { slab: { heatKJ: between(100, 600), iceKg: 0.7 }, pieces: { heatKJ: between(100, 600), iceKg: 0.3 } },
      ambient: null,
      isStacked: random.uniform() < 0.5,
      notes: [],
    };
  };
  let [unplanned, broken] = [0, 0];
  for (let day = 0; day < DAYS; day++) {
    const batches = Array.from({ length: between(1, 2) }, batchOf);
    const places = settlePlaces({ freezerPlaces: between(3, 8), hands: between(1, 3) }, "bench");
    const { problem, steps } = dayProblem({
      kitchen,
      places,
      batches,
      stacked: 3,
      powerShare: day % 2 === 1 ? 1 : undefined,
    });
    try {
      const schedule = scheduleTasks({ ...problem, tries: 6, first: steps.map(({ id }) => id) });
      if (checkSchedule(problem, schedule.tasks).length > 0) broken++;
    } catch (error) {
      if (!(error instanceof RangeError && error.message.includes("must fit into"))) throw error;
      unplanned++;
    }
  }
  return { unplanned, broken };
}

const timed = (work) => {
  const begun = performance.now();
  const result = work();
  return { result, ms: performance.now() - begun };
};

export function rows() {
  let optimal = 0;
  let longestMs = 0;
  for (const one of instances) {
    const problem = problemOf(one);
    const begun = performance.now();
    const schedule = scheduleTasks({ ...problem, tries: 10_000 });
    longestMs = Math.max(longestMs, performance.now() - begun);
    if (checkSchedule(problem, schedule.tasks).length > 0) throw new Error(`${one.instance} breaks its problem`);
    if (schedule.length === one.optimum) optimal++;
  }
  const kitchen = loadKitchen();
  const batches = kitchen.variants.slice(0, 3).map(({ variantId }) => ({ variantId }));
  const plan = timed(() => batchDay({ kitchen, batches, places: { freezerPlaces: 6 } }));
  const again = timed(() => replanDay({ plan: plan.result, now: plan.result.startMin + 120, freezerSlower: 1.33 }));
  const { unplanned, broken } = randomDays(kitchen);
  const alone = { peer: null, peerValue: null, ratio: null };
  return [
    {
      name: "day.plan.ms",
      value: plan.ms,
      unit: "ms",
      ...alone,
      note: `${plan.result.steps.length} steps, heat model included`,
    },
    { name: "day.replan.ms", value: again.ms, unit: "ms", ...alone, note: "the freezer a third slower" },
    {
      name: "day.random.broken",
      value: broken,
      unit: "days",
      ...alone,
      note: `of ${DAYS} drawn days; ${unplanned} found no plan in six orders, and say so`,
    },
    {
      name: "day.j30optimal",
      value: optimal,
      unit: "instances",
      peer: "proven optima",
      peerValue: instances.length,
      ratio: optimal / instances.length,
      note: `of ${instances.length}, of 40 of 48 classes; 10,000 orders each`,
    },
    {
      name: "day.j30longest",
      value: longestMs,
      unit: "ms",
      peer: null,
      peerValue: null,
      ratio: null,
      note: "the slowest of them",
    },
  ];
}
