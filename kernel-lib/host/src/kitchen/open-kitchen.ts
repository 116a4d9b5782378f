import { readFile, stat } from "node:fs/promises";
import { doorNames } from "../kernel/door-names";
import { type AskedKitchen, askedKitchen } from "./asked-kitchen";
import { docstringExamples } from "./docstring-examples";
import { exampleCell } from "./example-cell";
import type { OfferedExample } from "./kitchen-answer";

/** Where a kitchen lies, and what is made of it. */
export interface KitchenPlace {
  readonly name: string;
  readonly folder: string;
  /** the report of its last run, which need not be there */
  readonly report: string;
  /** the folder of its own notebooks, which need not be there; null or left out where they are the project's */
  readonly notebooks?: string | null;
  /** the folder whose library is asked */
  readonly project: string;
}

/** The kitchen that a server has open. */
export interface OpenKitchen {
  readonly place: KitchenPlace;
  /** when the report was written; null when there is none */
  readonly reportTime: () => Promise<Date | null>;
  readonly reportHtml: () => Promise<string>;
  /** what the pages ask for by name; null for a name that nothing answers to */
  readonly answer: (name: string) => Promise<unknown> | null;
  /** what the form for one trial asks for */
  readonly trials: Pick<AskedKitchen, "checkDraft" | "logDraft" | "undo">;
}

/** Opens a kitchen for the pages; nothing is read before they ask. */
export function openKitchen(place: KitchenPlace): OpenKitchen {
  const asked = askedKitchen(place);
  const answers = new Map<string, () => Promise<unknown>>([
    ["glance", asked.glance],
    ["answers", asked.answers],
    ["next", asked.next],
    ["examples", examples],
    ["form", asked.form],
  ]);
  async function examples(): Promise<readonly OfferedExample[]> {
    const { exampleIds: ids } = await asked.glance();
    const doors = doorNames(place.project);
    return doors.slice(0, 1).flatMap((door) =>
      docstringExamples(door).map((example) => {
        const { name, summary, lines } = example;
        return { name, summary, lines, code: exampleCell({ example, doors, ids }) };
      }),
    );
  }
  return {
    place,
    trials: asked,
    reportTime: () =>
      stat(place.report).then(
        ({ mtime }) => mtime,
        () => null,
      ),
    reportHtml: () => readFile(place.report, "utf8"),
    answer: (name) => answers.get(name)?.() ?? null,
  };
}
