import { describe, expect, it } from "vitest";
import { checkKitchen } from "../../../../kernel-lib/library/src/trials/check-kitchen";
import { starterFiles, withFile } from "../starter-files";

const LOG = "trials/first-log.csv";
const files = starterFiles("metric", 3);
const pan = (id: string): ReturnType<typeof checkKitchen> =>
  checkKitchen(withFile(files, LOG, (text) => text.replaceAll(",half-sheet,", `,${id},`)));

describe("settleNames", () => {
  it.each(["Half-Sheet", "half sheet", "HALF_SHEET", "half - sheet"])("takes %j as half-sheet, with a notice", (id) => {
    const { kitchen, problems, notices } = pan(id);
    expect(problems).toEqual([]);
    expect(kitchen?.trials.map(({ panId }) => panId)).toEqual(["half-sheet", "half-sheet", "half-sheet"]);
    expect(notices).toEqual([
      expect.stringMatching(/rows 2 to 4, column pan: was taken as the id in pans\.csv .* as half-sheet\)$/),
    ]);
  });

  it("takes no other name, and none that two ids could be", () => {
    expect(pan("halfsheet").problems).toHaveLength(1);
    expect(pan("half-sheets").problems).toHaveLength(1);
    const two = withFile(
      files,
      "pans.csv",
      (text) => `${text}${text.trimEnd().split("\n")[1].replace("half-sheet", "Half-Sheet")}\n`,
    );
    const { problems } = checkKitchen(withFile(two, LOG, (text) => text.replaceAll(",half-sheet,", ",half sheet,")));
    expect(problems).toEqual([
      expect.stringMatching(/column pan: expected one of half-sheet, Half-Sheet, got "half sheet"/),
    ]);
  });
});

describe("startNotices", () => {
  it("names trials that went in warm, of a variant that goes in frozen", () => {
    const warm = withFile(files, LOG, (text) => text.replace(",-18,", ",4,"));
    expect(checkKitchen(warm).notices).toEqual([
      expect.stringMatching(
        /^trials\/first-log\.csv row 2, column start_c: is above 0 °C, and first-variant goes in frozen \(4 °C\)$/,
      ),
    ]);
  });
});
