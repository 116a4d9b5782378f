/** Text as nbformat stores it: one string, or one string a line with its line end. */
export type Text = string | string[];

/** One output of a code cell, as nbformat 4.5 has it. */
export type Output =
  | { output_type: "stream"; name: "stdout" | "stderr"; text: Text }
  | { output_type: "display_data"; data: Record<string, unknown>; metadata: Record<string, unknown> }
  | {
      output_type: "execute_result";
      data: Record<string, unknown>;
      metadata: Record<string, unknown>;
      execution_count: number | null;
    }
  | { output_type: "error"; ename: string; evalue: string; traceback: string[] };

/** One cell, as nbformat 4.5 has it. */
export interface Cell {
  id: string;
  cell_type: "code" | "markdown" | "raw";
  metadata: Record<string, unknown>;
  source: Text;
  attachments?: Record<string, Record<string, unknown>>;
  execution_count?: number | null;
  outputs?: Output[];
}

/** A notebook, as nbformat 4.5 has it; https://nbformat.readthedocs.io */
export interface Notebook {
  nbformat: number;
  nbformat_minor: number;
  metadata: Record<string, unknown>;
  cells: Cell[];
}
