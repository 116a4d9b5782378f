/** A way into the library. */
export interface Door {
  /** its folder; the cook's door has none */
  readonly room: string;
  readonly purpose: string;
}

/** Every door of the library and what it is for, in the order of the reference. */
export const DOORS: readonly Door[] = [
  { room: "", purpose: "What a cook's notebook needs." },
  { room: "advice", purpose: "What to do with a kitchen's batch: answers, cards, trials, the batch day, cost." },
  { room: "trials", purpose: "The trial, the kitchen, their files." },
  { room: "notebook", purpose: "Files and the kernel: load, log, show, share." },
  { room: "crisp", purpose: "Core, crust and browning of a piece, their constants from a log, the crisp window." },
  { room: "heat", purpose: "Heating and freezing of slabs and pieces." },
  { room: "safety", purpose: "Core limits, lethality, cooling, storage." },
  { room: "yield", purpose: "Pickup, coating and loss." },
  { room: "macros", purpose: "What is in a piece, and what its label says." },
  { room: "food", purpose: "Ingredients, formulas, thermal properties." },
  { room: "pan", purpose: "Pans, slabs, cuts and pieces." },
  { room: "views", purpose: "Every figure and table, as plain data." },
  { room: "plan", purpose: "Which runs to make, and what to do when." },
  { room: "fit", purpose: "Curves and their doubt." },
  { room: "statistics", purpose: "Distributions, agreement, uncertainty, linear algebra." },
  { room: "units", purpose: "Units at the edge, and the words for a person." },
];

/** The name by which a door is imported. */
export function doorName(room: string): string {
  return room === "" ? "slabwright" : `slabwright/${room}`;
}
