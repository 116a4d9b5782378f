import type { CheckedDraft, LoggedDraft, TrialForm, UndoneLog } from "../../src/kitchen/kitchen-answer";
import { element } from "../element";
import { AskFailure, ask } from "./ask";
import { type Draft, freeId, headingOf, idOf, typedCells, variantOf, withVariant } from "./draft";
import { type FieldView, fieldView } from "./field";
import { saidWhere } from "./said-where";
import type { Store } from "./store";
import { tastersView } from "./tasters";
import { timerView } from "./timer-view";

/** What a card is made from. */
export interface CardOptions {
  readonly form: TrialForm;
  readonly store: Store;
  readonly key: string;
  /** something was kept that is not sent yet, or was before */
  readonly onWaiting: () => void;
  /** the card must be made anew, or is gone */
  readonly onState: () => void;
}

/** What most mornings write, in the order in which they go; before, while and after the pieces are in. */
const BEFORE = ["variantId", "panId", "applianceId", "setpointC", "probesMm", "startC", "pieces", "massBeforeG"];
const WHILE = ["looksMin", "notCrispMin", "crispMin", "timeMin"];
const AFTER = ["coresC", "massAfterG"];
/** In the rows of tasters. */
const SCORES = ["crispScores", "brownScores", "tasters"];

/** How long after the last key what was typed is checked (ms). */
const CHECK_AFTER_MS = 500;

/** The card of one trial. */
export function trialCard(options: CardOptions): HTMLElement {
  const draft = options.store.one(options.key);
  if (draft === null) return element("article", { hidden: true });
  return draft.state === "logged" ? loggedCard(draft, options) : draftCard(draft, options);
}

