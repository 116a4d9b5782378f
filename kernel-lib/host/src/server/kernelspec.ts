import { MENDS, preloads } from "../kernel/preloads";

/** The name that notebooks give their kernel, the one under which tslab itself installs. */
export const KERNEL_NAME = "tslab";
export const KERNEL_TITLE = "TypeScript";

/** The language of cells as notebooks store it (tslab itself adds an editor mode and a version that do not hold). */
export const LANGUAGE_INFO: Readonly<Record<string, string>> = {
  file_extension: ".ts",
  mimetype: "text/typescript",
  name: "typescript",
};

/** What a Jupyter program needs to know to start the kernel: no Python anywhere. */
export function kernelspec(): {
  readonly argv: string[];
  readonly display_name: string;
  readonly language: string;
  readonly interrupt_mode: string;
  readonly metadata: Record<string, unknown>;
} {
  return {
    argv: [
      process.execPath,
      ...preloads(...MENDS),
      require.resolve("tslab/bin/tslab"),
      "kernel",
      "--config-path={connection_file}",
    ],
    display_name: KERNEL_TITLE,
    language: "typescript",
    interrupt_mode: "signal",
    metadata: { "written-by": "slabwright" },
  };
}
