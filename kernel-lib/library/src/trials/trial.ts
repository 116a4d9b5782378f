import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { nameSchema, noteSchema } from "../check/text-schema";
import { massText } from "../units/mass-text";

/**
 * One reheat or cook of pieces from one slab, as logged. What was not measured is `null` (or an empty array): it is
 * unknown, not zero.
 */
export interface Trial {
  /** name of this trial, used once in a kitchen */
  readonly trialId: string;
  /** day, as `2026-03-14` */
  readonly date: string;
  readonly variantId: string;
  readonly panId: string;
  readonly applianceId: string;
  /** mass of mix spread on the pan (g) */
  readonly batchG: number | null;
  /** depth-probe readings of the frozen slab (mm) */
  readonly probesMm: readonly number[];
  /** air temperature set (°C) */
  readonly setpointC: number;
  /** share of the basket or rack floor that the pieces cover, 0 to 1.2 */
  readonly loadFraction: number | null;
  /** temperature of the pieces when they went in (°C) */
  readonly startC: number;
  /** when the pieces were turned (min); not turned is `null` */
  readonly flipMin: number | null;
  /** time in the appliance until the pieces were taken out (min) */
  readonly timeMin: number;
  /** latest check at which the pieces were not yet crisp (min) */
  readonly notCrispMin: number | null;
  /** earliest check at which the pieces were crisp (min) */
  readonly crispMin: number | null;
  /** core of the thickest piece: highest within two minutes of taking out, or at taking out where `restedCoreC` is given (°C) */
  readonly coreC: number | null;
  /** highest core a rest later, in the same piece (°C); then `coreC` is the reading at taking out */
  readonly restedCoreC: number | null;
  /** how long after taking out that was (min) */
  readonly restMin: number | null;
  /** mass of the pieces before (g) */
  readonly massBeforeG: number | null;
  /** mass of the same pieces after (g) */
  readonly massAfterG: number | null;
  /** how many pieces were weighed */
  readonly pieces: number | null;
  /** panel scores for crispness, 0 soft to 9 crisp, one a taster */
  readonly crispScores: readonly number[];
  /** panel scores for browning, 0 pale to 9 burnt, one a taster */
  readonly brownScores: readonly number[];
  /** the slab that the pieces were cut from, where several trials share one */
  readonly slab: string | null;
  /** the morning that it was run in; else its date */
  readonly session: string | null;
  /** who ran it */
  readonly cook: string | null;
  /** sides of a piece as cut (mm); else as the variant cuts that pan */
  readonly pieceLengthMm: number | null;
  readonly pieceWidthMm: number | null;
  /** when the appliance was opened to look (min) */
  readonly looksMin: readonly number[];
  /** the printed card that was followed */
  readonly card: string | null;
  readonly note: string | null;
  /** every core reading at taking out, where there were several (°C); `coreC` is the coldest of them */
  readonly coresC: readonly number[];
  /** who gave the scores, in their order; empty: not told */
  readonly crispTasters: readonly string[];
  readonly brownTasters: readonly string[];
  /** whether the appliance was hot when the pieces went in */
  readonly preheated: boolean | null;
  /** where in the basket or on which rack the pieces lay */
  readonly place: string | null;
  /** settings one after the other, where there were several; `setpointC` is the first of them */
  readonly programme: readonly ProgrammeStep[];
  /** oil sprayed on all pieces (g) */
  readonly oilG: number | null;
  /** a piece on the scale before the freezer: as cut, and with its coating (g) */
  readonly barePieceG: number | null;
  readonly coatedPieceG: number | null;
  /** days in the freezer */
  readonly ageDays: number | null;
  /** frost that was seen on the pieces, in words */
  readonly frost: string | null;
  /** file names */
  readonly photos: readonly string[];
  /** columns of the log that are none of these, by heading; written back as they are */
  readonly extra: Readonly<Record<string, string>>;
}

/** One setting of a programme and how long it was held. */
export interface ProgrammeStep {
  readonly setpointC: number;
  readonly timeMin: number;
}

/** The most pieces that one reheat weighs: our judgement. */
const MOST_PIECES = 10_000;

const minutes = (what: string): z.ZodType<number> => z.number(what).min(0, what).max(180, what);
const mass = (what: string): z.ZodType<number | null> => z.number(what).positive(what).max(20_000, what).nullable();
const scores = (what: string): z.ZodType<number[]> => z.array(z.number(what).min(0, what).max(9, what));

const side = z
  .number("a side of a piece")
  .min(5, "a side of 5 to 700 mm (is the heading's unit right?)")
  .max(700, "a side of 5 to 700 mm (is the heading's unit right?)")
  .nullable();

const core = z
  .number()
  .min(-30, "a core temperature of -30 to 115 °C (-22 to 239 °F)")
  .max(115, "a core temperature of -30 to 115 °C (-22 to 239 °F); is this °F under a °C heading?");

const initials = z
  .string("initials such as AB")
  .regex(/^[^\s;:,/](?:[^;:,/\p{Cc}]{0,30}[^\s;:,/])?$/u, "initials such as AB");

const STEPS = "settings of 20 to 290 °C and up to 180 min, such as 180x6; 205x4";

