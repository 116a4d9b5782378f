import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { execute, type Kernel, type Message, request, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/** One function of each door: where its options object begins, fields it must offer, and what it says it gives. */
const DOORS: Readonly<Record<string, { name: string; call: string; fields: string[]; gives: RegExp }>> = {
  slabwright: {
    name: "crispWindow",
    call: "crispWindow({ ",
    fields: ["kitchen", "variantId", "panId"],
    gives: /: KitchenWindow$/,
  },
  "slabwright/advice": {
    name: "windowCalibration",
    call: "windowCalibration({ ",
    fields: ["kitchen", "variantId", "without"],
    gives: /: CrispCalibration$/,
  },
  "slabwright/crisp": {
    name: "windowAt",
    call: "windowAt({ ",
    fields: ["calibration", "thicknessMm"],
    gives: /: CrispWindow$/,
  },
  "slabwright/fit": {
    name: "fitCensoredTimes",
    call: "fitCensoredTimes({ ",
    fields: ["lower", "upper", "distribution"],
    gives: /: CensoredTimesFit$/,
  },
  "slabwright/food": {
    name: "thermalProperties",
    call: "thermalProperties(null, { ",
    fields: ["airFraction", "thawedAtC"],
    gives: /: ThermalProperties$/,
  },
  "slabwright/heat": {
    name: "coreTime",
    call: "coreTime({ ",
    fields: ["thicknessMm", "coefficientWm2K"],
    gives: /: CoreTime$/,
  },
  "slabwright/macros": {
    name: "pieceMacros",
    call: "pieceMacros({ ",
    fields: ["totals", "pieceG", "surfaceMm2"],
    gives: /: PieceMacros$/,
  },
  "slabwright/notebook": {
    name: "appendTrial",
    call: 'appendTrial("log.csv", { ',
    fields: ["trialId", "probesMm", "crispScores"],
    gives: /: number$/,
  },
  "slabwright/pan": {
    name: "cutGrid",
    call: "cutGrid({ ",
    fields: ["slabLengthMm", "cut", "trimMm"],
    gives: /: CutGrid$/,
  },
  "slabwright/plan": {
    name: "centralComposite",
    call: "centralComposite({ ",
    fields: ["factors", "alpha", "centres"],
    gives: /: CentralComposite$/,
  },
  "slabwright/safety": {
    name: "lethality",
    call: "lethality({ ",
    fields: ["timesMin", "temperaturesC", "zK"],
    gives: /: Lethality$/,
  },
  "slabwright/statistics": {
    name: "propagateUncertainty",
    call: "propagateUncertainty({ ",
    fields: ["inputs", "measure"],
    gives: /: Propagated(<[^>]*>)?$/,
  },
  "slabwright/trials": {
    name: "thicknessOfTrial",
    call: "thicknessOfTrial({ ",
    fields: ["trial"],
    gives: /: ThicknessOfTrial$/,
  },
  "slabwright/units": {
    name: "convertUnit",
    call: "convertUnit({ ",
    fields: ["value", "from", "to"],
    gives: /: number$/,
  },
  "slabwright/views": {
    name: "windowFigure",
    call: "windowFigure({ ",
    fields: ["window", "trials", "pans"],
    gives: /: Figure$/,
  },
  "slabwright/yield": {
    name: "coatPiece",
    call: "coatPiece({ ",
    fields: ["layers", "pieceG"],
    gives: /: CoatedPiece$/,
  },
};

/** A real kernel, the library imported by its name, and what it offers inside an options object. */
let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: resolve("notebooks") });
}, 60_000);
afterAll(() => kernel.stop());

async function ask(type: string, code: string, cursor: number): Promise<Message["content"]> {
  const asked = request("shell", type, { code, cursor_pos: cursor, detail_level: 0 }, kernel.session);
  const answered = new Promise<Message>((answer) => {
    const stop = kernel.listen((message) => {
      if ((message.parent_header as { msg_id?: string }).msg_id !== asked.header.msg_id || message.channel !== "shell")
        return;
      stop();
      answer(message);
    });
  });
  await kernel.send(asked);
  return (await answered).content;
}

async function completions(code: string): Promise<string[]> {
  return (await ask("complete_request", code, code.length)).matches as string[];
}

/** What the kernel says of a name on hover: its declaration, then its docstring. */
async function hover(code: string, name: string): Promise<string> {
  const { data } = await ask("inspect_request", code, code.lastIndexOf(name) + 1);
  return (data as Record<string, string>)["text/plain"];
}

/** How a cell ended and what it printed, errors included. */
async function run(code: string): Promise<{ status: string; text: string }> {
  const news: Message[] = [];
  const { status } = await execute(kernel, { code, limitMs: 30_000, onNews: (message) => news.push(message) });
  if (status === "error") await new Promise((rested) => setTimeout(rested, 300)); // it refuses what comes within 200 ms
  const texts = news.map(({ content }) => content.text ?? "");
  return { status, text: texts.join("").trim() };
}

describe("a tslab kernel in the notebooks folder", () => {
  it("imports slabwright by name and runs it", async () => {
    const code =
      'import { slabThickness, panPreset } from "slabwright";\nslabThickness({ pan: panPreset("half sheet"), batchG: 1200, densityKgM3: 1050 }).thicknessMm.toFixed(2)';
    expect(await run(code)).toMatchObject({ status: "ok", text: expect.stringContaining("9.30") });
  }, 60_000);

  it("offers the fields of an options object", async () => {
    const offered = await completions('import { slabThickness } from "slabwright";\nslabThickness({ ');
    expect(offered).toEqual(expect.arrayContaining(["pan", "batchG", "densityKgM3"]));
  }, 60_000);

  it("offers the fields of a result", async () => {
    const offered = await completions(
      'import { loadKitchen } from "slabwright";\nconst kitchen = loadKitchen();\nkitchen.trials[0].',
    );
    expect(offered).toEqual(expect.arrayContaining(["thicknessMm", "crispMin", "coreC"]));
  }, 60_000);

  it("knows a door for every room of the package", () => {
    const { exports } = JSON.parse(readFileSync("kernel-lib/library/package.json", "utf8"));
    expect(Object.keys(DOORS).sort()).toEqual(
      Object.keys(exports)
        .map((door) => door.replace(".", "slabwright"))
        .sort(),
    );
  });

  it.each(Object.entries(DOORS))(
    "opens %s",
    async (door, { name, call, fields, gives }) => {
      const line = `import { ${name} } from "${door}";\n`;
      expect(await run(`${line}typeof ${name}`)).toEqual({ status: "ok", text: "function" });
      expect(await completions(`${line}${call}`)).toEqual(expect.arrayContaining(fields));
      const [declaration] = (await hover(`${line}${name}`, name)).split("\nimport ");
      expect(declaration).toMatch(gives);
      expect(declaration).not.toMatch(/\bany\b/);
      const misread = await run(`${line}const wrong: symbol = null as ReturnType<typeof ${name}>;`);
      expect(misread).toEqual({ status: "error", text: expect.stringContaining("is not assignable to type 'symbol'") });
    },
    60_000,
  );

  it("does not open a room that has no door", async () => {
    const { status, text } = await run('import { fail } from "slabwright/check";\nfail');
    expect(status).toBe("error");
    expect(text).toContain("Cannot find module 'slabwright/check'");
  }, 60_000);
});
