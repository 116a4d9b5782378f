import { type PieceEmulator, type SettingTruth, truthOfPieces } from "../setting-truth";
import { limitOf, type World } from "../world";
import { type CourseEmulator, minuteOf } from "./course-emulator";

/** Truth of a product's own setting at another thickness, read off the courses. */
export type EmulatedTruth = Omit<SettingTruth, "emulatorError">;

const LOADS = 600;

/** The truth of a world's own setting at a thickness, from its courses; a test holds it to the stored truth. */
export function emulatedTruth(options: {
  readonly world: World;
  readonly emulator: CourseEmulator;
  readonly setting: Parameters<typeof truthOfPieces>[0]["setting"];
  readonly loads?: number;
}): EmulatedTruth {
  const { world, emulator, setting, loads = LOADS } = options;
  const { levels } = emulator.courses;
  const { limitC, holdS } = limitOf(world.product);
  const emulate: PieceEmulator = (factors, taste) => {
    const minutes = emulator.minutesAt({
      coefficient: factors.coefficient,
      coat: factors.coat,
      thicknessMm: setting.thicknessMm * factors.thickness,
      setpointC: setting.setpointC,
      loadFraction: setting.loadFraction,
    });
    return {
      coreMin: minuteOf(levels.coreC, minutes.coreC, limitC) + holdS / 60,
      crispMin: minuteOf(levels.dryMm, minutes.dryMm, world.crispMm * taste.crispDepth),
      brownMin: minuteOf(levels.brownRate, minutes.brownRate, taste.browning),
      dryMin: minuteOf(levels.lossPercent, minutes.lossPercent, world.tooDryPercent),
    };
  };
  return truthOfPieces({ world, setting, emulate, seed: world.seed + 600_000, loads });
}