/** What a trial must hold; each message says what was expected. */
export const TrialSchema: z.ZodType<Trial> = z
  .object({
    trialId: idSchema("a trial name of letters, digits, points and dashes"),
    date: z.iso.date("a day such as 2026-03-14"),
    variantId: nameSchema("the id of a variant"),
    panId: nameSchema("the id of a pan"),
    applianceId: nameSchema("the id of an appliance"),
    batchG: mass("a batch above 0 and up to 20000 g"),
    probesMm: z.array(
      z
        .number("readings")
        .positive("readings above 0 mm")
        .max(60, "readings up to 60 mm (is the heading's unit right?)"),
    ),
    setpointC: z
      .number("a setpoint")
      .min(100, "a setpoint of 100 to 290 °C (212 to 554 °F); is this °C under a °F heading?")
      .max(290, "a setpoint of 100 to 290 °C (212 to 554 °F); is this °F under a °C heading?"),
    loadFraction: z.number().positive("a share above 0").max(1.2, "a share of the floor, 0 to 1.2").nullable(),
    startC: z
      .number("a start temperature (-18 for pieces straight from the freezer)")
      .min(-40, "a start temperature of -40 to 40 °C (-40 to 104 °F)")
      .max(40, "a start temperature of -40 to 40 °C (-40 to 104 °F)"),
    flipMin: minutes("a turn between 0 and 180 min").nullable(),
    timeMin: z.number("a time").positive("a time above 0 min").max(180, "a time up to 180 min"),
    notCrispMin: minutes("a check between 0 and 180 min").nullable(),
    crispMin: minutes("a check between 0 and 180 min").nullable(),
    coreC: core.nullable(),
    restedCoreC: core.nullable(),
    restMin: z.number().min(0, "a rest of 0 to 60 min").max(60, "a rest of 0 to 60 min").nullable(),
    massBeforeG: mass("a mass above 0 and up to 20000 g"),
    massAfterG: mass("a mass above 0 and up to 20000 g"),
    pieces: z
      .number()
      .int("a whole number of pieces")
      .min(1, "one piece or more")
      .max(MOST_PIECES, `at most ${MOST_PIECES} pieces`)
      .nullable(),
    crispScores: scores("scores from 0 to 9"),
    brownScores: scores("scores from 0 to 9"),
    slab: nameSchema().nullable(),
    session: nameSchema().nullable(),
    cook: nameSchema().nullable(),
    pieceLengthMm: side,
    pieceWidthMm: side,
    looksMin: z.array(minutes("looks between 0 and 180 min")),
    card: nameSchema().nullable(),
    note: noteSchema(),
    coresC: z.array(core),
    crispTasters: z.array(initials),
    brownTasters: z.array(initials),
    preheated: z.boolean("yes or no").nullable(),
    place: nameSchema().nullable(),
    programme: z.array(
      z.object({
        setpointC: z.number(STEPS).min(20, STEPS).max(290, STEPS),
        timeMin: z.number(STEPS).positive(STEPS).max(180, STEPS),
      }),
      STEPS,
    ),
    oilG: mass("a mass above 0 and up to 20000 g"),
    barePieceG: mass("a mass above 0 and up to 20000 g"),
    coatedPieceG: mass("a mass above 0 and up to 20000 g"),
    ageDays: z.number().min(0, "0 to 3650 days").max(3650, "0 to 3650 days").nullable(),
    frost: nameSchema().nullable(),
    photos: z.array(
      z.string("a file name").regex(/^(?=\S)[^;\p{Cc}]{1,300}(?<=\S)$/u, "file names parted by semicolons"),
    ),
    extra: z.record(z.string(), z.string()),
  })
  .check(({ value: trial, issues }) => {
    const expect = (field: keyof Trial, holds: boolean, message: string): void => {
      if (!holds) issues.push({ code: "custom", message, path: [field], input: trial[field] });
    };
    const { notCrispMin, crispMin, massBeforeG, massAfterG, timeMin } = trial;
    expect("probesMm", trial.probesMm.length > 0 || trial.batchG !== null, "probe readings, or else the batch mass");
    if (notCrispMin !== null && crispMin !== null)
      expect("crispMin", crispMin > notCrispMin, `a check after the last not-crisp one (${notCrispMin} min)`);
    const late = (["notCrispMin", "crispMin", "flipMin"] as const).filter((field) => (trial[field] ?? 0) > timeMin);
    // with several of them, it is the time that was mistyped
    if (late.length > 1)
      expect(
        "timeMin",
        false,
        `a time of taking out that is not before ${late.map((field) => trial[field]).join(" and ")} min`,
      );
    else for (const field of late) expect(field, false, `at most the time of taking out (${timeMin} min)`);
    if (trial.restedCoreC !== null)
      expect("coreC", trial.coreC !== null, "the core at taking out, as one after a rest is given");
    if (trial.coresC.length > 0)
      expect(
        "coresC",
        trial.coresC.length > 1 && trial.coreC === trial.coresC.reduce((least, one) => Math.min(least, one)),
        "several core readings, of which the coldest is the core",
      );
    for (const [tasters, scored] of [
      ["crispTasters", "crispScores"],
      ["brownTasters", "brownScores"],
    ] as const)
      expect(
        scored,
        trial[tasters].length === 0 || trial[tasters].length === trial[scored].length,
        `as many scores as tasters (${trial[tasters].length})`,
      );
    if (trial.programme.length > 0)
      expect("setpointC", trial.programme[0].setpointC === trial.setpointC, "the first setting of the programme");
    if ((trial.pieceLengthMm === null) !== (trial.pieceWidthMm === null))
      expect("pieceWidthMm", false, "both sides of a piece, or neither");
    if (massAfterG !== null) {
      expect("massBeforeG", massBeforeG !== null, "the mass before, as a mass after is given");
      if (massBeforeG !== null && massBeforeG >= 0)
        expect(
          "massAfterG",
          massAfterG <= 1.02 * massBeforeG,
          `at most the mass before, ${massText(massBeforeG, "metric")}`,
        );
    }
  });
