/**
 * Throws an error named `TooLittle`: the log is sound, and too young for what was asked. Its message is a whole sentence
 * for a cook: what is there, and which trials would help.
 *
 * @param where the function that was asked; travels along as the error's cause
 * @param sentence what is there and what to log, as `"No trial of oat bars is logged yet: reheat two slabs of …"`
 * @example
 * tooLittle("reheatYield", "Only 2 reheats were weighed: log 2 more."); // throws "Only 2 reheats were weighed: log 2 more."
 */
export function tooLittle(where: string, sentence: string): never {
  const error = new Error(sentence, { cause: where });
  error.name = "TooLittle";
  throw error;
}

/** Whether an error says that there is too little in the log yet, and nothing else is wrong. */
export function isTooLittle(error: unknown): error is Error {
  return error instanceof Error && error.name === "TooLittle";
}