function draftCard(first: Draft, { form, store, onWaiting, onState }: CardOptions): HTMLElement {
  let draft = first;
  let checking: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const views = new Map<string, FieldView>();

  const keep = (next: Draft): void => {
    draft = next;
    unkept.hidden = store.keep(draft);
  };
  const change = (next: Draft): void => {
    keep(next);
    checkSoon();
  };
  const checkSoon = (): void => {
    clearTimeout(checking);
    checking = setTimeout(() => void check(), CHECK_AFTER_MS);
  };
  const showValues = (): void => {
    for (const { heading } of form.fields) views.get(heading)?.set(draft.cells[heading] ?? []);
    timer.show(draft);
    showNames();
  };

  const title = element("h2", { tabIndex: -1 });
  const caution = element("p", { className: "caution" });
  const showNames = (): void => {
    const variant = variantOf(form, draft);
    title.textContent = `${idOf(form, draft)} · ${variant?.name ?? "?"}`;
    made.ariaLabel = title.textContent;
    caution.replaceChildren(element("strong", {}, "Crisp is not safe. "), variant?.caution ?? "");
  };

  const others = (): readonly Draft[] => store.all().filter(({ key }) => key !== draft.key);
  const view = (name: string): HTMLElement => {
    const field = form.fields.find((one) => one.name === name);
    if (field === undefined) throw new Error(`the form must have a field ${name}`);
    const made = fieldView({
      field,
      form,
      hint: name === "batchG" ? (variantOf(form, draft)?.batchHint ?? "") : "",
      onInput: (values) => {
        const variant = name === "variantId" ? form.variants.find((one) => one.variantId === values[0]) : undefined;
        if (variant) {
          change(withVariant(draft, { form, from: variantOf(form, draft), to: variant, others: others() }));
          showValues();
        } else change({ ...draft, cells: { ...draft.cells, [field.heading]: values } });
        if (name === "trialId") showNames();
      },
    });
    views.set(field.heading, made);
    return made.element;
  };

  const timer = timerView({
    form,
    now: () => draft,
    onPress: (next) => {
      change(next);
      showValues();
    },
  });
  const tasters = tastersView({
    rows: draft.tasters,
    onInput: (rows) => {
      store.keepInitials(rows.map(({ initials }) => initials).filter((one) => one !== ""));
      change({ ...draft, tasters: [...rows] });
    },
  });
  const shown = new Set([...BEFORE, ...WHILE, ...AFTER, ...SCORES, "note"]);
  const rest = form.fields.filter(({ name }) => !shown.has(name)).map(({ name }) => name);
  const more = element(
    "details",
    { className: "more" },
    element("summary", {}, "more: trial, date, batch, load, turned, rest, …"),
    element("div", { className: "grid" }, ...rest.map(view)),
  );
  const coldCore = element("p", { className: "cold" });
  coldCore.setAttribute("role", "alert");
  const general = element("div", { className: "general", ariaLive: "polite" });
  const state = element("p", { className: "state", ariaLive: "polite" });
  const unkept = element(
    "p",
    { className: "problem", hidden: true },
    "This browser keeps nothing of this page (private mode, or it is full): log the trial before you leave it.",
  );
  const send = element(
    "button",
    { type: "button", className: "send" },
    draft.state === "waiting" ? "send now" : "log it",
  );
  const away = element("button", { type: "button", className: "plain" }, "throw away");
  const made = element(
    "article",
    { className: "trial" },
    title,
    caution,
    ...(draft.planned === undefined ? [] : [element("p", { className: "planned" }, `Planned: ${draft.planned}.`)]),
    element("div", { className: "grid" }, ...BEFORE.map(view)),
    timer.element,
    element("div", { className: "grid thirds" }, ...WHILE.map(view)),
    element("div", { className: "grid" }, ...AFTER.map(view)),
    coldCore,
    tasters.element,
    view("note"),
    more,
    general,
    unkept,
    state,
    element("div", { className: "ends" }, send, away),
  );
  made.dataset.key = draft.key;
  made.dataset.state = draft.state;

  const say = (checked: Pick<CheckedDraft, "problems" | "notices" | "assumed" | "coldCore" | "missing">): void => {
    const { at, elsewhere } = saidWhere(
      checked,
      form.fields.map(({ heading }) => heading),
    );
    for (const [heading, one] of views) {
      const here = at.get(heading) ?? { problems: [], notices: [] };
      one.say(here);
      if (more.contains(one.element) && here.problems.length + here.notices.length > 0) more.open = true;
    }
    const scores = SCORES.flatMap((name) => at.get(headingOf(form, name)) ?? []);
    tasters.say({
      problems: scores.flatMap(({ problems }) => problems),
      notices: scores.flatMap(({ notices }) => notices),
    });
    coldCore.textContent = checked.coldCore;
    const missing = checked.missing.map(
      (heading) => form.fields.find((one) => one.heading === heading)?.label ?? heading,
    );
    const line = (className: string, words: string): HTMLElement => element("p", { className }, words);
    general.replaceChildren(
      ...elsewhere.problems.map((words) => line("problem", words)),
      ...elsewhere.notices.map((words) => line("to-look-at", words)),
      ...(checked.assumed.length > 0 ? [line("quiet", `Not typed, so: ${checked.assumed.join("; ")}.`)] : []),
      ...(missing.length > 0 ? [line("quiet", `Still to come: ${missing.join(", ")}.`)] : []),
    );
  };
  const check = async (): Promise<void> => {
    const mine = ++asked;
    made.ariaBusy = "true";
    try {
      const checked = await ask<CheckedDraft>("/log/check", { cells: typedCells(form, draft) });
      if (mine !== asked) return;
      say(checked);
      if (draft.state === "draft") state.textContent = "";
    } catch (error) {
      if (mine === asked && draft.state === "draft") state.textContent = `Not checked. ${(error as Error).message}`;
    }
    if (mine === asked) made.ariaBusy = "false";
  };

  send.addEventListener("click", async () => {
    // another tab may have sent it meanwhile
    if (store.one(draft.key)?.state === "logged") return onState();
    clearTimeout(checking);
    asked++;
    const cells = typedCells(form, draft);
    keep({ ...draft, state: "waiting", wasSent: true });
    send.disabled = true;
    made.ariaBusy = "true";
    state.textContent = "Being logged …";
    try {
      const cook = cells[headingOf(form, "cook")];
      const logged = await ask<LoggedDraft>("/log/trial", { cells, ...(cook ? { by: cook.slice(0, 200) } : {}) });
      keep({ ...draft, state: "logged", logged });
      return onState();
    } catch (error) {
      const isAway = error instanceof AskFailure && error.why === "away";
      if (!isAway) keep({ ...draft, state: "draft" });
      showWaiting((error as Error).message);
      if (!isAway) refused((error as Error).message);
    }
    send.disabled = false;
    made.ariaBusy = "false";
  });
  const showWaiting = (why: string): void => {
    onWaiting();
    made.dataset.state = draft.state;
    send.textContent = draft.state === "waiting" ? "send now" : "log it";
    state.textContent =
      draft.state === "waiting"
        ? `Not sent yet. ${why} Sending it again is safe: it is never logged twice.`.replace("  ", " ")
        : "Not logged: see what is said in red.";
  };
  const refused = (message: string): void => {
    say({
      problems: message.split("\n"),
      notices: [],
      assumed: [],
      coldCore: coldCore.textContent || null,
      missing: [],
    });
    const variant = variantOf(form, draft);
    if (!/that no other trial has/.test(message) || variant === undefined) return;
    const free = freeId(form, variant, others());
    const rename = element("button", { type: "button" }, `it is another trial: look for a free name`);
    rename.addEventListener("click", () => onRename(free));
    general.append(rename);
  };
  const onRename = async (free: string): Promise<void> => {
    const fresh = await ask<TrialForm>("/kitchen/form").catch(() => null);
    const variant = fresh?.variants.find(({ variantId }) => variantId === variantOf(form, draft)?.variantId);
    const id = variant ? freeId(form, variant, others()) : free;
    change({ ...draft, wasSent: false, cells: { ...draft.cells, [headingOf(form, "trialId")]: [id] } });
    showValues();
  };
  away.addEventListener("click", () => {
    if (!confirm(`Throw away what was typed for ${idOf(form, draft)}?`)) return;
    store.drop(draft.key);
    onState();
  });

  showValues();
  if (draft.state === "waiting") showWaiting("It was not answered.");
  void check();
  return made;
}

