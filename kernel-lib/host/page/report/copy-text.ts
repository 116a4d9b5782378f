import { element } from "../element";

/**
 * Puts text on the clipboard; where the browser refuses (an old one, a page in a sandbox) by its older way, and where that is
 * refused too as a file to download. Returns what was done, in words.
 */
export async function copyText(text: string, fileName: string): Promise<string> {
  try {
    await navigator.clipboard.writeText(text);
    return "copied";
  } catch {
    if (copiedOldWay(text)) return "copied";
    download(text, fileName);
    return `saved as ${fileName}`;
  }
}

function copiedOldWay(text: string): boolean {
  const before = document.activeElement as HTMLElement | null;
  const field = element("textarea", { value: text, className: "unseen", readOnly: true });
  document.body.append(field);
  field.select();
  try {
    return document.execCommand("copy");
  } catch {
    return false;
  } finally {
    field.remove();
    before?.focus({ preventScroll: true });
  }
}

function download(text: string, fileName: string): void {
  // the mark at the beginning tells a spreadsheet program that the file is UTF-8
  const address = URL.createObjectURL(new Blob(["\ufeff", text], { type: "text/csv;charset=utf-8" }));
  element("a", { href: address, download: fileName }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
