import { describe, expect, it } from "vitest";
import { readAppliances } from "../../../kernel-lib/library/src/trials/appliance";
import {
  ingredientNames,
  namesOf,
  repeatedNames,
  unknownNames,
} from "../../../kernel-lib/library/src/trials/known-names";
import { readVariants } from "../../../kernel-lib/library/src/trials/variant";

const appliancesOf = (...ids: string[]) => {
  const rows = ids.map((id) => `${id},one,air fryer,400,,\n`).join("");
  const read = readAppliances(`appliance,name,kind,floor_cm2,power_w,note\n${rows}`, "appliances.csv");
  return { ...read, file: "appliances.csv" };
};
const using = (...ids: string[]) => {
  const rows = ids.map((id, at) => `v-${at},v,mix,slab,pan,900,6,8,3,${id},200,-18,20,\n`).join("");
  const text = `variant,name,formula,form,pan,batch_g,rows,columns,trim_mm,appliance,setpoint_c,start_c,longest_min,note\n${rows}`;
  return { ...readVariants(text, "variants.csv"), file: "variants.csv" };
};
const slipsOf = (known: string[], ...used: string[]) =>
  unknownNames(using(...used), { applianceId: namesOf(appliancesOf(...known), "applianceId") });

describe("namesOf", () => {
  it("knows what a file gives, and the nearest of it to a slip of the pen", () => {
    const names = namesOf(appliancesOf("basket", "fan-oven"), "applianceId")!;
    expect(names.known).toEqual(["basket", "fan-oven"]);
    expect(names.faulty).toEqual([]);
    expect([names.has("basket"), names.has("baskit")]).toEqual([true, false]);
    expect([names.nearestTo("baskit"), names.nearestTo("baskit"), names.nearestTo("stove")]).toEqual([
      "basket",
      "basket",
      null,
    ]);
  });

  it("is nothing where a name cannot be read or a file was not read whole, so that none can be called unknown", () => {
    expect(namesOf(null, "applianceId")).toBeNull();
    expect(namesOf(appliancesOf("basket", ""), "applianceId")).toBeNull();
    expect(namesOf({ ...appliancesOf("basket"), whole: false }, "applianceId")).toBeNull();
    expect(namesOf(appliancesOf("bas?ket", "oven"), "applianceId")?.faulty).toEqual(["bas?ket"]);
  });
});

describe("unknownNames", () => {
  it("names what is not known, lists up to twelve that are, and is silent about those that are", () => {
    expect(slipsOf(["basket", "oven"], "basket", "oven")).toEqual([]);
    expect(slipsOf(["basket", "oven"], "baskit")).toMatchObject([
      {
        file: "variants.csv",
        row: 2,
        at: "column appliance",
        expected: "one of basket, oven",
        got: '"baskit", which appliances.csv does not hold',
        nearest: "basket",
        anywhere: true,
      },
    ]);
    const many = (count: number) => Array.from({ length: count }, (_, at) => `oven-${at}`);
    expect(slipsOf(many(12), "basket")[0].expected).toBe(`one of ${many(12).join(", ")}`);
    expect(slipsOf(many(13), "basket")[0].expected).toBe("a known name");
    expect(unknownNames(null, {})).toEqual([]);
    expect(unknownNames(using("basket"), { applianceId: null })).toEqual([]);
  });

  it("leaves alone what most likely is a faulty name as it should be, and no other", () => {
    expect(slipsOf(["bas?ket", "oven"], "basket", "oven")).toEqual([]);
    // near to a sound name, or to none while none is faulty
    expect(slipsOf(["bas?ket", "fan-oven"], "fan-ofen")).toHaveLength(1);
    expect(slipsOf(["bas?ket", "fan-oven"], "grill")).toEqual([]);
    expect(slipsOf(["basket", "fan-oven"], "grill")).toHaveLength(1);
  });
});

describe("repeatedNames", () => {
  it("names every later row by the first that has the id", () => {
    expect(
      repeatedNames(appliancesOf("a", "b", "a", "a"), "applianceId").map(({ row, expected }) => [row, expected]),
    ).toEqual([
      [4, "each id once, and row 2 has this one"],
      [5, "each id once, and row 2 has this one"],
    ]);
    expect(repeatedNames(appliancesOf("a", "", ""), "applianceId")).toEqual([]);
    expect(repeatedNames(null, "id" as never)).toEqual([]);
  });
});

describe("ingredientNames", () => {
  const ingredients = [
    { id: "chicken-ground-raw", name: "Chicken, ground" },
    { id: "corn-frozen", name: "sweet corn" },
    { id: "cod-a", name: "cod" },
    { id: "cod-b", name: "Cod" },
  ];
  const names = ingredientNames({
    file: "ingredients.csv",
    ids: ingredients.map(({ id }) => id),
    ingredients,
    whole: true,
  });

  it("are ids and names in any capitals and order of words, where one alone is meant", () => {
    expect(
      ["Ground Chicken", "frozen corn", "Sweet corn", "COD", "corn-frozen"].map((one) => names?.sameAs(one)),
    ).toEqual(["chicken-ground-raw", "corn-frozen", "corn-frozen", null, null]);
  });

  it("have the id as the nearest of a mistyped name, and none of one that is far", () => {
    expect(["Grund chicken", "frozn corn", "unobtainium"].map((one) => names?.nearestTo(one))).toEqual([
      "chicken-ground-raw",
      "corn-frozen",
      null,
    ]);
  });
});
