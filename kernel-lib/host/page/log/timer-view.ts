import type { TrialForm } from "../../src/kitchen/kitchen-answer";
import { element } from "../element";
import type { Draft } from "./draft";
import { clockText, type Press, pressed } from "./timer";

/** The timer on the page. */
export interface TimerView {
  readonly element: HTMLElement;
  readonly show: (draft: Draft) => void;
}

/** The clock with its buttons; it ticks while the card is on the page. */
export function timerView(options: {
  readonly form: TrialForm;
  readonly now: () => Draft;
  readonly onPress: (next: Draft) => void;
}): TimerView {
  const { form, now: draftNow, onPress } = options;
  const clock = element("output", { className: "clock", ariaLabel: "time since the start" }, "0:00");
  clock.ariaLive = "off";
  const press = (what: Press): HTMLButtonElement => {
    const made = element("button", { type: "button" }, what);
    made.addEventListener("click", () => onPress(pressed(draftNow(), what, { form, now: Date.now() })));
    return made;
  };
  const start = press("start");
  const during = (["not yet", "crisp", "turned", "taken out"] as const).map(press);
  during[3].classList.add("wide");
  const back = element("button", { type: "button", className: "plain" }, "take the last press back");
  back.addEventListener("click", () => {
    const draft = draftNow();
    if (draft.before) onPress({ ...draft, ...draft.before, before: null });
  });
  const tick = (): void => {
    const { startedAt, takenOutAt } = draftNow().timer;
    clock.textContent = clockText(startedAt === null ? 0 : (takenOutAt ?? Date.now()) - startedAt);
  };
  const ticking = setInterval(() => (made.isConnected ? tick() : clearInterval(ticking)), 250);
  const made = element(
    "section",
    { className: "timer", ariaLabel: "timer" },
    clock,
    start,
    element("div", { className: "presses" }, ...during),
    back,
  );
  const show = ({ timer, before }: Draft): void => {
    const runs = timer.startedAt !== null && timer.takenOutAt === null;
    made.dataset.state = runs ? "runs" : timer.startedAt === null ? "ready" : "out";
    start.hidden = timer.startedAt !== null;
    for (const button of during) button.hidden = !runs;
    back.hidden = before === null;
    tick();
  };
  return { element: made, show };
}
