/**
 * In CI one run in five draws its property cases anew, so that other cases are tried now and then; the seed is printed and
 * draws the same cases again. Everywhere else they are the same each time (`property-seed.ts`).
 */
export default function drawPropertySeed(): void {
  if (!process.env.CI || process.env.PROPERTY_SEED || Math.random() > 0.2) return;
  process.env.PROPERTY_SEED = String(Math.floor(Math.random() * 2 ** 31));
  console.log(`New property cases: PROPERTY_SEED=${process.env.PROPERTY_SEED} draws them again.`);
}
