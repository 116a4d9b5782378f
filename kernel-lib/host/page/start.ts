import "./start.css";
import { showKitchen } from "./kitchen";

/** The start page's buttons: new, copy, rename, remove, stop. */
async function ask(method: string, path: string, body?: object): Promise<Record<string, unknown>> {
  const answer = await fetch(path, {
    method,
    headers: { "Content-Type": "application/json" },
    body: body && JSON.stringify(body),
  });
  const json = answer.status === 204 ? {} : await answer.json();
  if (!answer.ok) throw new Error(String(json.message));
  return json;
}

const address = (path: string): string => path.split("/").map(encodeURIComponent).join("/");
const folderOf = (path: string): string => path.split("/").slice(0, -1).join("/");

/** Where new notebooks go: the folder of the open kitchen's own, or, where it has none of its own, the project's. */
const newFolder = (): string => document.getElementById("new")?.dataset.folder ?? "";

const ACTS: Record<string, (place: DOMStringMap) => Promise<unknown>> = {
  copy: ({ path = "" }) => {
    const isOwn = newFolder() === "" || path.startsWith(`${newFolder()}/`);
    return ask("POST", `/api/contents/${address(isOwn ? folderOf(path) : newFolder())}`, { copy_from: path });
  },
  rename: async ({ path = "" }) => {
    const name = prompt("New name:", path.split("/").at(-1));
    if (!name) return;
    const file = name.endsWith(".ipynb") ? name : `${name}.ipynb`;
    await ask("PATCH", `/api/contents/${address(path)}`, { path: [folderOf(path), file].filter(Boolean).join("/") });
  },
  remove: async ({ path = "" }) => {
    if (confirm(`Move ${path} to the trash folder?`)) await ask("DELETE", `/api/contents/${address(path)}`);
  },
  stop: ({ session }) => ask("DELETE", `/api/sessions/${session}`),
};

async function act(run: () => Promise<unknown>): Promise<void> {
  try {
    await run();
    location.reload();
  } catch (error) {
    const notice = document.getElementById("notice") as HTMLElement;
    notice.textContent = (error as Error).message;
    notice.hidden = false;
  }
}

document.addEventListener("click", (event) => {
  const pressed = (event.target as Element).closest("button");
  const place = pressed?.closest("li");
  if (pressed?.id === "new") {
    void act(async () => {
      const { path } = await ask("POST", `/api/contents/${newFolder()}`, { type: "notebook" });
      location.href = `/open/${address(String(path))}`;
      await new Promise(() => {}); // the page is being left
    });
  } else if (pressed?.dataset.act && place) void act(() => ACTS[pressed.dataset.act as string](place.dataset));
});

const kitchen = document.getElementById("kitchen");
if (kitchen) void showKitchen(kitchen);
