import type { Kitchen } from "./kitchen";

/** One thing that two kitchens hold otherwise. */
export interface KitchenDifference {
  /** kind of thing: the day is one, the pantry and the freezer's packs have a line each */
  readonly of: "pan" | "appliance" | "ingredient" | "formula" | "variant" | "trial" | "day" | "pantry" | "pack";
  /** its id; of the day its file */
  readonly id: string;
  /** which field, a path such as `mix.2.amountG`; `null` where all of it is only in one of the two */
  readonly field: string | null;
  /** `null` where it is not there */
  readonly before: string | null;
  readonly after: string | null;
}

/**
 * What two kitchens hold otherwise, thing by thing and field by field: pans, appliances, ingredients, formulas, variants,
 * trials, the day, the pantry and the packs by their ids, whatever the order of rows and files and whatever units they are written in (numbers count as the
 * same to a part in 10⁹).
 *
 * @returns in the order of the kinds, and in the earlier kitchen's order within each; what is new comes after
 */
export function kitchenDifferences({
  before,
  after,
}: {
  readonly before: Kitchen;
  readonly after: Kitchen;
}): readonly KitchenDifference[] {
  const parts = (kitchen: Kitchen): Readonly<Record<KitchenDifference["of"], ReadonlyMap<string, object>>> => ({
    pan: new Map(kitchen.pans.map((pan) => [pan.id, pan])),
    appliance: new Map(kitchen.appliances.map((appliance) => [appliance.applianceId, appliance])),
    ingredient: new Map(kitchen.ingredients.map((ingredient) => [ingredient.id, ingredient])),
    formula: new Map(kitchen.variants.map(({ formula }) => [formula.id, formula])),
    variant: new Map(
      kitchen.variants.map(({ formula, composition: _, densityKgM3: __, limit: ___, ...variant }) => [
        variant.variantId,
        { ...variant, formula: formula.id },
      ]),
    ),
    trial: new Map(kitchen.trials.map((trial) => [trial.trialId, trial])),
    day: new Map(kitchen.day === undefined ? [] : [["day.csv", kitchen.day]]),
    pantry: new Map((kitchen.pantry ?? []).map((item) => [item.ingredientId, item])),
    pack: new Map((kitchen.packs ?? []).map((pack) => [pack.packId, pack])),
  });
  const [was, is] = [parts(before), parts(after)];
  return (Object.keys(was) as KitchenDifference["of"][]).flatMap((of) => {
    const ids = [...new Set([...was[of].keys(), ...is[of].keys()])];
    return ids.flatMap((id): readonly KitchenDifference[] => {
      const [one, other] = [was[of].get(id), is[of].get(id)];
      if (one === undefined) return [{ of, id, field: null, before: null, after: "there" }];
      if (other === undefined) return [{ of, id, field: null, before: "there", after: null }];
      return fieldDifferences(one, other).map((difference) => ({ of, id, ...difference }));
    });
  });
}

function fieldDifferences(
  one: object,
  other: object,
): readonly Pick<KitchenDifference, "field" | "before" | "after">[] {
  const [was, is] = [leavesOf(one), leavesOf(other)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((field) => {
    const [before, after] = [was.get(field) ?? null, is.get(field) ?? null];
    return isSame(before, after) ? [] : [{ field, before: written(before), after: written(after) }];
  });
}

type Leaf = string | number | boolean | null;

/** The values of a record that are no records themselves, by their path; lists of numbers or texts stay whole. */
function leavesOf(record: object, path = ""): ReadonlyMap<string, Leaf> {
  const leaves = new Map<string, Leaf>();
  for (const [key, value] of Object.entries(record)) {
    const at = path === "" ? key : `${path}.${key}`;
    if (Array.isArray(value) && value.every((one) => typeof one !== "object")) {
      if (value.length > 0) leaves.set(at, value.map(String).join("; "));
    } else if (typeof value === "object" && value !== null)
      for (const [inner, leaf] of leavesOf(value, at)) leaves.set(inner, leaf);
    else if (value !== undefined) leaves.set(at, value as Leaf);
  }
  return leaves;
}

function isSame(one: Leaf, other: Leaf): boolean {
  if (typeof one !== "number" || typeof other !== "number") return one === other;
  return Object.is(one, other) || Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
}

function written(leaf: Leaf): string | null {
  return leaf === null ? null : typeof leaf === "number" ? String(Number(leaf.toPrecision(7))) : String(leaf);
}
