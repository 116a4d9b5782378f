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

  it("shows formulas that are too long, define commands or break the reader as they are written", () => {
    expect(html(`$${"_".repeat(1900)}$`)).toBe(`<p><code>${"_".repeat(1900)}</code></p>`);
    expect(html(`$${"x".repeat(2001)}$`)).toBe(`<p><code>${"x".repeat(2001)}</code></p>`);
    expect(html("$\\def\\a{<b>}\\a\\a$")).toBe("<p><code>\\def\\a{&lt;b&gt;}\\a\\a</code></p>");
    expect(html("$\\left( x \\right)$")).toContain("<math");
  });

  it("shows text that is too long, or nests too deep, as it is written", () => {
    expect(html("*a".repeat(10_001))).toMatch(/^<p class="absent">.*<pre class="out">\*a\*a/);
    expect(html(">".repeat(15_000))).toMatch(/^<p class="absent">.*<pre class="out">&gt;&gt;/);
    const picture = `![pan](data:image/png;base64,${"A".repeat(300_000)})`;
    expect(html(`# Title\n\n${picture}`)).toContain(`<img src="data:image/png;base64,AAA`);
  });

  it("takes pictures from the cell's attachments", () => {
    const attachments = { "pan.png": { "image/png": "AAAA" }, "bad.png": { "text/html": "AAAA" } };
    const at = (text: string): string => renderMarkdown(text, { prefix: "p", attachments }).html;
    expect(at("![x](attachment:pan.png)")).toContain('<img src="data:image/png;base64,AAAA" alt="x">');
    expect(at("![x](attachment:bad.png)")).toContain("[picture: x]");
  });
});
