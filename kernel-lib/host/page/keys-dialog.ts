import type { CommandRegistry } from "@lumino/commands";
import { button } from "./notice";

/** Lists every command with its keys; a click runs it. */
export function keysDialog(commands: CommandRegistry): void {
  const dialog = document.createElement("dialog");
  dialog.className = "keys";
  const table = document.createElement("table");
  for (const id of commands.listCommands()) {
    const keys = commands.keyBindings
      .filter((binding) => binding.command === id)
      .map((binding) => binding.keys.join(", "));
    const row = table.insertRow();
    const run = button(commands.label(id), () => {
      dialog.close();
      void commands.execute(id);
    });
    row.insertCell().append(run);
    row.insertCell().textContent = [...new Set(keys)].join(" or ").replaceAll("Accel", "Ctrl");
  }
  const words = document.createElement("p");
  words.textContent = "Escape leaves a cell, Enter goes into it; single letters work outside a cell.";
  dialog.append(
    words,
    table,
    button("close", () => dialog.close()),
  );
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}
