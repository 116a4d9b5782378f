import { button } from "./notice";

/** A dialog that offers a list: a button a line, which closes it and does what it says. */
export function choiceDialog(options: {
  readonly label: string;
  readonly words: string;
  readonly choices: readonly { readonly label: string; readonly run: () => unknown }[];
}): void {
  const dialog = document.createElement("dialog");
  dialog.className = "states";
  dialog.setAttribute("aria-label", options.label);
  const words = document.createElement("p");
  words.textContent = options.words;
  const list = document.createElement("ul");
  for (const { label, run } of options.choices) {
    const line = document.createElement("li");
    line.append(
      button(label, () => {
        dialog.close();
        run();
      }),
    );
    list.append(line);
  }
  dialog.append(
    words,
    list,
    button("close", () => dialog.close()),
  );
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}
