import type { TrialForm } from "../../src/kitchen/kitchen-answer";
import type { Draft } from "./draft";

/** What the browser keeps of a kitchen's trials, so that neither a reload nor a closed tab loses any. */
export interface Store {
  readonly all: () => readonly Draft[];
  readonly one: (key: string) => Draft | null;
  /** false when the browser keeps nothing */
  readonly keep: (draft: Draft) => boolean;
  readonly drop: (key: string) => void;
  readonly form: () => TrialForm | null;
  readonly keepForm: (form: TrialForm) => void;
  readonly initials: () => readonly string[];
  readonly keepInitials: (initials: readonly string[]) => void;
  /** calls back with the card that another tab changed */
  readonly onChange: (tell: (key: string) => void) => void;
}

/** The store of the kitchen in `folder`; each draft has an entry of its own, so that two tabs do not overwrite each other's. */
export function draftStore(folder: string): Store {
  const home = `slabwright log ${folder} `;
  const draftHome = `${home}draft `;
  const read = <T>(key: string): T | null => {
    try {
      return JSON.parse(localStorage.getItem(key) ?? "null");
    } catch {
      return null;
    }
  };
  const write = (key: string, value: unknown): boolean => {
    try {
      localStorage.setItem(key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  };
  const keys = (): string[] => {
    try {
      return Object.keys(localStorage);
    } catch {
      return [];
    }
  };
  return {
    all: () =>
      keys()
        .filter((key) => key.startsWith(draftHome))
        .flatMap((key) => read<Draft>(key) ?? [])
        .sort((one, other) => other.madeAt - one.madeAt),
    one: (key) => read(draftHome + key),
    keep: (draft) => write(draftHome + draft.key, draft),
    drop: (key) => {
      try {
        localStorage.removeItem(draftHome + key);
      } catch {
        // nothing was kept
      }
    },
    form: () => read(`${home}form`),
    keepForm: (form) => void write(`${home}form`, form),
    initials: () => read(`${home}initials`) ?? [],
    keepInitials: (initials) => void write(`${home}initials`, initials),
    onChange: (tell) =>
      window.addEventListener("storage", ({ key }) => {
        if (key?.startsWith(draftHome)) tell(key.slice(draftHome.length));
      }),
  };
}
