import { renderMarkdown } from "slabwright-host";
import { describe, expect, it } from "vitest";

const html = (text: string): string => renderMarkdown(text, { prefix: "p" }).html.trim();

describe("renderMarkdown", () => {
  it("numbers headings within its prefix and lowers them", () => {
    const { html, headings } = renderMarkdown("# One *two*\n\ntext\n\n## Three", { prefix: "n1-c1", lower: 1 });
    expect(html).toContain('<h2 id="n1-c1-1">One <em>two</em></h2>');
    expect(html).toContain('<h3 id="n1-c1-2">Three</h3>');
    expect(headings).toEqual([
      { level: 1, text: "One two", id: "n1-c1-1" },
      { level: 2, text: "Three", id: "n1-c1-2" },
    ]);
  });

  it.each([
    ["a <script>alert(1)</script>", "<p>a &lt;script&gt;alert(1)&lt;/script&gt;</p>"],
    ["<img src=x onerror=alert(1)>", "&lt;img src=x onerror=alert(1)&gt;"],
    ["[x](javascript:alert(1))", "<p>x</p>"],
    ["[x](data:text/html,1)", "<p>x</p>"],
    ["[x](https://e.example/?a=1&b=2)", '<p><a href="https://e.example/?a=1&amp;b=2" rel="noreferrer">x</a></p>'],
    ["![pan](https://e.example/pan.png)", '<p><span class="absent">[picture: pan]</span></p>'],
    ["![pan](data:image/png;base64,AAAA)", '<p><img src="data:image/png;base64,AAAA" alt="pan"></p>'],
    ["costs $5 and $6 a tray", "<p>costs $5 and $6 a tray</p>"],
  ])("%s", (text, expected) => expect(html(text)).toBe(expected));

  it("writes maths as MathML, in a line and on its own", () => {
    expect(html("time $t = aL$ in min")).toMatch(/^<p>time <math.*<\/math> in min<\/p>$/s);
    expect(html("$$\nt = aL + bL^2\n$$")).toMatch(/^<p class="maths"><math .*display="block".*<\/math><\/p>$/s);
    expect(html("$\\href{javascript:alert(1)}{x}$")).not.toContain("href=");
  });

  it("takes pictures from the cell's attachments", () => {
    const attachments = { "pan.png": { "image/png": "AAAA" }, "bad.png": { "text/html": "AAAA" } };
    const at = (text: string): string => renderMarkdown(text, { prefix: "p", attachments }).html;
    expect(at("![x](attachment:pan.png)")).toContain('<img src="data:image/png;base64,AAAA" alt="x">');
    expect(at("![x](attachment:bad.png)")).toContain("[picture: x]");
  });
});
