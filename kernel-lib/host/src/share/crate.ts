import { statSync } from "node:fs";
import { join } from "node:path";
import type { ParameterValue } from "../notebook/parameters";
import { CRATE, crateId } from "./bundle";
import { filesIn } from "./files-in";
import type { RunBasis } from "./provenance";
import { fileSha256 } from "./sha256";

/** What `crateText` says of a bundle. */
export interface CrateOptions {
  readonly folder: string;
  readonly name: string;
  readonly description: string;
  /** ISO 8601, UTC */
  readonly run: string;
  /** who may be asked; null when nobody was named */
  readonly contact: string | null;
  readonly basis: RunBasis;
  readonly parameters: Readonly<Record<string, ParameterValue>>;
}

const MEDIA: Readonly<Record<string, string>> = {
  csv: "text/csv",
  html: "text/html",
  ipynb: "application/x-ipynb+json",
  json: "application/json",
  jsonl: "application/jsonl",
  md: "text/markdown",
  tsv: "text/tab-separated-values",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/**
 * The manifest of a bundle's folder as RO-Crate 1.1 has it (JSON-LD): every file with its SHA-256 and size, the run as a
 * `CreateAction` with Node, kernel and library as instruments, parameters as `PropertyValue`.
 */
export function crateText({ folder, name, description, run, contact, basis, parameters }: CrateOptions): string {
  const files = filesIn(folder).filter((file) => file !== CRATE);
  const software = Object.entries({ Node: basis.node, ...basis.packages }).map(([called, version]) => ({
    "@id": `#${called}`,
    "@type": "SoftwareApplication",
    name: called,
    version,
  }));
  const values = Object.entries(parameters).map(([called, value]) => ({
    "@id": `#parameter-${encodeURIComponent(called)}`,
    "@type": "PropertyValue",
    name: called,
    value,
  }));
  const digests = [
    { "@id": "#lock", "@type": "PropertyValue", name: "SHA-256 of package-lock.json", value: basis.lock },
    { "@id": "#code", "@type": "PropertyValue", name: "SHA-256 of the library's code", value: basis.code },
  ].filter(({ value }) => value !== null);
  const refer = (entries: readonly { readonly "@id": string }[]): readonly { readonly "@id": string }[] =>
    entries.map((entry) => ({ "@id": entry["@id"] }));
  const person = contact === null ? [] : [{ "@id": "#contact", "@type": "ContactPoint", name: contact }];
  const notebooks = files.filter((file) => file.startsWith("notebooks/")).map((file) => ({ "@id": crateId(file) }));
  const data = files.filter((file) => file.startsWith("kitchen/")).map((file) => ({ "@id": crateId(file) }));
  const graph = [
    {
      "@id": CRATE,
      "@type": "CreativeWork",
      conformsTo: { "@id": "https://w3id.org/ro/crate/1.1" },
      about: { "@id": "./" },
    },
    {
      "@id": "./",
      "@type": "Dataset",
      name,
      description,
      datePublished: run,
      hasPart: files.map((file) => ({ "@id": crateId(file) })),
      mentions: [{ "@id": "#run" }],
      ...(person.length > 0 ? { contactPoint: refer(person)[0] } : {}),
    },
    {
      "@id": "#run",
      "@type": "CreateAction",
      name: "notebooks run on the kitchen",
      endTime: run,
      instrument: refer([...software, ...digests]),
      object: [...data, ...refer(values)],
      result: [...notebooks, { "@id": "page.html" }],
    },
    ...files.map((file) => ({
      "@id": crateId(file),
      "@type": "File",
      name: file,
      encodingFormat: MEDIA[file.slice(file.lastIndexOf(".") + 1)] ?? "application/octet-stream",
      contentSize: String(statSync(join(folder, file)).size),
      sha256: fileSha256(join(folder, file)),
    })),
    ...software,
    ...digests,
    ...values,
    ...person,
  ];
  return `${JSON.stringify({ "@context": "https://w3id.org/ro/crate/1.1/context", "@graph": graph }, null, 1)}\n`;
}
