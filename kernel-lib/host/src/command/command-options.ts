import type { AskedParameters } from "../notebook/parameters";

/** What every verb gets. */
export interface CommandOptions {
  /** what is named on the command line: notebooks, or the folder of a kitchen */
  readonly named: readonly string[];
  /** folder of another kitchen, or null for the environment's, or else the project's own `data/` */
  readonly kitchen: string | null;
  /** folder for what the command writes, or null for the kitchen's own `out/` */
  readonly out: string | null;
  /** what a new kitchen thinks in: `us`, `metric`, or null when it was not said */
  readonly units: string | null;
  /** with `log`: a file of the kitchen's folder `trials`, who does it and why; null when it was not said */
  readonly log: string | null;
  readonly by: string | null;
  readonly why: string | null;
  readonly inPlace: boolean;
  /** with `check`: store the new outputs */
  readonly update: boolean;
  /** values of the notebooks' parameters, by name, as typed */
  readonly set: AskedParameters;
  /** with `share`: what goes along that else stays at home */
  readonly with: readonly string[];
  readonly tolerance: number | null;
  /** with `start`: a report for every variant */
  readonly each: boolean;
  /** with `compare`: where two notebooks go as one; null when it was not said */
  readonly merge: string | null;
  /** with `share`: one zip file beside the folder */
  readonly zip: boolean;
  readonly register: boolean;
  readonly unregister: boolean;
  readonly port: number | null;
  readonly open: boolean;
  /** prints for the reader, control characters written as their codes */
  readonly say: (text: string) => void;
  /** the same on stderr */
  readonly complain: (text: string) => void;
}
