import "./log.css";
import type { FormPlan, FormPlanned, FormVariant, TrialForm } from "../src/kitchen/kitchen-answer";
import { element } from "./element";
import { AskFailure, ask } from "./log/ask";
import { trialCard } from "./log/card";
import { idOf, newDraft } from "./log/draft";
import { draftStore } from "./log/store";

/** The page on which trials are logged: a card a trial, and buttons for new ones. */
const main = document.getElementById("log") as HTMLElement;
const notice = document.getElementById("notice") as HTMLElement;
const { kitchenFolder } = JSON.parse(document.getElementById("jupyter-config-data")?.textContent ?? "{}");
const store = draftStore(String(kitchenFolder));
/** `/log?plan=monday`: one plan alone. */
const asked = new URLSearchParams(location.search).get("plan");

/** Says what must be known of the whole page, a line each; `lightly` where it stops nothing. */
function say(lines: readonly string[], lightly = false): void {
  notice.replaceChildren(...lines.map((words) => element("p", {}, words)));
  notice.classList.toggle("lightly", lightly);
  notice.hidden = lines.length === 0;
}

/** The form as the kitchen has it now, or as it was when it was last asked for. */
async function formNow(): Promise<TrialForm | null> {
  try {
    const form = await ask<TrialForm>("/kitchen/form");
    store.keepForm(form);
    say(form.notices, true);
    return form;
  } catch (error) {
    const isAway = error instanceof AskFailure && error.why === "away";
    const form = store.form();
    const kept = isAway || form === null ? [] : ["Trials can be typed, and logged once this is mended."];
    say([...(error as Error).message.split("\n"), ...kept]);
    return form;
  }
}

async function showPage(): Promise<void> {
  let form = await formNow();
  main.ariaBusy = "false";
  if (form === null) {
    main.replaceChildren(
      element("p", { className: "quiet" }, "Nothing is known of the kitchen yet: load this page again."),
    );
    return;
  }
  const cards = element("div", { className: "cards" });
  const beginnings = element("div", { className: "beginnings" });
  const waiting = element("p", { className: "waiting", ariaLive: "polite" });

  const cardOf = (key: string): HTMLElement | undefined =>
    [...cards.querySelectorAll<HTMLElement>("article")].find((one) => one.dataset.key === key);
  const showWaiting = (): void => {
    const count = store.all().filter(({ state }) => state === "waiting").length;
    waiting.textContent = count === 0 ? "" : `${count === 1 ? "1 trial is" : `${count} trials are`} not sent yet.`;
  };
  /** Makes one card anew, from what is kept; takes it away when nothing is. */
  const renew = (key: string): void => {
    const old = cardOf(key);
    showWaiting();
    if (store.one(key) === null) {
      old?.remove();
      return;
    }
    const made = trialCard({ form: form as TrialForm, store, key, onWaiting: showWaiting, onState: () => renew(key) });
    const hadFocus = old?.contains(document.activeElement);
    if (old) old.replaceWith(made);
    else cards.prepend(made);
    if (hadFocus) made.querySelector("h2")?.focus();
  };
  const begin = async (variantId: string, planned?: FormPlanned): Promise<void> => {
    form = (await formNow()) ?? (form as TrialForm);
    const variant = form.variants.find((one) => one.variantId === variantId);
    if (variant === undefined) return;
    const begun = planned && store.all().find((draft) => idOf(form as TrialForm, draft) === planned.trialId);
    if (begun) return go(begun.key);
    const draft = newDraft({ form, variant, planned, others: store.all(), initials: store.initials() });
    if (!store.keep(draft))
      return say([
        "This browser keeps nothing of this page (private mode, or it is full), so that trials could be lost: use another.",
      ]);
    renew(draft.key);
    go(draft.key);
  };
  const go = (key: string): void => {
    cardOf(key)?.scrollIntoView();
    cardOf(key)?.querySelector("h2")?.focus({ preventScroll: true });
  };
  const beginning = ({ variantId, name }: FormVariant): HTMLButtonElement => {
    const made = element("button", { type: "button" }, name);
    made.addEventListener("click", async () => {
      made.disabled = true;
      await begin(variantId);
      made.disabled = false;
    });
    return made;
  };
  const plannedOne = (planned: FormPlanned): HTMLElement => {
    const made = element("button", { type: "button" }, planned.trialId);
    made.addEventListener("click", () => void begin(planned.variantId, planned));
    return element("li", {}, made, ` ${planned.words}`);
  };
  const planSection = ({ name, trials, problem }: FormPlan): HTMLElement =>
    element(
      "section",
      { ariaLabel: `plan ${name}`, className: "plan" },
      element("h2", {}, `plan ${name}`),
      problem === null ? element("ul", {}, ...trials.map(plannedOne)) : element("p", { className: "problem" }, problem),
      ...(problem === null && trials.length === 0
        ? [element("p", { className: "quiet" }, "All of it is logged.")]
        : []),
    );
  beginnings.append(...form.variants.map(beginning));
  main.replaceChildren(
    ...plansToShow(form, asked).map(planSection),
    element("section", { ariaLabel: "new trial" }, element("h2", {}, "new trial of"), beginnings),
    waiting,
    cards,
  );
  for (const draft of [...store.all()].reverse()) renew(draft.key);
  store.onChange((key) => {
    const isTypedIn = cardOf(key)?.contains(document.activeElement);
    if (!isTypedIn || store.one(key)?.state === "logged") renew(key);
  });
}

/** The plan that the address asks for, else those of which something is open. */
function plansToShow({ plans = [] }: TrialForm, name: string | null): readonly FormPlan[] {
  if (name !== null) {
    const found = plans.filter((plan) => plan.name === name);
    if (found.length === 0) say([`There is no plan ${name} in this kitchen.`]);
    return found;
  }
  return plans.filter(({ trials, problem }) => trials.length > 0 || problem !== null);
}

void showPage();
