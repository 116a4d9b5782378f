import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../../kernel-lib/library/src/check/notice";
import { readLogRows } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import { startNotices } from "../../../../kernel-lib/library/src/trials/log/start-notices";
import { readVariants } from "../../../../kernel-lib/library/src/trials/variant";

const { records: variants } = readVariants(
  "variant,formula,pan,batch_g,rows,columns,appliance,setpoint_c,start_c\nx,m,p,900,6,8,a,200,-18\ny,m,p,900,6,8,a,200,4\n",
  "v.csv",
);
const told = (variant: string, heading: string, start: string): readonly string[] => {
  const text = `trial,date,variant,pan,appliance,batch_g,setpoint_c,${heading},time_min\nT-1,2026-05-01,${variant},p,a,900,200,${start},12\n`;
  return noticeLines(startNotices({ ...readLogRows(text, "l.csv"), file: "l.csv" }, variants));
};

describe("startNotices", () => {
  it("asks about 0 meant as °F under a °C heading, and about a minus sign that is missing", () => {
    expect(told("x", "start_c", "0")).toEqual([
      "l.csv row 2, column start_c: is far warmer than x goes in; is it °F? 0 °F are -18 °C (0 °C)",
    ]);
    expect(told("x", "start_c", "18")).toEqual([
      "l.csv row 2, column start_c: is above 0 °C, and x goes in frozen (18 °C)",
    ]);
  });

  it("is silent where pieces go in as their variant does, or a little warmer", () => {
    for (const [variant, heading, start] of [
      ["x", "start_f", "0"],
      ["x", "start_c", "-18"],
      ["x", "start_c", "-9"],
      ["y", "start_c", "0"],
    ] as const)
      expect(told(variant, heading, start), `${variant} ${start}`).toEqual([]);
  });
});
