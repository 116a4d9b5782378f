import type { KitchenUnits } from "./unit-table";

/** A change of setpoint worth trying, which every dial has: 10 °C, or 20 °F (K). Common practice, no source. */
export const SETPOINT_STEP_K: Readonly<Record<KitchenUnits, number>> = { metric: 10, us: 100 / 9 };
