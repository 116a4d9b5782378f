/** How many of something, in words: `"1 trial"`, `"2 trials"`. */
export function counted(count: number, name: string): string {
  return `${count} ${name}${count === 1 ? "" : "s"}`;
}
