import { z } from "zod";
import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { idSchema } from "../../check/id-schema";
import { PLAN_NAME, type TrialPlan } from "./trial-plan";

const id = idSchema("an id of letters, digits, points and dashes");
const above = z.number("a number above 0").positive("a number above 0").finite();
const whole = z.int("a whole number from 1").min(1, "a whole number from 1");

const RunSchema = z.strictObject({
  trialId: z.string("a trial's name").min(1).max(300),
  variantId: id,
  panId: id,
  applianceId: id,
  batchG: above,
  setpointC: z.number("°C").min(100).max(290),
  session: whole,
  run: whole,
  thicknessMm: above.optional(),
  loadFraction: above.max(1.2).optional(),
  looksMin: z.array(above).max(60).optional(),
  timeMin: above.optional(),
  purpose: z.string().max(2000).optional(),
});

const PlanSchema = z.strictObject({
  kind: z.literal("trial plan"),
  name: z.string().regex(PLAN_NAME, "up to 60 letters, digits, points and dashes"),
  madeOn: z.string().regex(/^\d{4}-\d\d-\d\d$/, "a day such as 2026-03-14"),
  seed: z.int().min(0).max(0xffffffff).nullable(),
  trials: z.array(RunSchema).min(1, "at least one trial").max(1000, "at most 1000 trials"),
  loggedBefore: z.array(z.string()).max(10_000),
});

/** A plan as the text of a file. */
export function planText(plan: TrialPlan): string {
  return `${JSON.stringify(PlanSchema.parse(plan), null, 2)}\n`;
}

/**
 * Reads a plan back, every number as it was.
 *
 * @param file as an error names it
 * @throws one sentence where the text is no plan
 */
export function readPlan(text: string, file: string): TrialPlan {
  const where = `readPlan: ${file}`;
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return fail(where, "must be JSON, as savePlan writes it", (error as Error).message);
  }
  const read = PlanSchema.safeParse(json);
  if (read.success) return freezeDeep(read.data as TrialPlan);
  const [{ path, message }] = read.error.issues;
  return fail(
    where,
    `must be a plan as savePlan writes it: ${path.length === 0 ? "the whole" : path.join(".")}`,
    message,
  );
}
