import { element } from "../element";
import { pointed, type TasterRow } from "./draft";
import type { Said } from "./field";

/** The scores: a row a taster. */
export interface TastersView {
  readonly element: HTMLElement;
  readonly say: (said: Said) => void;
}

const MOST_TASTERS = 40;
const NOBODY: TasterRow = { initials: "", crisp: "", brown: "" };

/** Rows of initials and two scores; a new row comes as the last is filled. */
export function tastersView(options: {
  readonly rows: readonly TasterRow[];
  readonly onInput: (rows: readonly TasterRow[]) => void;
}): TastersView {
  const { rows: given, onInput } = options;
  const body = element("div", { className: "tasters" });
  const said = element("div", { className: "said" });
  const rows: TasterRow[] = [];
  const addRow = (row: TasterRow): void => {
    const at = rows.push(row) - 1;
    const box = (what: keyof TasterRow, words: string): HTMLInputElement => {
      const made = element("input", {
        type: "text",
        value: row[what],
        autocomplete: "off",
        ariaLabel: `taster ${at + 1}: ${words}`,
        inputMode: what === "initials" ? "text" : "decimal",
      });
      if (what === "initials") made.autocapitalize = "characters";
      made.dataset.score = what;
      made.addEventListener("input", () => {
        // these part cells from each other
        if (what === "initials") made.value = made.value.replace(/[:;,/\s]/g, "");
        rows[at] = { ...rows[at], [what]: made.value };
        if (at === rows.length - 1 && made.value !== "" && rows.length < MOST_TASTERS) addRow(NOBODY);
        onInput(rows);
      });
      if (what !== "initials")
        made.addEventListener("change", () => {
          made.value = pointed(made.value);
        });
      return made;
    };
    body.append(
      box("initials", "initials"),
      box("crisp", "crisp, 0 soft to 9 as crisp as can be"),
      box("brown", "brown, 0 pale to 9 burnt"),
    );
  };
  for (const row of given) addRow(row);
  if (rows.length < MOST_TASTERS) addRow(NOBODY);
  const heads = ["initials", "crisp: 6 is crisp", "brown: 7 is too brown"].map((words) =>
    element("span", { className: "head" }, words),
  );
  body.prepend(...heads);
  const made = element("fieldset", { className: "field" }, element("legend", {}, "scores"), body, said);
  return {
    element: made,
    say: ({ problems, notices }) =>
      said.replaceChildren(
        ...problems.map((sentence) => element("p", { className: "problem" }, sentence)),
        ...notices.map((sentence) => element("p", { className: "to-look-at" }, sentence)),
      ),
  };
}
