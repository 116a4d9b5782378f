// Source: the Jupyter project's JSON schema of the notebook format 4.5 (see nbformat/SOURCE.txt).
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import Ajv, { type ValidateFunction } from "ajv-draft-04";
import { notebookText, parseNotebook, readNotebook, runNotebook } from "slabwright-host";
import { describe, expect, it } from "vitest";

const root = resolve(__dirname, "../..");
const schema = JSON.parse(readFileSync(join(__dirname, "nbformat", "nbformat.v4.5.schema.json"), "utf8"));
const validate: ValidateFunction = new Ajv({ strict: false, allErrors: true }).compile(schema);

function faults(text: string): string[] {
  validate(JSON.parse(text));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

const files = ["notebooks", "tests/host/notebooks"].flatMap((folder) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith(".ipynb"))
    .map((name) => join(folder, name)),
);

describe("nbformat 4.5", () => {
  it.each(files)("%s is valid, as it stands and as the host would save it", (file) => {
    const text = readFileSync(join(root, file), "utf8");
    expect(faults(text)).toEqual([]);
    expect(faults(notebookText(parseNotebook(text, file)))).toEqual([]);
  });

  it.each(["every-output", "fails", "does-not-compile", "ends-the-kernel", "may-fail"])(
    "the executed copy of %s is valid",
    async (name) => {
      const { notebook } = await runNotebook({ path: join(root, "tests/host/notebooks", `${name}.ipynb`) });
      expect(faults(notebookText(notebook))).toEqual([]);
    },
  );

  it("finds faults where there are some", async () => {
    const notebook = await readNotebook(join(root, "tests/host/notebooks/every-output.ipynb"));
    const damaged = JSON.parse(notebookText(notebook));
    damaged.cells[1].outputs = [{ output_type: "stream", name: "stdout" }];
    delete damaged.cells[2].execution_count;
    damaged.cells[3].id = "not a valid id!";
    expect(faults(JSON.stringify(damaged)).length).toBeGreaterThanOrEqual(3);
  });
});
