import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";

const HEADINGS =
  "trial,date,variant,pan,appliance,batch_g,thickness_mm,setpoint_c,load_fraction,start_c,flip_min,time_min,not_crisp_min,crisp_min,core_c,before_g,after_g,pieces,crisp_scores,brown_scores,note";
const GOOD = "T-1,2026-02-03,beet,half,basket,1150,8.1;8.3,200,0.6,-18,,11,9,10,81.5,120.4,101.2,8,6.5;7,4;5,";
const log = (...rows: string[]): string => [HEADINGS, ...rows].join("\n");
const withCell = (column: string, value: string): string => {
  const cells = GOOD.split(",");
  cells[HEADINGS.split(",").indexOf(column)] = value;
  return cells.join(",");
};

describe("readTrials", () => {
  it("reads a row, several probes and scores in one cell", () => {
    const { records, problems } = readTrials(log(GOOD), "log.csv");
    expect(problems).toEqual([]);
    expect(records[0]).toMatchObject({
      trialId: "T-1",
      probesMm: [8.1, 8.3],
      crispScores: [6.5, 7],
      flipMin: null,
      note: null,
    });
  });

  it("converts inches, pounds, ounces and °F once", () => {
    const heading = HEADINGS.replace("batch_g", "batch_lb")
      .replace("thickness_mm", "thickness_in")
      .replace("setpoint_c", "setpoint_f")
      .replace("core_c", "core_f")
      .replace("before_g", "before_oz");
    const row = "T-1,2026-02-03,beet,half,basket,2.5,0.25;0.5,400,0.6,-18,,11,9,10,165,4,100,8,6,4,";
    const [trial] = readTrials(`${heading}\n${row}`, "log.csv").records;
    expect(trial.batchG).toBeCloseTo(1133.981, 3);
    expect(trial.probesMm).toEqual([6.35, 12.7]);
    expect(trial.setpointC).toBeCloseTo(204.444, 3);
    expect(trial.coreC).toBeCloseTo(73.889, 3);
    expect(trial.massBeforeG).toBeCloseTo(113.398, 3);
  });

  it("says a mass in the heading's unit first", () => {
    const ounces = log(withCell("before_g", "7.8")).replace("before_g", "before_oz").replace("after_g", "after_oz");
    expect(readTrials(ounces, "log.csv").problems).toEqual([
      expect.stringMatching(/column after_oz: expected at most the mass before, 7\.8 oz \(221 g\), got/),
    ]);
  });

  it("says no mass of less than nothing, and that alone", () => {
    expect(readTrials(log(withCell("before_g", "-120.4")), "log.csv").problems).toEqual([
      expect.stringMatching(/^log\.csv row 2, column before_g: expected .*, got "-120\.4"$/),
    ]);
  });

  it("names file, row, column, value and expectation for every kind of damage, and loses no sound row", () => {
    const damaged = log(
      GOOD,
      withCell("thickness_mm", "8.1 kg"),
      withCell("setpoint_c", "400"),
      withCell("setpoint_c", "2O0"),
      withCell("date", "03/02/2026"),
      withCell("crisp_min", "8"),
      withCell("after_g", "131"),
      withCell("crisp_scores", "6;11"),
      withCell("pieces", "7.5"),
      withCell("time_min", ""),
      withCell("core_c", "178"),
      withCell("flip_min", "12"),
      withCell("trial", ""),
      `${GOOD},one too many`,
      withCell("trial", "T-2"),
    );
    const { records, problems } = readTrials(damaged, "log.csv");
    expect(records.map((trial) => trial.trialId)).toEqual(["T-1", "T-2"]);
    const expected = [
      "log.csv row 15: expected 21 cells, got 22",
      'log.csv row 3, column thickness_mm: expected numbers in mm with a decimal point, parted by semicolons, got "8.1 kg"',
      'log.csv row 4, column setpoint_c: expected a setpoint of 100 to 290 °C (212 to 554 °F); is this °F under a °C heading?, got "400"',
      'log.csv row 5, column setpoint_c: expected a number in °C with a decimal point, got "2O0"',
      'log.csv row 6, column date: expected a day such as 2026-03-14; this may be 2026-03-02 or 2026-02-03, and the heading "date (m/d/y)" or "date (d/m/y)" says which, got "03/02/2026"',
      'log.csv row 7, column crisp_min: expected a check after the last not-crisp one (9 min), got "8"',
      'log.csv row 8, column after_g: expected at most the mass before, 120 g (4.2 oz), got "131"',
      'log.csv row 9, column crisp_scores: expected scores from 0 to 9, got "6;11"',
      'log.csv row 10, column pieces: expected a whole number of pieces, got "7.5"',
      'log.csv row 11, column time_min: expected a time, got ""',
      'log.csv row 12, column core_c: expected a core temperature of -30 to 115 °C (-22 to 239 °F); is this °F under a °C heading?, got "178"',
      'log.csv row 13, column flip_min: expected at most the time of taking out (11 min), got "12"',
      'log.csv row 14, column trial: expected a trial name of letters, digits, points and dashes, got ""',
    ];
    for (const sentence of expected) expect(problems).toContain(sentence);
    expect(problems).toHaveLength(expected.length);
  });

  it("takes a crisp check alone, and none at the very minute of the last that was not", () => {
    const problems = (notCrisp: string, crisp: string): readonly string[] => {
      const cells = withCell("not_crisp_min", notCrisp).split(",");
      cells[HEADINGS.split(",").indexOf("crisp_min")] = crisp;
      return readTrials(log(cells.join(",")), "log.csv").problems;
    };
    expect([problems("", "9"), problems("9", ""), problems("9", "9.1")]).toEqual([[], [], []]);
    expect(problems("9", "9")).toEqual([
      'log.csv row 2, column crisp_min: expected a check after the last not-crisp one (9 min), got "9"',
    ]);
  });

  it("says which headings it knows when one is strange, missing its unit, of the wrong kind, or given twice", () => {
    const strange = (heading: string, instead: string): string =>
      readTrials(log(GOOD).replace(heading, instead), "log.csv").problems[0];
    expect(strange("thickness_mm", "thickness")).toBe(
      "log.csv row 1, column thickness: expected a heading that ends in its unit, such as thickness_mm",
    );
    expect(strange("thickness_mm", "thickness_g")).toBe(
      "log.csv row 1, column thickness_g: expected a unit of length, such as thickness_mm",
    );
    expect(strange("note", "thickness_in")).toBe(
      "log.csv row 1, column thickness_in: expected one column for thickness, got also thickness_mm",
    );
  });

  const without = (column: number, ...rows: string[]): string =>
    log(...rows)
      .split("\n")
      .map((line) => line.split(",").toSpliced(column, 1).join(","))
      .join("\n");

  it("says once that a column is missing, and before a row needs it", () => {
    const missing = ["log.csv row 1: expected a column setpoint_c (a setpoint), got none"];
    expect(readTrials(without(7, GOOD, withCell("trial", "T-2")), "log.csv").problems).toEqual(missing);
    expect(readTrials(without(7), "log.csv").problems).toEqual(missing);
    expect(readTrials(without(20, GOOD), "log.csv").problems).toEqual([]);
    const bare = withCell("thickness_mm", "").replace(",1150,", ",,");
    expect(readTrials(without(6, bare, bare.replace("T-1", "T-2")), "log.csv").problems).toEqual([
      "log.csv row 1: expected a column thickness_mm (probe readings, or else the batch mass), got none",
    ]);
  });

  it("takes a heading that was mistyped or renamed as one slip, with the name that was meant", () => {
    const renamed = (heading: string, instead: string): readonly string[] =>
      readTrials(log(GOOD, withCell("trial", "T-2")).replace(heading, instead), "log.csv").problems;
    expect(renamed("setpoint_c", "setpont_c")).toEqual([
      "log.csv row 1, column setpont_c: expected a known heading (nearest: setpoint_c)",
    ]);
    expect(renamed("date", "Date")).toEqual([]);
    expect(renamed("setpoint_c", "dial")).toEqual([
      "log.csv row 1, column dial: expected setpoint_c, which is missing",
    ]);
    expect(renamed("setpoint_c", "setpoint")).toEqual([
      "log.csv row 1, column setpoint: expected a heading that ends in its unit, such as setpoint_c",
    ]);
  });

  it("reads what stands under a mistyped heading, so that one reading tells all", () => {
    const text = log(withCell("setpoint_c", "90"), withCell("trial", "T 2")).replace("setpoint_c", "setpont_c");
    expect(readTrials(text.replace(HEADINGS.split(",")[0], "trail"), "log.csv").problems).toEqual([
      expect.stringMatching(/row 1, column trail: .* \(nearest: trial\)$/),
      expect.stringMatching(/row 1, column setpont_c: .* \(nearest: setpoint_c\)$/),
      'log.csv row 2, column setpont_c: expected a setpoint of 100 to 290 °C (212 to 554 °F), got "90"',
      'log.csv row 3, column trail: expected a trial name of letters, digits, points and dashes, got "T 2"',
    ]);
    const inFahrenheit = log(GOOD).replace("setpoint_c", "setpont_f");
    expect(readTrials(inFahrenheit, "log.csv").problems).toEqual([
      expect.stringMatching(/row 1, column setpont_f: .* \(nearest: setpoint_f\)$/),
      expect.stringMatching(/row 2, column setpont_f: expected a setpoint of 100 to 290 °C .*, got "200"$/),
    ]);
  });

  it("tells a slip that many rows share once, with all rows", () => {
    const rows = ["390", "400", "200", "380", "390", "410"].map((setpoint, at) =>
      withCell("setpoint_c", setpoint).replace("T-1", `T-${at}`),
    );
    expect(readTrials(log(...rows), "log.csv").problems).toEqual([
      'log.csv rows 2, 3 and 5 to 7, column setpoint_c: expected a setpoint of 100 to 290 °C (212 to 554 °F); is this °F under a °C heading?, got "390", "400", "380" and "410"',
    ]);
  });

  it("blames the time of taking out when it is before several looks", () => {
    expect(readTrials(log(withCell("time_min", "1.1")), "log.csv").problems).toEqual([
      'log.csv row 2, column time_min: expected a time of taking out that is not before 9 and 10 min, got "1.1"',
    ]);
  });

  it("leaves rows of empty cells out, and says once that it knows no heading", () => {
    const empty = ",".repeat(HEADINGS.split(",").length - 1);
    expect(readTrials(`${log(GOOD)}\n${empty}`, "log.csv")).toMatchObject({ problems: [], good: { length: 1 } });
    expect(readTrials("word\n1\n2", "log.csv").problems).toEqual([
      expect.stringMatching(/^log.csv row 1, column word: expected one of trial, date,/),
    ]);
  });

  it("reads a file of nothing but problems to its end", () => {
    const bad = `${GOOD.replace(/^[^,]+,/, "no name,").replace(",200,", ",20,")}\n`;
    const { problems, refused, whole } = readTrials(`${HEADINGS}\n${bad.repeat(101_000)}`, "log.csv");
    expect(refused).toHaveLength(101_000);
    expect(problems).toEqual([
      expect.stringMatching(/^log.csv rows 2 to 101001, column trial: expected .*, got "no name"$/),
      expect.stringMatching(/^log.csv rows 2 to 101001, column setpoint_c: expected .*, got "20"$/),
    ]);
    expect(whole).toBe(true);
  }, 60_000);

  it("wants probes or a batch mass", () => {
    const bare = withCell("thickness_mm", "").replace(",1150,", ",,");
    expect(readTrials(log(bare), "log.csv").problems).toEqual([
      'log.csv row 2, column thickness_mm: expected probe readings, or else the batch mass, got ""',
    ]);
  });
});

