/** Where the contents do not fit beside the page, as its style sheet has it. */
const BAR = "(max-width: 74.99rem)";

/**
 * Marks in the contents the part that is being read: the last one that begins above a line at a quarter of the window. The
 * sections of its notebook are unfolded, and folded again behind the reader unless they were unfolded by hand. Where the
 * contents are a bar above the page, their heading says the part, and they fold when one is chosen.
 */
export function markContents(contents: HTMLElement): void {
  const all = contents.querySelector("details") as HTMLDetailsElement;
  const isBar = matchMedia(BAR);
  const fold = (): void => {
    all.open = !isBar.matches;
  };
  fold();
  isBar.addEventListener("change", fold);
  contents.addEventListener("click", ({ target }) => {
    if (target instanceof HTMLAnchorElement) fold();
  });
  const links = new Map<Element, HTMLAnchorElement>();
  for (const link of contents.querySelectorAll<HTMLAnchorElement>('a[href^="#"]')) {
    const goal = document.getElementById(link.hash.slice(1));
    if (goal !== null) links.set(goal, link);
  }
  const begun = new Set<Element>();
  const inOrder = [...links.keys()];
  const watch = new IntersectionObserver(
    (changes) => {
      for (const { target, isIntersecting } of changes) begun[isIntersecting ? "add" : "delete"](target);
      const last = inOrder.filter((one) => begun.has(one)).at(-1);
      mark(contents, last && links.get(last));
    },
    // as if the window reached up without end: a part that was scrolled past stays in it
    { rootMargin: "10000000px 0px -75% 0px" },
  );
  for (const goal of inOrder) watch.observe(goal);
}

function mark(contents: HTMLElement, link: HTMLAnchorElement | undefined): void {
  const before = contents.querySelector("[aria-current]");
  if (before === (link ?? null)) return;
  before?.removeAttribute("aria-current");
  if (link !== undefined) link.ariaCurrent = "location";
  contents.querySelector(".here")?.replaceChildren(link?.textContent ?? "");
  const item = link?.closest("nav > details > ul > li");
  for (const one of contents.querySelectorAll<HTMLElement>("li[data-here]")) {
    if (one === item) continue;
    delete one.dataset.here;
    const sections = one.querySelector("details");
    if (sections?.dataset.unfolded !== undefined) sections.open = false;
    delete sections?.dataset.unfolded;
  }
  if (!(item instanceof HTMLElement)) return;
  item.dataset.here = "";
  const sections = item.querySelector("details");
  if (sections !== null && !sections.open) {
    sections.open = true;
    sections.dataset.unfolded = "";
  }
  keepInSight(contents, link as HTMLElement);
}

/** Scrolls the contents alone, never the page. */
function keepInSight(contents: HTMLElement, link: HTMLElement): void {
  const [frame, box] = [contents.getBoundingClientRect(), link.getBoundingClientRect()];
  if (contents.scrollHeight <= contents.clientHeight) return;
  if (box.top < frame.top || box.bottom > frame.bottom)
    contents.scrollTop += box.top - frame.top - contents.clientHeight / 2;
}
