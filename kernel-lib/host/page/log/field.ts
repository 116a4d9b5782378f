import type { FormField, FormVariant, TrialForm } from "../../src/kitchen/kitchen-answer";
import { element } from "../element";
import { isNumeric, pointed } from "./draft";

/** What is said beside a field. */
export interface Said {
  readonly problems: readonly string[];
  readonly notices: readonly string[];
}

/** A field on the page. */
export interface FieldView {
  readonly element: HTMLElement;
  /** puts values into its boxes, unless they stand there */
  readonly set: (values: readonly string[]) => void;
  readonly say: (said: Said) => void;
}

type Box = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

let count = 0;

/** How many boxes a field of several readings begins with: five probes, as the corners and the middle. */
const BOXES: Readonly<Record<string, number>> = { probesMm: 5 };
const MOST_BOXES = 40;

/** One field: a label, its box or boxes, and what is said of it. A field of several readings grows a box as the last is filled. */
export function fieldView(options: {
  readonly field: FormField;
  readonly form: TrialForm;
  readonly hint: string;
  readonly onInput: (values: readonly string[]) => void;
}): FieldView {
  const { field, form, hint, onInput } = options;
  const id = `field-${++count}`;
  const several = field.many && isNumeric(field.holds);
  const boxes = element("div", { className: "boxes" });
  const said = element("div", { className: "said", id: `${id}-said` });
  const values = (): string[] => all().map((box) => box.value);
  const all = (): Box[] => [...boxes.querySelectorAll<Box>("input, select, textarea")];
  const addBox = (value: string): void => {
    const at = boxes.childElementCount;
    const box = boxOf(field, form);
    box.id = at === 0 ? id : `${id}-${at + 1}`;
    if (several) box.setAttribute("aria-label", `${field.label} ${at + 1}${field.unit ? `, ${field.unit}` : ""}`);
    box.setAttribute("aria-describedby", said.id);
    if (hint && "placeholder" in box) box.placeholder = hint;
    box.value = value;
    box.addEventListener("input", () => {
      const isLast = all().at(-1) === box;
      if (several && isLast && box.value !== "" && boxes.childElementCount < MOST_BOXES) addBox("");
      onInput(values());
    });
    if (isNumeric(field.holds))
      box.addEventListener("change", () => {
        box.value = pointed(box.value);
      });
    boxes.append(box);
    if (field.name === "startC") boxes.append(signButton(box as HTMLInputElement, field, () => onInput(values())));
  };
  const set = (next: readonly string[]): void => {
    if (several) {
      const wanted = Math.min(MOST_BOXES, Math.max(BOXES[field.name] ?? 1, next.length + (next.at(-1) ? 1 : 0)));
      while (boxes.childElementCount < wanted) addBox("");
    } else if (boxes.childElementCount === 0) addBox("");
    for (const [at, box] of all().entries()) {
      const value = next[at] ?? "";
      if (box instanceof HTMLSelectElement && value !== "" && ![...box.options].some((one) => one.value === value))
        box.append(element("option", { value }, value));
      if (box.value !== value) box.value = value;
    }
  };
  const say = ({ problems, notices }: Said): void => {
    said.replaceChildren(
      ...problems.map((sentence) => element("p", { className: "problem" }, sentence)),
      ...notices.map((sentence) => element("p", { className: "to-look-at" }, sentence)),
    );
    for (const box of all()) box.ariaInvalid = problems.length > 0 ? "true" : null;
  };
  const unit = field.unit === null ? [] : [element("span", { className: "unit" }, ` ${field.unit}`)];
  const made = several
    ? element("fieldset", {}, element("legend", {}, field.label, ...unit), boxes, said)
    : element("div", {}, element("label", { htmlFor: id }, field.label, ...unit), boxes, said);
  made.classList.add("field");
  made.dataset.heading = field.heading;
  return { element: made, set, say };
}

function boxOf(field: FormField, form: TrialForm): Box {
  const choices = choicesOf(field, form);
  if (choices !== null)
    return element("select", {}, ...choices.map(([value, words]) => element("option", { value }, words)));
  if (field.name === "note") return element("textarea", { rows: 2 });
  const box = element("input", {
    type: field.holds === "day" ? "date" : "text",
    autocomplete: "off",
    enterKeyHint: "next",
  });
  box.spellcheck = false;
  if (isNumeric(field.holds)) box.inputMode = "decimal";
  box.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    nextBox(box)?.focus();
  });
  return box;
}

function choicesOf({ name, holds }: FormField, form: TrialForm): readonly (readonly [string, string])[] | null {
  const named = (list: readonly { readonly id: string; readonly name: string }[]): [string, string][] =>
    list.map(({ id, name: words }) => [id, words]);
  if (name === "variantId") return form.variants.map((one: FormVariant) => [one.variantId, one.name]);
  if (name === "panId") return named(form.pans);
  if (name === "applianceId") return named(form.appliances);
  if (holds === "yesNo")
    return [
      ["", "not said"],
      ["yes", "yes"],
      ["no", "no"],
    ];
  return null;
}

function nextBox(box: Element): HTMLElement | undefined {
  const boxes = [...(box.closest("article")?.querySelectorAll<HTMLElement>("input, select, textarea") ?? [])];
  return boxes.slice(boxes.indexOf(box as HTMLElement) + 1).find((one) => one.offsetParent !== null);
}

/** Number pads of some telephones have no minus sign. */
function signButton(box: HTMLInputElement, { label }: FormField, told: () => void): HTMLButtonElement {
  const made = element("button", { type: "button", className: "sign", ariaLabel: `change the sign of ${label}` }, "±");
  made.addEventListener("click", () => {
    box.value = box.value.startsWith("-") ? box.value.slice(1) : `-${box.value}`;
    told();
  });
  return made;
}
