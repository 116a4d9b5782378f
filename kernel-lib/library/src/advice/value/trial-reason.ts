import { listed } from "../../check/slip";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { thicknessText } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { THICKNESS_RATIO } from "../card/card-evidence";
import { looksText } from "../trial/plan-words";
import { type EvidenceNeeds, ratioWith } from "./evidence-needs";
import type { ForeseenTrial } from "./trial-values";

/** What `trialReason` works from. */
export interface TrialReasonOptions {
  readonly trial: ForeseenTrial;
  readonly units: KitchenUnits;
  readonly needs: EvidenceNeeds;
  /** gain in success from what it tells of the core, crispness, browning and drying alone */
  readonly parts: readonly number[];
}

/** A part counts beside the greatest from this share of it on; our judgement. */
const COUNTS = 0.5;
/** A gain below this is none [-]. */
const NONE = 2e-4;
/** A chance from which a reading is to be expected. */
const LIKELY = 0.5;

/** Why to run a trial. */
export interface TrialReason {
  /** the trial in one line, and why */
  readonly reason: string;
  /** `"it settles when the core is safe"` */
  readonly why: string;
}

/** What a trial should settle: by what it moves, and by what a card still asks for. */
export function trialReason({ trial, units, needs, parts }: TrialReasonOptions): TrialReason {
  const { slab, setting, timeMin, looksMin, probe } = trial;
  const looks = looksMin.length > 1 ? `look at ${looksText(looksMin)}` : `out at ${timeMin} min`;
  const where = `${massText(slab.batchG, units)} on the ${slab.panName}, ${thicknessText(setting.thicknessMm, units)}, ${settingText(setting.setpointC, units)}, ${looks}${probe ? "" : ", no probe"}`;
  const why = [settlesText(parts), ...servesText(trial, needs)].join(", and ");
  return { reason: `${where}; ${why}.`, why };
}

function settlesText(parts: readonly number[]): string {
  const most = Math.max(parts[0], parts[1], parts[2], parts[3]);
  if (most < NONE) return "it would hardly move the decision";
  const [core, crisp, brown, dry] = parts.map((part) => part >= COUNTS * most);
  const late = brown && dry ? "too brown or too dry" : brown ? "too brown" : "too dry";
  const settles = [
    ...(core && crisp ? ["whether the core or the crust is late"] : []),
    ...(core && !crisp ? ["when the core is safe"] : []),
    ...(crisp && !core ? ["when it turns crisp"] : []),
    ...(brown || dry ? [`when it gets ${late}`] : []),
  ];
  return `it settles ${settles.join(", and ")}`;
}

/** What the trial should bring of what the log still lacks. */
function servesText({ setting, readings, reaches }: ForeseenTrial, needs: EvidenceNeeds): string[] {
  const { climbing, done, soft, crisp } = readings.chance;
  const brings = [
    ...(needs.outside && reaches ? ["this setting inside what was tried"] : []),
    ...(needs.oneThicknessMm !== null && ratioWith(needs.oneThicknessMm, setting.thicknessMm) >= THICKNESS_RATIO
      ? ["a second thickness"]
      : []),
    ...(needs.climbing > 0 && climbing >= LIKELY ? ["a core read while it climbs"] : []),
    ...(needs.done > 0 && done >= LIKELY ? ["a core at its limit"] : []),
    ...(needs.soft && soft >= LIKELY ? ["scores while it is soft"] : []),
    ...(needs.crisp && crisp >= LIKELY ? ["scores when it is crisp"] : []),
  ];
  return brings.length === 0 ? [] : [`it brings ${listed(brings)}`];
}
