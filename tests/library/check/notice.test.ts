import { describe, expect, it } from "vitest";
import { calmNotices, type Notice, noticeLines } from "../../../kernel-lib/library/src/check/notice";

const notice = (row: number | null, given: string | null, more: Partial<Notice> = {}): Notice => ({
  file: "log.csv",
  row,
  at: "column load",
  kind: "read",
  given,
  taken: given === null ? null : "0.6",
  says: "was taken as a share",
  ...more,
});

describe("noticeLines", () => {
  it("makes one line of what is alike, with the rows and the first that were given", () => {
    expect(noticeLines([notice(4, '"60 %"'), notice(3, '"60 %"'), notice(5, '"70 %"', { taken: "0.7" })])).toEqual([
      'log.csv rows 3 to 5, column load: was taken as a share ("60 %" as 0.6 and "70 %" as 0.7)',
    ]);
    const many = Array.from({ length: 9 }, (_, at) => notice(at, `"${at} %"`, { taken: null }));
    expect(noticeLines(many)).toEqual([
      'log.csv rows 0 to 8, column load: was taken as a share ("0 %", "1 %", "2 %" and 6 others)',
    ]);
  });

  it("keeps files, columns and sentences apart, and names a file without a row", () => {
    expect(
      noticeLines([
        notice(null, null, { at: null, says: "has a decimal comma" }),
        notice(2, null, { file: "b.jsonl" }),
        notice(2, null, { at: "column time" }),
      ]),
    ).toEqual([
      "log.csv: has a decimal comma",
      "b.jsonl line 2, column load: was taken as a share",
      "log.csv row 2, column time: was taken as a share",
    ]);
  });
});

describe("calmNotices", () => {
  it("tells every doubt and counts what was only typed in another way, in one line", () => {
    const notice = (row: number | null, kind: Notice["kind"], says: string, file = "a.csv"): Notice => ({
      file,
      row,
      at: null,
      kind,
      given: null,
      taken: null,
      says,
    });
    const all = [
      notice(2, "read", "was taken as minutes and seconds"),
      notice(3, "read", "was taken as a share of one"),
      notice(3, "doubt", "is cold"),
      notice(null, "read", "numbers were read with a decimal comma"),
      notice(4, "read", "was taken as the id", "b.csv"),
    ];
    expect(calmNotices(all)).toEqual([
      "a.csv row 3: is cold",
      "a.csv: numbers were read with a decimal comma",
      "a.csv and b.csv: 3 cells were typed in another way or left out, and read as meant; check-kitchen tells how",
    ]);
    expect(noticeLines(all)).toHaveLength(5);
  });
});
