import { trialOutcome } from "../../advice/trial/trial-outcome";
import { tooLittle } from "../../check/too-little";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/** What `photosTable` shows. */
export interface PhotosTableOptions {
  readonly kitchen: Kitchen;
  /** files that lie in the kitchen's folder `photos`, as `kitchenPhotos` gives them */
  readonly present: readonly string[];
}

/**
 * The pictures that the log names, by product, thickness and time, so that those of like trials stand together; only files
 * that lie in the kitchen's folder `photos`. Names that lie nowhere, and files that no trial names, stand in the notes.
 *
 * @throws too little, in words, where no trial names a picture
 */
export function photosTable({ kitchen, present }: PhotosTableOptions): Table {
  const named = kitchen.trials.flatMap((trial) => trial.photos.map((file) => ({ trial, file })));
  if (named.length === 0)
    tooLittle(
      "photosTable",
      "No trial names a picture: put it into the folder photos, and log its file name under photo.",
    );
  const there = new Set(present);
  const order = kitchen.variants.map(({ variantId }) => variantId);
  const shown = named
    .filter(({ file }) => there.has(file))
    .sort(
      ({ trial: a }, { trial: b }) =>
        order.indexOf(a.variantId) - order.indexOf(b.variantId) ||
        a.thicknessMm - b.thicknessMm ||
        a.timeMin - b.timeMin,
    );
  const missing = [...new Set(named.map(({ file }) => file))].filter((file) => !there.has(file));
  const known = new Set(named.map(({ file }) => file));
  const unnamed = present.filter((file) => !known.has(file));
  const table: Table = {
    kind: "table",
    title: "Pictures by thickness and time",
    columns: [
      { heading: "picture" },
      { heading: "product" },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: "time (min)", decimals: 1 },
      { heading: "setpoint (°C)", decimals: 0 },
      { heading: "outcome" },
      { heading: "trial" },
    ],
    rows: shown.map(({ trial, file }) => [
      `photos/${file}`,
      variantOf(kitchen, trial.variantId).name,
      trial.thicknessMm,
      trial.timeMin,
      trial.setpointC,
      trialOutcome({ kitchen, trial }),
      trial.trialId,
    ]),
    notes: [
      ...(missing.length === 0 ? [] : [`Named in the log, but not in the folder photos: ${missing.join(", ")}.`]),
      ...(unnamed.length === 0 ? [] : [`In the folder photos, but named by no trial: ${unnamed.join(", ")}.`]),
    ],
  };
  return tableIn(table, kitchen.units);
}
