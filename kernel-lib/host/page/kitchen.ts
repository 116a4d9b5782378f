import type { Glance, PlainTable, ProductNext } from "../src/kitchen/kitchen-answer";
import { element } from "./element";

/** Fills the start page's place for the kitchen: first what is known at once, then the setting for each product. */
export async function showKitchen(place: HTMLElement): Promise<void> {
  let shown = "";
  const look = async (): Promise<void> => {
    const glance = await ask<Glance>("glance");
    const text = JSON.stringify(glance);
    if (text === shown) return;
    shown = text;
    place.ariaBusy = "true";
    const settings = element("div", { id: "settings" }, ...glance.products.map((product) => productOf(product)));
    place.replaceChildren(
      ...slips(glance),
      settings,
      ...notices(glance),
      element("p", { className: "quiet" }, glance.summary),
    );
    if (glance.products.length > 0) await showAnswers(settings, glance);
    place.ariaBusy = "false";
    if (glance.products.length > 0) await showNext(settings);
  };
  const lookOrSay = (): Promise<void> =>
    look().catch((error: Error) => {
      shown = "";
      place.replaceChildren(element("p", { className: "slips" }, error.message));
      place.ariaBusy = "false";
    });
  window.addEventListener("focus", () => void lookOrSay());
  await lookOrSay();
}

async function showAnswers(settings: HTMLElement, glance: Glance): Promise<void> {
  try {
    const table = await ask<PlainTable>("answers");
    const rows = table.rows.map((cells, at) => productOf(glance.products[at], { table, cells }));
    const notes = table.notes.map((note) => element("p", {}, note));
    settings.replaceChildren(...rows, element("div", { className: "notes" }, ...notes));
  } catch (error) {
    settings.append(element("p", { className: "slips" }, (error as Error).message));
  }
}

/** What to do next, folded below each product. */
async function showNext(settings: HTMLElement): Promise<void> {
  const products = [...settings.querySelectorAll<HTMLElement>(".product")];
  const next = await ask<readonly ProductNext[]>("next").catch(() => []); // why not stands above, with the settings
  for (const product of products) {
    const plan = next.find(({ variantId }) => variantId === product.dataset.variant);
    if (plan === undefined) continue;
    const words = (all: readonly string[]): HTMLElement[] => all.map((one) => element("p", {}, one));
    const steps = plan.steps.map((step) => element("li", {}, step));
    product.append(
      element(
        "details",
        { className: "next" },
        element("summary", {}, "what next"),
        ...words(plan.known),
        element("ol", {}, ...steps),
        ...words(plan.cautions),
      ),
    );
  }
}

/** A product: its name, how far it is, how much is logged, and its setting as far as it is worked out. */
function productOf(
  { variantId, name, trials }: Glance["products"][number],
  answer?: { readonly table: PlainTable; readonly cells: PlainTable["rows"][number] },
): HTMLElement {
  const count = trials === 1 ? "1 trial" : `${trials || "no"} trials`;
  const state = element("span", { className: "state" }, answer ? String(answer.cells.at(-1)) : "being worked out …");
  if (answer?.cells.at(-1) === "ready") state.dataset.ready = "";
  const facts = (answer?.cells ?? []).slice(1, -1).flatMap((cell, at) => {
    const heading = answer?.table.columns[at + 1].heading ?? "";
    return cell === null ? [] : [element("div", {}, element("dt", {}, heading), element("dd", {}, String(cell)))];
  });
  const product = element(
    "article",
    { className: "product" },
    element("h2", {}, name),
    state,
    element("span", { className: "quiet" }, count),
    element("dl", {}, ...facts),
  );
  product.dataset.variant = variantId;
  return product;
}

function slips({ problems }: Glance): HTMLElement[] {
  if (problems.length === 0) return [];
  const count = problems.length === 1 ? "One slip is" : `${problems.length} slips are`;
  return [
    element(
      "div",
      { className: "slips" },
      element("h2", {}, `${count} to be mended before the kitchen can be loaded`),
      element("ul", {}, ...problems.map((problem) => element("li", {}, problem))),
      element("p", {}, "Notebooks open all the same; a cell that loads the kitchen says these lines too."),
    ),
  ];
}

function notices({ notices: all }: Glance): HTMLElement[] {
  if (all.length === 0) return [];
  const words = all.length === 1 ? "1 notice" : `${all.length} notices`;
  const list = element("ul", {}, ...all.map((notice) => element("li", {}, notice)));
  const details = element(
    "details",
    { className: "notices" },
    element("summary", {}, `${words}: look at these before trusting the logs`),
    list,
  );
  details.open = all.length <= 3;
  return [details];
}

async function ask<T>(name: string): Promise<T> {
  const answer = await fetch(`/kitchen/${name}`);
  const json = await answer.json();
  if (!answer.ok) throw new Error(String(json.message));
  return json;
}
