import { forecastOf, learn } from "./forecast";
import { type ScoreRow, type SettingScore, scoreRows, scoreSetting } from "./score";
import { storedWorlds } from "./stored-world";
import { worldKitchen } from "./world-kitchen";
import { LOG_SIZES } from "./world-log";

/** Holds the library against the stored worlds whose product's name has a word in it (all without one). */
export function holdWorlds(word = "", tell: (line: string) => void = () => {}): readonly SettingScore[] {
  const scores: SettingScore[] = [];
  for (const world of storedWorlds().filter(({ product }) => product.includes(word)))
    for (const trials of LOG_SIZES) {
      const kitchen = worldKitchen(world, trials);
      const calibration = learn(kitchen);
      for (const { transfer, setting, truth } of world.settings) {
        const forecast = forecastOf({ kitchen, calibration, setting, tooDryPercent: world.tooDryPercent });
        scores.push(scoreSetting({ transfer, trials, truth, forecast }));
      }
      tell(`${world.product} ${world.seed}, ${trials} trials`);
    }
  return scores;
}

/** The rows of `holdWorlds`. */
export function worldRows(word?: string, tell?: (line: string) => void): readonly ScoreRow[] {
  return scoreRows(holdWorlds(word, tell));
}
