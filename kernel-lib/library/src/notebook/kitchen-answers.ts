import { answers } from "../advice/answer/answers";
import { answerTable } from "../views/advice/answer-table";
import type { Table } from "../views/table/table";
import { loadKitchen } from "./load-kitchen";

/**
 * The settings of a kitchen from its folder, a row a product: `answerTable` for whoever has no kitchen in hand.
 *
 * @param folder the kitchen's folder, which must have no slips
 *
 * @example
 * kitchenAnswers("data").rows.length; // → 5
 */
export function kitchenAnswers(folder: string): Table {
  return answerTable(answers({ kitchen: loadKitchen(folder) }));
}