describe("what readTrials proposes", () => {
  const HEADINGS = "trial,date,variant,pan,appliance,batch_oz,setpoint_f,start_f,time_min,core_f";
  const read = (headings: string, row: string, units?: "us" | "metric"): readonly string[] =>
    readTrials(`${headings}\n${row}\n`, "l.csv", { units }).problems;
  const ROW = "T-1,2026-05-01,x,p,a,40,390,0,12,180";

  it("stands in the units of the log's other headings, or in the kitchen's", () => {
    expect(read(HEADINGS.replace(",setpoint_f", ",setpoint"), ROW)).toEqual([
      "l.csv row 1, column setpoint: expected a heading that ends in its unit, such as setpoint_f",
    ]);
    expect(read(HEADINGS.replace(",setpoint_f", ""), ROW.replace(",390", ""))).toEqual([
      "l.csv row 1: expected a column setpoint_f (a setpoint), got none",
    ]);
    expect(read(HEADINGS.replace(",setpoint_f", ",setpoint"), ROW, "metric")[0]).toContain("setpoint_c");
  });

  it("asks for another unit only where the heading has the one that is asked about", () => {
    expect(read(HEADINGS, ROW.replace(",180", ",280"))).toEqual([
      'l.csv row 2, column core_f: expected a core temperature of -30 to 115 °C (-22 to 239 °F), got "280"',
    ]);
    expect(read(HEADINGS, ROW.replace(",390", ",200"))[0]).toContain("is this °C under a °F heading?");
    expect(read(HEADINGS, ROW.replace(",390", ",700"))[0]).not.toContain("under a");
  });
});
