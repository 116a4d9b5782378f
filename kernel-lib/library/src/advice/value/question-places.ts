import { tooLittle } from "../../check/too-little";
import type { SettledSetting } from "../../crisp/window/window-setting";
import { slabMassG } from "../../pan/slab-mass";
import { slabThickness } from "../../pan/slab-thickness";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { ownMassText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import { LEVEL_FULL, type PlannedSlab, plannedSlab } from "../trial/planned-slab";
import { isWithinClocks } from "../trial/within-clocks";
import { crispWindow, type KitchenWindow } from "../window/crisp-window";
import { piecesOnFloor } from "../window/load-plan";
import { dialSettings } from "./candidate-trials";
import type { OpenQuestion } from "./open-question";

/** One of the settings between which a question decides. */
export interface QuestionPlace {
  /** in words: `"900 g on the quarter sheet"`, `"190 °C"`; empty where there is only one */
  readonly name: string;
  readonly setting: SettledSetting;
  /** null where it is the window's own */
  readonly slab: PlannedSlab | null;
}

/** Between what a question decides. */
export interface QuestionPlaces {
  readonly places: readonly QuestionPlace[];
  /** the other variant's best chance, which no trial of this one changes; null unless the question is of two variants */
  readonly other: { readonly name: string; readonly success: number } | null;
}

/** What `questionPlaces` works from. */
export interface QuestionPlacesOptions {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  readonly question: OpenQuestion;
  /** settings that the dial may be put to (°C); the window's and two steps to either side unless given */
  readonly setpointsC?: readonly number[];
  readonly without?: readonly string[];
}

/** Batches of other thicknesses that a question of pans looks at beside the variant's own, over its thickness; our judgement. */
const OTHER_SHARES = [1, 3 / 4, 4 / 3] as const;
/** Slabs within this share of each other's thickness are one alternative. */
const ALIKE = 0.04;
const MOST_PLACES = 6;

/** The settings between which a question decides: the window's own first. One sentence says what to change where there is no second. */
export function questionPlaces(options: QuestionPlacesOptions): QuestionPlaces {
  const { window, kitchen, question } = options;
  const own: QuestionPlace = { name: "", setting: window.setting, slab: null };
  switch (question.kind) {
    case "time":
    case "card":
      return { places: [own], other: null };
    case "difference": {
      const other = crispWindow({ kitchen, variantId: question.other, draws: 600 });
      return { places: [own], other: { name: other.variantName, success: other.recommended.success } };
    }
    case "setpoint":
      return { places: bySetpoint(options), other: null };
    case "pan":
      return { places: byPan(options), other: null };
  }
}

function bySetpoint({ kitchen, window, setpointsC }: QuestionPlacesOptions): readonly QuestionPlace[] {
  const { units } = kitchen;
  const given = setpointsC ?? dialSettings(window.setting.setpointC, units, 2);
  const settings = given.filter((setpointC) => isWithinClocks({ thicknessMm: 10, sidesMm: [40, 40], setpointC }));
  if (settings.length < 2)
    tooLittle(
      "nextTrial",
      `The ${applianceOf(kitchen, window.setting.applianceId).name} has one setting to choose from, ${ownSettingText(window.setting.setpointC, units)}: name a second one between 130 and 290 °C under setpointsC, or ask which time to print.`,
    );
  return settings.map((setpointC) => ({
    name: ownSettingText(setpointC, units),
    setting: { ...window.setting, setpointC },
    slab: null,
  }));
}

function byPan({ kitchen, window, without = [] }: QuestionPlacesOptions): readonly QuestionPlace[] {
  const variant = variantOf(kitchen, window.variantId);
  const pan = panOf(kitchen, window.panId ?? variant.panId);
  const pans = kitchen.pans.filter(
    (one) => (one.shape === "wells") === (pan.shape === "wells") && !without.includes(one.id),
  );
  const appliance = applianceOf(kitchen, window.setting.applianceId);
  const slabs: PlannedSlab[] = [];
  const keep = (slab: PlannedSlab | null): void => {
    if (slab === null || slabs.length >= MOST_PLACES) return;
    if (!isWithinClocks({ ...slab, setpointC: window.setting.setpointC })) return;
    if (slabs.some((one) => Math.abs(Math.log(one.thicknessMm / slab.thicknessMm)) < ALIKE)) return;
    slabs.push(slab);
  };
  const { thicknessMm } = window.setting;
  for (const share of OTHER_SHARES)
    for (const place of [pan, ...pans].filter((one) => pans.includes(one))) {
      const full = share > 1 ? undefined : LEVEL_FULL;
      const slab = plannedSlab({ kitchen, variant, pan: place, thicknessMm: share * thicknessMm, full });
      if (slab !== null && Math.abs(Math.log(slab.thicknessMm / (share * thicknessMm))) < ALIKE) keep(slab);
    }
  const { batchG } = window;
  for (const place of batchG === null ? [] : pans) {
    const { densityKgM3 } = variant;
    const full = LEVEL_FULL;
    if ((batchG as number) > slabMassG({ pan: place, thicknessMm: full * place.depthMm, densityKgM3 })) continue;
    const whole = slabThickness({ pan: place, batchG: batchG as number, densityKgM3 });
    keep(plannedSlab({ kitchen, variant, pan: place, thicknessMm: whole.thicknessMm, full }));
  }
  if (slabs.length < 2)
    tooLittle(
      "nextTrial",
      `No pan of this kitchen takes ${variant.name} at a second thickness: add a deeper or larger pan to pans.csv, or ask which time to print.`,
    );
  return slabs.map((slab) => ({
    name: `${ownMassText(slab.batchG, kitchen.units)} on the ${slab.panName}`,
    setting: {
      ...window.setting,
      thicknessMm: slab.thicknessMm,
      sidesMm: slab.sidesMm,
      piecesPerLoad: Math.max(1, piecesOnFloor(appliance, window.setting.loadFraction, slab.sidesMm)),
    },
    slab,
  }));
}
