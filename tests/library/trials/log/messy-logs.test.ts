// Logs as people keep them, each in another hand, all invented; what must come out of each is written by hand.
import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../../kernel-lib/library/src/check/notice";
import { type ReadTrialsOptions, readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import type { Trial } from "../../../../kernel-lib/library/src/trials/trial";
import { workbook } from "./workbook";

interface MessyLog {
  readonly file: string;
  readonly content: string | Uint8Array;
  readonly options?: ReadTrialsOptions;
  /** trials in order; numbers in kitchen units */
  readonly trials: readonly Partial<Trial>[];
  readonly good?: number;
  readonly refused?: readonly (string | RegExp)[];
  readonly aside?: readonly number[];
  readonly notices: readonly (string | RegExp)[];
}

const lines = (...rows: string[]): string => `${rows.join("\n")}\n`;
const near = (value: number): number => expect.closeTo(value, 6) as unknown as number;

const LOGS: Readonly<Record<string, MessyLog>> = {
  "a US spreadsheet: month first, pounds and ounces, fractions, °F, per cent": {
    file: "spring.csv",
    content: lines(
      "Trial #,Date,Product,Tray,Air Fryer,Batch (lb oz),Thickness (in),Setpoint (°F),Load %,Start Temp (F),Time (min),Core temp F,Notes",
      'R1,3/14/2026,rice,half,basket,2 lb 10 oz,3/8; 7/16; 0.4,390,60,0,11,165/170/168,"crisp, a bit pale"',
      "R2,3/4/2026,rice,half,basket,1 lb,⅜;1/2,390 F,60%,0,12:30,171,",
    ),
    trials: [
      {
        trialId: "R1",
        date: "2026-03-14",
        variantId: "rice",
        applianceId: "basket",
        batchG: near(42 * 28.349523125),
        probesMm: [near(9.525), near(11.1125), near(10.16)],
        setpointC: near((390 - 32) / 1.8),
        loadFraction: 0.6,
        startC: near(-32 / 1.8),
        coreC: near((165 - 32) / 1.8),
        coresC: [near((165 - 32) / 1.8), near((170 - 32) / 1.8), near((168 - 32) / 1.8)],
        note: "crisp, a bit pale",
      },
      {
        date: "2026-03-04",
        batchG: near(453.59237),
        probesMm: [near(9.525), near(12.7)],
        timeMin: 12.5,
        coreC: near((171 - 32) / 1.8),
      },
    ],
    notices: [
      /row 2, column Date: was taken as month, day and year \("3\/14\/2026" as 2026-03-14\)$/,
      /row 2, column Core temp F: has several readings; the coldest counts \("165\/170\/168" as 73\.8889 °C\)$/,
      /row 3, column Date: was taken as month, day and year, as other days of the file or its heading say \("3\/4\/2026" as 2026-03-04\)$/,
      /row 3, column Time \(min\): was taken as minutes and seconds \("12:30" as 12\.5 min\)$/,
    ],
  },

  "a semicolon export with decimal commas, points for thousands, day first": {
    file: "export.csv",
    content: `\ufeff${lines(
      "Trial;Date;Variant;Pan;Appliance;Batch [g];Thickness [mm];Setpoint [°C];Load;Start [°C];Time [min];Core [°C];Crisp scores;Note",
      'G-1;14.3.2026;rice;half;basket;1.150;"8,1; 8,3; 8,2";200;0,6;-18;12,5;81,5;"7;6,5";weich; nicht fest'.replace(
        "weich; nicht fest",
        '"weich; nicht ""fest"""',
      ),
      "G-2;3.4.2026;rice;half;basket;1150,5;8,4;205;60 %;–18;11;n/a;;",
    )}`,
    trials: [
      {
        trialId: "G-1",
        date: "2026-03-14",
        batchG: 1150,
        probesMm: [8.1, 8.3, 8.2],
        loadFraction: 0.6,
        timeMin: 12.5,
        coreC: 81.5,
        crispScores: [7, 6.5],
        note: 'weich; nicht "fest"',
      },
      { date: "2026-04-03", batchG: 1150.5, loadFraction: 0.6, startC: -18, coreC: null, crispScores: [] },
    ],
    notices: [
      "export.csv: numbers were read with a decimal comma",
      /row 2, column Date: was taken as day, month and year \("14\.3\.2026" as 2026-03-14\)$/,
      /row 2, column Batch \[g\]: the mark was taken to part thousands \("1\.150" as 1150 g\)$/,
      /row 3, column Date: was taken as day, month and year, as other days/,
      /row 3, column Load: was taken as a share of one \("60 %" as 0\.6\)$/,
      /row 3, column Core \[°C\]: says that it is not known, and was kept so \("n\/a"\)$/,
    ],
  },

  "cells pasted with tabs, initials in the scores, a quote in a note": {
    file: "paste.tsv",
    content:
      "trial\tdate\tvariant\tpan\tappliance\tthickness_mm\tsetpoint_c\tstart_c\ttime_min\tcrisp_scores\tbrown_scores\tnote\r\n" +
      'P-1\t2026-03-01\trice\thalf\tbasket\t8.1 / 8.4\t200\t-18\t12\tAB:7; CD:6.5\tAB: 3; CD: 2\ta piece 9" wide\r\n' +
      "P-2\t2026-03-01\trice\thalf\tbasket\t8.1|8.2\t200\t-18\t11\t7/8/6\t–\t\r\n",
    trials: [
      {
        probesMm: [8.1, 8.4],
        crispScores: [7, 6.5],
        crispTasters: ["AB", "CD"],
        brownScores: [3, 2],
        brownTasters: ["AB", "CD"],
        note: 'a piece 9" wide',
      },
      { probesMm: [8.1, 8.2], crispScores: [7, 8, 6], crispTasters: [], brownScores: [], note: null },
    ],
    good: 1,
    notices: [
      "paste.tsv row 2: a quote that encloses no whole cell was taken as a character (cell 12)",
      'paste.tsv row 3, column brown_scores: says that it is not known, and was kept so ("–")',
    ],
  },

  "a title above the headings, units below them, a blank line, averages at the end": {
    file: "report.csv",
    content: lines(
      "Reheats of March,,,,,,,,",
      ",,,,,,,,",
      "Trial,Date,Variant,Pan,Appliance,Thickness,Setpoint,Start,Time",
      ",,,,,(mm),(°C),(°C),min",
      "M1,2026-03-01,rice,half,basket,8.1,200,-18,12",
      "",
      "M2,2026-03-02,rice,half,basket,8.5,200,-18,12.5",
      "Average,,,,,8.3,200,-18,12.25",
    ),
    trials: [
      { trialId: "M1", probesMm: [8.1], setpointC: 200, startC: -18, timeMin: 12 },
      { trialId: "M2", probesMm: [8.5], timeMin: 12.5 },
    ],
    good: 2,
    aside: [1, 2, 4, 8],
    notices: [
      "report.csv rows 1 and 2: stands above the headings, not read",
      "report.csv row 4: is a row of units below the headings, no trial",
      "report.csv row 8: looks like totals or averages, no trial",
    ],
  },

  "old line ends, a log of three trials without a final one": {
    file: "old.csv",
    content:
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,time_min\rO-1,2026-03-01,rice,half,basket,900,200,-18,12\rO-2,2026-03-01,rice,half,basket,900,200,-18,13",
    trials: [{ trialId: "O-1" }, { trialId: "O-2", timeMin: 13 }],
    good: 2,
    notices: [],
  },

  "a column of minutes and seconds, never crisp, not turned, a column of its own": {
    file: "clock.csv",
    content: lines(
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,flip (mm:ss),not crisp (mm:ss),crisp (mm:ss),time (mm:ss),humidity outside",
      "C-1,2026-03-01,rice,half,basket,900,200,-18,6:00,9:30,11:00,12:00,rain",
      "C-2,2026-03-01,rice,half,basket,900,200,-18,no,12:00,never,12:00,",
    ),
    trials: [
      { flipMin: 6, notCrispMin: 9.5, crispMin: 11, timeMin: 12, extra: { "humidity outside": "rain" } },
      { flipMin: null, crispMin: null, extra: {} },
    ],
    good: 1,
    notices: [
      "clock.csv row 1, column humidity outside: is no column that is known, and is kept with its trials as it is",
      'clock.csv row 3, column flip (mm:ss): says that it never was, and was kept so ("no")',
      'clock.csv row 3, column crisp (mm:ss): says that it never was, and was kept so ("never")',
    ],
  },

  "days by name, hands that approximate, units in the cells under headings without": {
    file: "words.csv",
    content: lines(
      "Run,Day,Variant,Pan,Oven,Batch,Set point,Start,Time out,Core",
      "W1,14 Mar 2026,rice,half,fan,1 kg,200 C,-18 C,12 min,~75 C",
      'W2,"March 15, 2026",rice,half,fan,2 lb 3 oz,400 °F,0 F,11 min 30 s,?',
    ),
    trials: [
      { date: "2026-03-14", batchG: 1000, setpointC: 200, startC: -18, timeMin: 12, coreC: 75 },
      {
        date: "2026-03-15",
        batchG: near(35 * 28.349523125),
        setpointC: near(204.444444444),
        startC: near(-17.777777777),
        timeMin: 11.5,
        coreC: null,
      },
    ],
    notices: [
      /row 2, column Day: was taken as the day that it names \("14 Mar 2026" as 2026-03-14\)$|rows 2 and 3, column Day: was taken as the day that it names \("14 Mar 2026" as 2026-03-14 and "March 15, 2026" as 2026-03-15\)$/,
      /row 2, column Core: about so much was taken as so much \("~75 C" as 75 °C\)$/,
      /row 3, column Core: says that it is not known, and was kept so \("\?"\)$/,
    ],
  },

  "notes with quotes, commas and line ends, and one quote that is never closed": {
    file: "notes.csv",
    content: lines(
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,time_min,note",
      'N1,2026-03-01,rice,half,basket,900,200,-18,12,"said ""good"", twice',
      'and again"',
      'N2,2026-03-01,rice,half,basket,900,200,-18,12.5,"soft',
      "N3,2026-03-01,rice,half,basket,901,200,-18,12,fine",
      "N4,2026-03-01,rice,half,basket,902,1e999,-18,12,fine",
    ),
    trials: [{ trialId: "N1", note: 'said "good", twice\nand again' }, { trialId: "N3" }],
    good: 2,
    refused: [
      /^notes\.csv row 4: expected a quote that ends the cell it begins, got "\\"soft"$/,
      /^notes\.csv row 6, column setpoint_c: expected a number in °C with a decimal point, got "1e999"$/,
    ],
    notices: [],
  },

  "days that could be read in two ways": {
    file: "days.csv",
    content: lines(
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,time_min",
      "D1,11/3/2026,rice,half,basket,900,200,-18,12",
      "D2,2026-03-12,rice,half,basket,900,200,-18,13",
    ),
    trials: [{ trialId: "D2" }],
    good: 1,
    refused: [
      'days.csv row 2, column date: expected a day such as 2026-03-14; this may be 2026-11-03 or 2026-03-11, and the heading "date (m/d/y)" or "date (d/m/y)" says which, got "11/3/2026"',
    ],
    notices: [],
  },

  "the same days under a heading that says their order": {
    file: "days.csv",
    content: lines(
      "trial,date (d/m/y),variant,pan,appliance,batch_g,setpoint_c,start_c,time_min",
      "D1,11/3/2026,rice,half,basket,900,200,-18,12",
    ),
    trials: [{ date: "2026-03-11" }],
    notices: [/row 2, column date \(d\/m\/y\): was taken as day, month and year, .* \("11\/3\/2026" as 2026-03-11\)$/],
  },

  "numbers that are possible and unlikely": {
    file: "odd.csv",
    options: { today: "2026-11-26" },
    content: lines(
      "trial,date,variant,pan,appliance,thickness_mm,setpoint_c,load_fraction,start_f,time_min,core_f",
      "U1,2013-03-01,rice,half,basket,0.35,200,1.1,-18,12.30,75",
      "U2,2026-12-24,rice,half,basket,8.1,200,0.6,64,12,32",
    ),
    trials: [
      { probesMm: [0.35], loadFraction: 1.1, startC: near(-27.777777777), timeMin: 12.3, coreC: near(23.888888888) },
      { startC: near(17.777777777), coreC: 0 },
    ],
    notices: [
      /row 2, column core_f: is cold for pieces heated so long; is the heading's unit right\? \("75" as 23\.9 °C\)$/,
      /row 2, column start_f: is colder than most freezers; is the heading's unit right\? \("-18" as -27\.8 °C\)$/,
      /row 2, column thickness_mm: has a reading under 2 mm \("0\.35" as 0\.35 mm\)$/,
      /row 2, column load_fraction: is more than the whole floor \("1\.1" as 1\.1\)$/,
      /row 2, column date: lies years back \("2013-03-01"\)$/,
      /row 2, column time_min: was read as a decimal number; is it minutes and seconds\? \("12\.30"\)$/,
      /row 3, column core_f: is 0 °C; was it measured\? \("32" as 0 °C\)$/,
      /row 3, column start_f: is warm for pieces from the freezer or fridge; is a minus sign missing\? \("64" as 17\.8 °C\)$/,
      /row 3, column date: lies in the future \("2026-12-24"\)$/,
    ],
  },

  "a time in seconds that was minutes": {
    file: "seconds.csv",
    content: lines(
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,not_crisp_s,crisp_s,time_s",
      "S1,2026-03-01,rice,half,basket,900,200,-18,9,11,12",
    ),
    trials: [{ timeMin: 0.2, notCrispMin: 0.15, crispMin: near(11 / 60) }],
    notices: [/row 2, column time_s: is under 1 1\/2 minutes; is the heading's unit right\? \("12" as 0\.2 min\)$/],
  },

  "two logs pasted one below the other, a row typed twice": {
    file: "twice.csv",
    content: lines(
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,time_min",
      "T1,2026-03-01,rice,half,basket,900,200,-18,12",
      "trial,date,variant,pan,appliance,batch_g,setpoint_c,start_c,time_min",
      "T2,2026-03-01,rice,half,basket,900,200,-18,12",
    ),
    trials: [{ trialId: "T1" }, { trialId: "T2" }],
    good: 1,
    aside: [3],
    notices: [
      "twice.csv row 3: holds the headings once more, no trial",
      'twice.csv row 4: holds the same as row 2 under another name, and counts once ("T2")',
    ],
  },

  "a log in the letters of an old Windows program": {
    file: "windows.csv",
    content: Uint8Array.from(
      lines(
        "trial,date,variant,pan,appliance,batch_g,setpoint (°C),start (°C),time_min,note",
        "X1,2026-03-01,rice,half,basket,900,200,-18,12,crème",
      ),
      (letter) => letter.codePointAt(0) as number,
    ),
    trials: [{ setpointC: 200, note: "crème" }],
    good: 1,
    notices: ["windows.csv: is no UTF-8 text, and was read as windows-1252"],
  },

  "JSON Lines by fields, by headings, and one that is damaged": {
    file: "log.jsonl",
    content: lines(
      '{"trialId":"J1","date":"2026-03-01","variantId":"rice","panId":"half","applianceId":"basket","probesMm":[8.1,8.3],"setpointC":200,"startC":-18,"timeMin":12,"coreC":80,"coresC":[80,82],"crispScores":[7,6],"crispTasters":["AB","CD"],"programme":[{"setpointC":200,"timeMin":6},{"setpointC":205,"timeMin":6}],"preheated":true,"ageDays":4,"flipMin":null,"extra":{"weather":"rain"}}',
      '{"trialId":"J2","date":"2026-03-01","variantId":"rice","panId":"half","applianceId":"basket","probesMm":[8.4],"setpointC":200,"startC":-18,"timeMin":12',
    ),
    trials: [
      {
        trialId: "J1",
        probesMm: [8.1, 8.3],
        coreC: 80,
        coresC: [80, 82],
        crispTasters: ["AB", "CD"],
        programme: [
          { setpointC: 200, timeMin: 6 },
          { setpointC: 205, timeMin: 6 },
        ],
        preheated: true,
        ageDays: 4,
        flipMin: null,
        extra: { weather: "rain" },
      },
    ],
    refused: [/^log\.jsonl line 2: expected a trial as JSON on a line of its own/],
    notices: [
      "log.jsonl column weather: is no column that is known, and is kept with its trials as it is",
      /line 1, column coreC: has several readings; the coldest counts \("80;82" as 80 °C\)$/,
    ],
  },

  "a workbook: real days, times of day, a formula, a hidden row, merged cells, a second sheet": {
    file: "spring.xlsx",
    content: workbook({
      sheets: {
        Log: [
          ["Reheats"],
          [
            "Trial",
            "Date",
            "Variant",
            "Pan",
            "Appliance",
            "Batch (g)",
            "Setpoint (°F)",
            "Start (°F)",
            "Time (min)",
            "Load",
            "Note",
          ],
          [
            "X1",
            { v: 46095, z: "m/d/yyyy" },
            "rice",
            "half",
            "basket",
            { v: 1150.25, f: "1000+150.25" },
            390,
            0,
            { v: 0.5208333333333334, z: "h:mm" },
            { v: 0.6, z: "0%" },
            "fine",
          ],
          ["X2", { v: 46096, z: "m/d/yyyy" }, "rice", "half", "basket", 1150, 390, 0, 12.5, 0.6, null],
        ],
        Ideas: [["buy oil"]],
      },
      merged: ["A1:C1"],
      hiddenRows: [4],
    }),
    trials: [
      {
        trialId: "X1",
        date: "2026-03-14",
        batchG: 1150.25,
        setpointC: near((390 - 32) / 1.8),
        timeMin: 12.5,
        loadFraction: 0.6,
        note: "fine",
      },
      { trialId: "X2", date: "2026-03-15", timeMin: 12.5, note: null },
    ],
    good: 1,
    aside: [1],
    notices: [
      'spring.xlsx: has a sheet that was not read ("Ideas")',
      "spring.xlsx row 1: has merged cells, of which the first alone holds the value (A1:C1)",
      "spring.xlsx row 4: is hidden in the sheet, and was read",
      "spring.xlsx row 1: stands above the headings, not read",
      'spring.xlsx row 3, column Time (min): was taken as minutes and seconds ("12:30" as 12.5 min)',
      'spring.xlsx row 3, column Load: was taken as a share of one ("60 %" as 0.6)',
    ],
  },

  "a workbook that counts its days from 1904, with errors of the sheet": {
    file: "mac.xlsx",
    options: { sheet: "May" },
    content: workbook({
      is1904: true,
      sheets: {
        April: [],
        May: [
          [
            "trial",
            "date",
            "variant",
            "pan",
            "appliance",
            "thickness_mm",
            "setpoint_c",
            "start_c",
            "time_min",
            "core_c",
          ],
          ["Y1", { v: 44633, z: "dd/mm/yyyy" }, "rice", "half", "basket", "8.1; 8.3", 200, -18, 12, { v: 42, t: "e" }],
          ["Y2", { v: 44633, z: "dd/mm/yyyy" }, "rice", "half", "basket", "8.1; 8.3", 200, -18, 12, { v: 7, t: "e" }],
        ],
      },
    }),
    trials: [{ date: "2026-03-14", probesMm: [8.1, 8.3], coreC: null }],
    refused: [
      /^mac\.xlsx row 3, column core_c: expected numbers in °C with a decimal point, parted by semicolons, got "#DIV\/0!"$/,
    ],
    notices: ['mac.xlsx row 2, column core_c: says that it is not known, and was kept so ("#N/A")'],
  },
};

describe("readTrials takes what a careful person would take", () => {
  it.each(Object.entries(LOGS))(
    "%s",
    (_, { file, content, options, trials, good = 0, refused = [], aside = [], notices }) => {
      const read = readTrials(content, file, options);
      expect(read.problems).toEqual(
        refused.map((line) => (typeof line === "string" ? line : expect.stringMatching(line))),
      );
      expect(noticeLines(read.notices)).toEqual(
        notices.map((line) => (typeof line === "string" ? line : expect.stringMatching(line))),
      );
      expect(read.records).toHaveLength(trials.length);
      for (const [at, trial] of trials.entries()) expect(read.records[at]).toMatchObject(trial);
      expect(read.good).toHaveLength(good);
      expect(read.aside).toEqual(aside);
      expect(read.good.length + read.kept.length).toBe(trials.length);
    },
  );
});
