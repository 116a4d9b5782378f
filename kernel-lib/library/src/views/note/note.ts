/** A list under a few words of its own. */
export interface NoteList {
  /** null for a list that needs none */
  readonly heading: string | null;
  readonly items: readonly string[];
}

/** A title, sentences and lists as plain data: a card, or a page's paragraph on one product. */
export interface Note {
  readonly kind: "note";
  readonly title: string;
  /** stands beside the title: `"ready"`; null for none */
  readonly mark: string | null;
  /** whether the mark says that all is well */
  readonly good: boolean;
  /** paragraphs and lists in the order to read them; a list without items is passed over */
  readonly parts: readonly (string | NoteList)[];
}
