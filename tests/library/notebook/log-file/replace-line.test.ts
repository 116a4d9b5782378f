import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addLine } from "../../../../kernel-lib/library/src/notebook/log-file/add-line";
import { historyPath, readHistory } from "../../../../kernel-lib/library/src/notebook/log-file/log-history";
import { replaceLine } from "../../../../kernel-lib/library/src/notebook/log-file/replace-line";
import { undoLast } from "../../../../kernel-lib/library/src/notebook/log-file/undo-last";

let folder: string;
let log: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "log-"));
  log = join(folder, "log.csv");
  writeFileSync(log, "trial,core\r\nA,70\r\nAB,70\r\n");
});
afterEach(() => rmSync(folder, { recursive: true }));

const text = (): string => readFileSync(log, "utf8");
const who = { by: "cook", why: "misread" };
const correct = (before: string, after: string): unknown =>
  replaceLine(log, { what: "correct", trialId: before.split(",")[0], before, after, ...who });

describe("replaceLine", () => {
  it("changes one line, and keeps the old one with who and why", () => {
    correct("A,70", "A,71");
    expect(text()).toBe("trial,core\r\nA,71\r\nAB,70\r\n");
    expect(readHistory(log).deeds).toMatchObject([
      { what: "correct", trialId: "A", before: "A,70", after: "A,71", ...who },
    ]);
  });

  it("changes nothing when the line is not there, only part of one, or there twice", () => {
    const before = text();
    for (const line of ["B,70", ",70", "A,7"])
      expect(() => correct(line, "A,1")).toThrow("must stand in log.csv once as it was read");
    writeFileSync(log, `${before}A,70\r\n`);
    expect(() => correct("A,70", "A,1")).toThrow("once");
    expect(text()).toBe(`${before}A,70\r\n`);
  });

  it("refuses a file that is not UTF-8, as writing it again would change it", () => {
    const latin = Uint8Array.from([
      ...new TextEncoder().encode("trial,note\nA,cr"),
      0xe8,
      ...new TextEncoder().encode("me\nB,x\n"),
    ]);
    writeFileSync(log, latin);
    expect(() => correct("B,x", "B,y")).toThrow(
      'log.csv must be UTF-8 text, got "another encoding: save it as CSV in UTF-8 first"',
    );
    expect(new Uint8Array(readFileSync(log))).toEqual(latin);
  });
});

describe("undoLast", () => {
  it("gives back, step by step, every state of the log, to the byte", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.boolean(), fc.nat(9)), { minLength: 1, maxLength: 12 }), (steps) => {
        rmSync(join(folder, ".history"), { recursive: true, force: true });
        writeFileSync(log, "trial,core\nA,70\n");
        const states: string[] = [];
        const lines = ["A,70"];
        steps.forEach(([isNew, pick], at) => {
          states.push(text());
          if (isNew) {
            lines.push(`N${at},"two\nlines"`);
            addLine(log, { trialId: `N${at}`, line: lines.at(-1) as string, by: null });
          } else {
            const which = pick % lines.length;
            const after = `C${at},5`;
            correct(lines[which], after);
            lines[which] = after;
          }
        });
        for (const state of states.reverse()) {
          undoLast(log, who);
          expect(text()).toBe(state);
        }
        expect(() => undoLast(log, who)).toThrow("must hold something to take back");
      }),
      { numRuns: 10 },
    );
  });

  it("leaves a line alone that was changed by hand since", () => {
    correct("A,70", "A,71");
    writeFileSync(log, text().replace("A,71", "A,72"));
    expect(() => undoLast(log, who)).toThrow("must stand in log.csv once as it was read");
    expect(text()).toContain("A,72");
  });
});

describe("readHistory", () => {
  it("leaves out and counts a line that was damaged, and goes on after one that was cut off", () => {
    correct("A,70", "A,71");
    correct("AB,70", "AB,71");
    const path = historyPath(log);
    const lines = readFileSync(path, "utf8");
    writeFileSync(path, `${lines.replace("A,71", "A,79")}{"at":"20`);
    expect(readHistory(log)).toMatchObject({ damaged: 2, deeds: [{ after: "AB,71" }] });
    correct("A,71", "A,73");
    expect(readHistory(log)).toMatchObject({ damaged: 1, deeds: [{ after: "AB,71" }, { after: "A,73" }] });
  });
});
