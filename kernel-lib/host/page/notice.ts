/** A sentence at the top of the page, with a button for what can be done about it and one to put it away. */
export function notice(words: string, act?: { readonly label: string; readonly run: () => unknown }): void {
  let bar = document.getElementById("notice");
  if (!bar) {
    bar = document.createElement("div");
    bar.id = "notice";
    bar.setAttribute("role", "status");
    document.body.append(bar);
  }
  const text = document.createElement("span");
  text.textContent = words;
  const away = button("close", () => bar.remove());
  const first =
    act &&
    button(act.label, () => {
      bar.remove();
      act.run();
    });
  bar.replaceChildren(text, ...(first ? [first] : []), away);
}

/** Puts the sentence away, if one is shown. */
export function hideNotice(): void {
  document.getElementById("notice")?.remove();
}

/** A plain button. */
export function button(label: string, run: () => unknown): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "button";
  made.textContent = label;
  made.addEventListener("click", () => run());
  return made;
}
