import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { readKitchenFolder } from "../../../kernel-lib/library/src/notebook/read-kitchen-folder";
import { checkKitchen } from "../../../kernel-lib/library/src/trials/check-kitchen";
import type { FolderFile } from "../../../kernel-lib/library/src/trials/kitchen-folder";
import { PRIVATE_THINGS, sharedKitchen } from "../../../kernel-lib/library/src/trials/shared-kitchen";

const SECRET = "SECRET";
const demo = readKitchenFolder(resolve(__dirname, "../../../data"), "test");
/** The demo with something private in every place that may hold it. */
const files: readonly FolderFile[] = demo.map((entry) => {
  const { file, text } = entry;
  if (text === null) return entry;
  if (file === "variants.csv") return { file, text: `# ${SECRET}\n${text}` };
  if (file === "trials/turkey-sage.csv") {
    const [comment, headings, first, ...rest] = text.split("\n");
    const more = rest.map((line) => (line === "" ? "" : `${line},,`));
    const cells = `${first.slice(0, first.lastIndexOf(","))},${SECRET} note,${SECRET}.jpg,${SECRET} own`;
    return { file, text: [comment, `${headings},photo,mood`, cells, ...more].join("\n") };
  }
  if (file === "ingredients.csv") {
    const lines = text.split("\n");
    const at = lines[0].split(",").indexOf("cost_per_kg");
    const row = lines.findIndex((line) => line.startsWith("sage") || line.startsWith("salt-fine"));
    const cells = lines[row].split(",");
    if (!lines[row].includes('"')) cells[at] = "987.65";
    return { file, text: lines.with(row, cells.join(",")).join("\n") };
  }
  return entry;
});
const asText = (shared: ReturnType<typeof sharedKitchen>): string =>
  shared.files.map(({ file, content }) => `${file}\n${content}`).join("\n");
const check = (shared: ReturnType<typeof sharedKitchen>): ReturnType<typeof checkKitchen> =>
  checkKitchen(shared.files.map(({ file, content }) => ({ file, text: String(content) })));

describe("sharedKitchen", () => {
  it("leaves at home what is private and says so, and what goes is a whole kitchen", () => {
    const shared = sharedKitchen({ files, variantIds: ["turkey-sage"] });
    const text = asText(shared);
    expect(text).not.toContain(SECRET);
    expect(text).not.toContain("987.65");
    expect(text).not.toContain("pollock");
    expect(text).not.toContain("beet-lentil");
    expect(shared.leftOut).toEqual(
      expect.arrayContaining([
        "variants.csv: lines that begin with #",
        "trials/turkey-sage.csv: notes, column mood",
        "4 other products with formulas and trials",
        "1 photograph",
      ]),
    );
    const { kitchen, problems } = check(shared);
    expect(problems).toEqual([]);
    expect(kitchen?.variants.map(({ variantId }) => variantId)).toEqual(["turkey-sage"]);
    const own = checkKitchen(files).kitchen?.trials.filter(({ variantId }) => variantId === "turkey-sage");
    const bare = own?.map((trial) => ({ ...trial, note: null, extra: {}, photos: [] }));
    expect(kitchen?.trials).toEqual(bare);
  });

  it("knows what is private under other headings, in ids of other capitals and in a formula that is a table", () => {
    const dressed = files.flatMap((entry): readonly FolderFile[] => {
      const { file, text } = entry;
      if (text === null) return [entry];
      if (file === "variants.csv") {
        const named = text.replace(/^variant,(.*),note$/m, "Variant,$1,Note").replace(/^turkey-sage,/m, "Turkey sage,");
        return [{ file, text: named.replace(/^(Turkey sage,.*,)[^,]*$/m, `$1${SECRET}`) }];
      }
      if (file === "trials/turkey-sage.csv") return [{ file, text: text.replaceAll(",turkey-sage,", ",Turkey-sage,") }];
      if (file !== "formulas/turkey-sage.json") return [entry];
      return [{ file: "formulas/turkey-sage.csv", text: `# ${SECRET}\ningredient,amount\nturkey-ground-93,1 kg\n` }];
    });
    const shared = sharedKitchen({ files: dressed, variantIds: ["Turkey-sage"] });
    expect(asText(shared)).not.toContain(SECRET);
    expect(shared.leftOut).toContain("formulas/turkey-sage.csv: lines that begin with #");
    expect(check(shared)).toMatchObject({ problems: [], kitchen: { variants: [{ variantId: "Turkey-sage" }] } });
  });

  it("takes along what is asked for, and leaves a file as it is where nothing of it stays at home", () => {
    const shared = sharedKitchen({ files, take: PRIVATE_THINGS });
    expect(shared.leftOut).toEqual([]);
    expect(shared.photos).toEqual([`${SECRET}.jpg`]);
    for (const { file, content } of shared.files) expect(content).toBe(files.find((one) => one.file === file)?.text);
    expect(check(shared).problems).toEqual([]);
  });

  it("keeps prices and stock at home unless costs go along, and the packs of other products always", () => {
    const of = (take: typeof PRIVATE_THINGS | []) => sharedKitchen({ files, variantIds: ["turkey-sage"], take });
    const bare = of([]);
    expect(bare.files.some(({ file }) => file === "pantry.csv")).toBe(false);
    expect(bare.leftOut).toContain("pantry.csv: prices and stock");
    const own = check(bare).kitchen;
    expect(own?.packs?.length).toBeGreaterThan(0);
    expect(own?.packs?.every(({ variantId }) => variantId === "turkey-sage")).toBe(true);
    const priced = check(of(["costs"] as never)).kitchen;
    expect(priced?.pantry?.length).toBeGreaterThan(5);
    expect(priced?.pantry?.length).toBeLessThan(20);
  });

  it("takes every trial along whose cells name the variant in other capitals and blanks", () => {
    const typed = files.map((entry) =>
      entry.file === "trials/turkey-sage.csv" && entry.text !== null
        ? { ...entry, text: entry.text.replaceAll(",turkey-sage,", ",Turkey Sage,") }
        : entry,
    );
    const own = checkKitchen(typed).kitchen?.trials.filter(({ variantId }) => variantId === "turkey-sage");
    expect(own?.length).toBeGreaterThan(10);
    const kitchen = check(sharedKitchen({ files: typed, variantIds: ["turkey-sage"] })).kitchen;
    expect(kitchen?.trials.map(({ trialId }) => trialId)).toEqual(own?.map(({ trialId }) => trialId));
  });

  it("refuses a variant and a thing that it does not know", () => {
    expect(() => sharedKitchen({ files, variantIds: ["turkey-sages"] })).toThrow(
      'sharedKitchen: variantIds must be of the kitchen\'s variants, beet-lentil, turkey-sage, pollock-dill, chickpea-carrot, corn-puff (nearest: turkey-sage), got "turkey-sages"',
    );
    expect(() => sharedKitchen({ files, take: ["secrets" as "notes"] })).toThrow("must be of notes, photos, costs");
  });
});
