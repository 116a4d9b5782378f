/** An element with its properties and what stands in it; text stays text. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<HTMLElementTagNameMap[K]>,
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...children);
  return made;
}
