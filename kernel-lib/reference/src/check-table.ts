/** How close one comparison of a check came, as `tests/published/comparison.ts` leaves it in a test's result. */
export interface Closeness {
  readonly page: string;
  readonly what: string;
  readonly against: string;
  readonly source: string;
  /** "relative", "digits", "equal", or the unit of a distance */
  readonly measure: string;
  readonly found: number;
  readonly heldTo: number;
}

/** What vitest's JSON reporter writes, as far as it is read here. */
export interface CheckResults {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly meta: { readonly compared?: readonly Closeness[] };
    }[];
  }[];
}

/** Every comparison of a run of checks; throws when one of the checks does not hold. */
export function closenessIn({ testResults }: CheckResults): readonly Closeness[] {
  const broken = testResults.flatMap(({ name, status, assertionResults }) => {
    const failed = assertionResults.filter((check) => check.status === "failed").map(({ fullName }) => fullName);
    return failed.length > 0 || status === "passed" ? failed : [name];
  });
  if (broken.length > 0)
    throw new Error(`the reference is made of checks that hold; these do not: ${broken.join("; ")}`);
  return testResults.flatMap(({ assertionResults }) => assertionResults.flatMap(({ meta }) => meta.compared ?? []));
}

/** The comparisons of one page as a Markdown table: each row is what was compared with what, the worst of its cases, and what that is held to. */
export function checkTable(closeness: readonly Closeness[], page: string): string {
  const rows = new Map<string, Closeness[]>();
  for (const each of closeness.filter((one) => one.page === page)) {
    const key = JSON.stringify([each.what, each.against, each.measure]);
    rows.set(key, [...(rows.get(key) ?? []), each]);
  }
  if (rows.size === 0) throw new Error(`no check tells how close the models of "${page}" are`);
  const lines = [...rows.values()].map((cases) => {
    const [{ what, against }] = cases;
    const { close, held } = wordsOf(cases);
    const cells = [`${what}; with ${against}`, String(cases.length), ...[close, held].map(unbroken)];
    return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  });
  return ["| compared | cases | worst | held to |", "| --- | ---: | --- | --- |", ...lines].join("\n");
}

/** A figure and its unit stay on one line. */
function unbroken(words: string): string {
  return words.replace(/(?<! to) (?!to )/g, "\u00a0");
}

function wordsOf(cases: readonly Closeness[]): { close: string; held: string } {
  const [{ measure }] = cases;
  const held = cases.map(({ heldTo }) => heldTo);
  const found = cases.map((one) => one.found);
  if (measure === "equal") return { close: "all equal", held: "equal" };
  if (measure === "digits")
    return { close: `${Math.min(...found).toFixed(1)} digits alike`, held: spread(held, (most) => `${most} digits`) };
  return { close: distance(Math.max(...found), measure), held: spread(held, (one) => distance(one, measure)) };
}

function spread(held: readonly number[], words: (one: number) => string): string {
  const [least, most] = [words(Math.min(...held)), words(Math.max(...held))];
  if (least === most) return least;
  // the unit stands once
  const [, number, unit] = /^([\d.]+(?: × 10\S+)?)(.*)$/.exec(least)!;
  return most.endsWith(unit) ? `${number} to ${most}` : `${least} to ${most}`;
}

/** A distance in its unit, to three digits; a share in per cent while that can be read. */
function distance(value: number, measure: string): string {
  if (measure !== "relative") return `${short(value)}${measure === "-" ? "" : ` ${measure}`}`;
  return value >= 1e-5 ? `${short(100 * value)} %` : short(value);
}

function short(value: number): string {
  if (value === 0) return "0";
  if (value >= 1e-4 && value < 1e4) return String(Number(value.toPrecision(3)));
  const [mantissa, exponent] = value.toExponential(1).split("e");
  return `${mantissa} × 10${[...exponent].map((sign) => RAISED[sign]).join("")}`;
}

const RAISED: Readonly<Record<string, string>> = Object.fromEntries(
  [..."+-0123456789"].map((sign, at) => [sign, ["", ..."⁻⁰¹²³⁴⁵⁶⁷⁸⁹"][at]]),
);
