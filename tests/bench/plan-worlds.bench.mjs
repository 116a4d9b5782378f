/**
 * Does the next trial save trials? 16 simulated kitchens of `tests/worlds`, 6 trials each, under `nextTrial` and under other plans: five to
 * ten minutes. `node tests/worlds/plan/run.mjs 40 6` runs more of them, and is what DEVELOPERS.md tells.
 */
import { withModule } from "../worlds/load.mjs";

export async function rows() {
  const measured = await withModule("plan/plan-ways.ts", ({ planWays, planRows }) =>
    planRows(planWays({ kitchens: 16, trials: 6 })),
  );
  return measured.map((row) => ({ ...row, peer: null, peerValue: null, ratio: null }));
}
