/** What the tables take from the library, as its doors show it. */
export interface LibraryFacts {
  readonly coreLimit: (foodClass?: never) => {
    readonly limitC: number;
    readonly limitF: number;
    readonly holdS: number;
    readonly source: string;
  };
  readonly storageLives: Readonly<Record<string, { readonly days: number; readonly source: string }>>;
  readonly crispPriors: (options: {
    readonly applianceIds: readonly string[];
    readonly crustWaterKgM3: number;
    readonly coated: boolean;
  }) => readonly {
    readonly name: string;
    readonly label: string;
    readonly unit: string;
    readonly scale: "log" | "plain";
    readonly middle: number;
    readonly spread: number;
    readonly from: string;
    readonly informedBy: string;
  }[];
}

/** The classes that a formula may state, raw ones first. */
export const FOOD_CLASSES: readonly string[] = [
  "poultry",
  "groundMeat",
  "wholeMeat",
  "fish",
  "egg",
  "plant",
  "readyToEat",
];

/** Tables of the library's own constants for the pages of models, by the name that a page calls them by. */
export function modelTables(facts: LibraryFacts): Readonly<Record<string, string>> {
  return {
    "core limits": table(
      ["class", "core", "held", "source"],
      [...FOOD_CLASSES, undefined].map((foodClass) => {
        const { limitC, limitF, holdS, source } = facts.coreLimit(foodClass as never);
        return [inWords(foodClass), `${limitC}\u00a0°C (${limitF}\u00a0°F)`, holdS === 0 ? "no" : `${holdS} s`, source];
      }),
    ),
    "storage lives": table(
      ["food", "days at −18 °C", "source"],
      Object.entries(facts.storageLives).map(([food, { days, source }]) => [food, String(days), source]),
    ),
    priors: table(
      ["constant", "before a trial (95 %)", "from", "what tells more"],
      facts.crispPriors({ applianceIds: ["an appliance"], crustWaterKgM3: 1, coated: true }).map((prior) => {
        const { name, label, unit, scale, middle, spread, from, informedBy } = prior;
        const [low, high] =
          scale === "log"
            ? [middle / spread ** 1.96, middle * spread ** 1.96]
            : [middle - 1.96 * spread, middle + 1.96 * spread];
        // its middle is the formula's own
        const usual =
          name === "crustWater"
            ? `that of coating or mix, times ${digits(low)} to ${digits(high)}`
            : `${digits(middle)} (${digits(low)} to ${digits(high)}) ${unit}`.trim();
        return [label, usual, from, informedBy];
      }),
    ),
  };
}

/** `groundMeat` as a person says it. */
function inWords(foodClass: string | undefined): string {
  return foodClass?.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`) ?? "not stated";
}

function digits(value: number): string {
  return String(Number(value.toPrecision(3))).replace("-", "−");
}

/** A table in Markdown; what stands in a cell is text. */
function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replace(/[|<>*[\]\\]/g, "\\$&")).join(" | ")} |`;
  return [line(headings), line(headings.map(() => "---")), ...rows.map(line)].join("\n");
}