function loggedCard(draft: Draft, { form, store, onState }: CardOptions): HTMLElement {
  const { logged } = draft;
  if (logged === null) return element("article", { hidden: true });
  const undo = element("button", { type: "button" }, "undo");
  const away = element("button", { type: "button", className: "plain" }, "put away");
  const state = element("p", { className: "problem", ariaLive: "polite" });
  const variant = variantOf(form, draft);
  const made = element(
    "article",
    { className: "trial logged", ariaLabel: logged.trialId },
    element("h2", { tabIndex: -1 }, `${logged.trialId} · ${variant?.name ?? "?"}`),
    element("p", { className: "done" }, logged.kind === "logged" ? "Logged. " : "", logged.sentence),
    ...(logged.coldCore ? [element("p", { className: "cold" }, logged.coldCore)] : []),
    ...logged.notices.map((notice) => element("p", { className: "to-look-at" }, notice)),
    element("p", { className: "caution" }, element("strong", {}, "Crisp is not safe. "), variant?.caution ?? ""),
    state,
    element("div", { className: "ends" }, undo, away),
  );
  made.dataset.key = draft.key;
  made.dataset.state = "logged";
  undo.addEventListener("click", async () => {
    undo.disabled = true;
    try {
      await ask<UndoneLog>("/log/undo", { file: logged.file, trialId: logged.trialId });
      store.keep({ ...draft, state: "draft", logged: null });
      onState();
    } catch (error) {
      state.textContent = (error as Error).message;
      undo.disabled = false;
    }
  });
  away.addEventListener("click", () => {
    store.drop(draft.key);
    onState();
  });
  return made;
}
