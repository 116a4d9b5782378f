import { drawFigures } from "./report/draw-figures";
import { addFigureData } from "./report/figure-data";
import { markContents } from "./report/mark-contents";
import { addTableTools } from "./report/table-tools";

// What the report's page does beside being read: it works without any of this, as one long document.
markContents(document.getElementById("contents") as HTMLElement);
for (const table of document.querySelectorAll("table")) addTableTools(table);
for (const folded of document.querySelectorAll<HTMLDetailsElement>("figure.plot > details")) addFigureData(folded);
drawFigures();
document.getElementById("print-all")?.addEventListener("change", ({ target }) => {
  document.body.classList.toggle("prints-all", (target as HTMLInputElement).checked);
});

/** What scrolls sideways can be reached by the keyboard. */
function reachScrollers(): void {
  for (const box of document.querySelectorAll<HTMLElement>(".rich, .prose, pre"))
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
    else box.removeAttribute("tabindex");
}
reachScrollers();
addEventListener("resize", reachScrollers);
for (const folded of document.querySelectorAll("details")) folded.addEventListener("toggle", reachScrollers);
document.getElementById(location.hash.slice(1))?.scrollIntoView();
