import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../kernel-lib/library/src/check/notice";
import { readAppliances } from "../../../kernel-lib/library/src/trials/appliance";
import { namesOf } from "../../../kernel-lib/library/src/trials/known-names";
import { settleIds } from "../../../kernel-lib/library/src/trials/settle-ids";
import { readVariants, type Variant } from "../../../kernel-lib/library/src/trials/variant";

const appliances = { ...readAppliances("appliance,kind,floor_in2\nBig Basket,air fryer,81\n", "a.csv"), file: "a.csv" };
const text = "variant,formula,pan,batch_lb,rows,columns,appliance,setpoint_f\nx,mix,half,2 1/2,6,8,big basket,390 F\n";
const variants = { ...readVariants(text, "v.csv"), file: "v.csv" };

describe("settleIds", () => {
  it("takes an id that differs in capitals and blanks alone as the one that is known, with a notice", () => {
    const settled = settleIds<Variant>(variants, { applianceId: namesOf(appliances, "applianceId") });
    expect(settled.records[0].applianceId).toBe("Big-Basket");
    expect(settled.drafts[0].fields.applianceId).toBe("Big-Basket");
    expect(noticeLines(settled.notices).at(-1)).toBe(
      'v.csv row 2, column appliance: was taken as the id in a.csv that differs in capitals or blanks alone ("big basket" as Big-Basket)',
    );
  });

  it("leaves what is known, what is not, and a file of which nothing is known", () => {
    for (const names of [{ applianceId: null }, { formulaId: namesOf(appliances, "applianceId") }, {}])
      expect(settleIds<Variant>(variants, names)).toBe(variants);
  });
});
