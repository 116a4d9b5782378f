import type { OfferedExample } from "./kitchen-answer";

/** Whether what the kernel says of a word tells of the function of this name. */
export function tellsOf(words: string, name: string): boolean {
  return [...words.matchAll(/^(?:\(alias\) )?(?:function )?(\w+)(?=[(<])/gm)].some(([, told]) => told === name);
}

/** What the kernel says of a function, with the open kitchen's example in place of the docstring's own, which has another kitchen's ids. */
export function withExample(words: string, { lines, code }: Pick<OfferedExample, "lines" | "code">): string {
  const own = lines.join("\n");
  return own === "" ? words : words.replace(own, () => `\n${code}`);
}
