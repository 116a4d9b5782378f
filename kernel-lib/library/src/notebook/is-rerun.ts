/** Whether all notebooks are run again, as `npm start` does: then nothing is written into a log a second time. */
export function isRerun(): boolean {
  return process.env.SLABWRIGHT_RERUN === "1";
}
