import { type SharedKitchen, type SharedKitchenOptions, sharedKitchen } from "../trials/shared-kitchen";
import { readKitchenFolder } from "./read-kitchen-folder";

/** A shared kitchen as plain data: the bytes of a workbook in base 64. */
export interface SharedKitchenFiles extends Omit<SharedKitchen, "files"> {
  readonly files: readonly { readonly file: string; readonly text?: string; readonly base64?: string }[];
}

/**
 * The files of a kitchen's folder without what is private, as `sharedKitchen` gives them. Nothing is written.
 *
 * @param folder the kitchen's folder
 */
export function kitchenToShare(folder: string, options: Omit<SharedKitchenOptions, "files"> = {}): SharedKitchenFiles {
  const shared = sharedKitchen({ ...options, files: readKitchenFolder(folder, "kitchenToShare: folder") });
  const files = shared.files.map(({ file, content }) =>
    typeof content === "string" ? { file, text: content } : { file, base64: Buffer.from(content).toString("base64") },
  );
  return { ...shared, files };
}
