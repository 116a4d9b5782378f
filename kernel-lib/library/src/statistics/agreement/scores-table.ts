import { fail } from "../../check/check";

/** Checks a table of scores, one row a thing and one column a judge: at least two of each, every cell a finite number. */
export function checkScores(scores: readonly (readonly number[])[], where: string): void {
  if (scores.length < 2)
    fail(`${where}: scores`, "must have at least two rows, one a thing that was scored", scores.length);
  const judges = scores[0].length;
  if (judges < 2) fail(`${where}: scores`, "must have at least two columns, one a judge", judges);
  scores.forEach((row, at) => {
    if (row.length !== judges) fail(`${where}: row ${at}`, `must have ${judges} scores as the first has`, row.length);
    for (const score of row)
      if (!Number.isFinite(score)) fail(`${where}: row ${at}`, "must hold finite numbers", score);
  });
}
