import { withoutColours } from "../report/escape";

/** An error as Jupyter's protocol and notebooks carry it. */
export interface KernelError {
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
}

/** What is read first, and what is folded behind it. */
export interface ErrorWords {
  readonly sentence: string;
  /** the source line and the calls; empty where they say no more than the sentence */
  readonly where: string;
}

/** Parts an error into its sentence, without the name of its kind, and where it came from. */
export function errorWords({ ename, evalue, traceback }: KernelError): ErrorWords {
  const sentence = evalue.trim() || ename;
  const lines = withoutColours(traceback.join("\n")).trim();
  return { sentence, where: lines === sentence || lines === `${ename}: ${evalue}`.trim() ? "" : lines };
}
