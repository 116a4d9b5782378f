import { fail, positive } from "../../check/check";
import { MOST_COLUMNS } from "../../check/csv";

/** One probe of a trace. */
export interface ProbeChannel {
  /** heading without its unit */
  readonly name: string;
  /** one reading for each time [°C]; NaN where the logger wrote nothing */
  readonly temperatureC: readonly number[];
}

/** A stretch without readings. */
export interface TraceGap {
  readonly fromMin: number;
  readonly toMin: number;
}

/** A logger's file, read and checked. */
export interface ProbeTrace {
  readonly kind: "probe trace";
  readonly file: string;
  /** from the first reading [min] */
  readonly timeMin: readonly number[];
  readonly channels: readonly ProbeChannel[];
  /** usual time between two readings [s] */
  readonly intervalS: number;
  readonly gaps: readonly TraceGap[];
  /** what a reader must know: gaps, missing readings, doubtful units */
  readonly notices: readonly string[];
}

/** How to read a logger's file. */
export interface ReadProbeTraceOptions {
  /** name of the file, for errors */
  readonly file: string;
  /** unit of channels whose heading names none; given, it also overrules the check for slips of unit */
  readonly temperatureUnit?: "C" | "F";
  /** unit of a time column whose heading names none and that holds plain numbers; default `"s"` */
  readonly timeUnit?: "s" | "min" | "h";
  /** a longer pause between readings counts as a gap [s]; default five times the usual interval */
  readonly longestPauseS?: number;
}

const COMMA = 44;
const SEMICOLON = 59;
const TAB = 9;
const NEWLINE = 10;
const RETURN = 13;

/** Most that a probe can plausibly read [°C]: in the air of an appliance or on a crust, and inside moist food. */
const HOTTEST_AIR_C = 300;
const HOTTEST_CORE_C = 108;
const AIR_NAMES = /air|oven|basket|ambient|room|set|surface|crust|wall|freezer|chamber/i;

/**
 * Reads a logger's CSV: a time column and any number of temperature channels, quickly enough for hours at 1 Hz.
 *
 * The first row holds headings. Time: `time_s`, `time_min`, `time_h`, plain numbers, clock times (`14:03:20`, over
 * midnight too) or dates with times. Channels: `core_c`, `air_f`, `core (°C)`, or without a unit and then
 * `temperatureUnit`. Commas, semicolons (with decimal commas) or tabs part the cells; lines that start with # are left
 * out. A channel in the wrong unit is caught by what food and air can be: moist food above 108 °C, air above 300 °C.
 *
 * @returns times [min], channels [°C], gaps, notices; throws with file, row, column, value and what was expected
 *
 * @example
 * const trace = readProbeTrace("time_s,core_c,air_f\n0,-18.0,70\n1,-17.9,72\n2,-17.8,75\n", { file: "stick.csv" });
 * trace.channels[1].name; // → "air"
 * trace.channels[1].temperatureC[0]; // → 21.11
 * readProbeTrace("time_s,core_c\n0,-0.4\n60,120\n120,165.2\n", { file: "stick.csv" }); // throws "read as °F it is 74.0 °C"
 */
export function readProbeTrace(text: string, options: ReadProbeTraceOptions): ProbeTrace {
  const { file } = options;
  if (options.temperatureUnit !== undefined && !["C", "F"].includes(options.temperatureUnit))
    fail("readProbeTrace: temperatureUnit", 'must be "C" or "F"', options.temperatureUnit as unknown);
  if (options.longestPauseS !== undefined) positive(options.longestPauseS, "readProbeTrace: longestPauseS", "s");
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let row = 1;
  const skipNotes = (): void => {
    while (at < text.length && (text[at] === "#" || text[at] === "\n" || text[at] === "\r")) {
      const end = text.indexOf("\n", at);
      at = end < 0 ? text.length : end + 1;
      row++;
    }
  };
  skipNotes();
  const headingEnd = text.indexOf("\n", at);
  if (headingEnd < 0)
    fail(`readProbeTrace: ${file}`, "must hold a row of headings and rows of readings", text.slice(at, at + 60));
  const headingLine = text.slice(at, headingEnd).replace(/\r$/, "");
  const parting = headingLine.includes("\t") ? TAB : headingLine.includes(";") ? SEMICOLON : COMMA;
  const headings = headingLine
    .split(String.fromCharCode(parting))
    .map((heading) => heading.trim().replace(/^"|"$/g, ""));
  if (headings.length > MOST_COLUMNS)
    fail(`readProbeTrace: ${file} row ${row}`, `must have at most ${MOST_COLUMNS} columns`, headings.length);
  const timeAt = headings.findIndex((heading) => /^(elapsed|time|date|clock|timestamp)/i.test(heading));
  if (timeAt < 0)
    fail(`readProbeTrace: ${file} row ${row}`, "must have a time column, such as time_s or time_min", headings);
  const plans = headings.map((heading, column) =>
    column === timeAt ? undefined : channelPlan(heading, options, file),
  );
  if (plans.every((plan) => plan === undefined))
    fail(
      `readProbeTrace: ${file} row ${row}`,
      "must have a temperature column beside the time, such as core_c",
      headings,
    );
  const perMinute = minutesIn(headings[timeAt], options.timeUnit);
  at = headingEnd + 1;
  row++;

  const times: number[] = [];
  const columns: number[][] = headings.map(() => []);
  let days = 0;
  while (at < text.length) {
    skipNotes();
    if (at >= text.length) break;
    let time = Number.NaN;
    let column = 0;
    for (; ; column++) {
      let end = at;
      let code = text.charCodeAt(end);
      while (end < text.length && code !== parting && code !== NEWLINE) code = text.charCodeAt(++end);
      let stop = end;
      if (stop > at && text.charCodeAt(stop - 1) === RETURN) stop--;
      if (column === timeAt) {
        const quick = quickNumber(text, at, stop);
        time = Number.isNaN(quick)
          ? timeOf(text.slice(at, stop).trim(), perMinute)
          : quick * (perMinute === "clock" ? 1 / 60 : perMinute);
        if (!Number.isFinite(time))
          fail(
            `readProbeTrace: ${file} row ${row}, column ${headings[column]}`,
            "must be a time",
            text.slice(at, stop),
          );
      } else if (column < headings.length) {
        const plan = plans[column];
        if (plan) {
          let reading = quickNumber(text, at, stop);
          if (Number.isNaN(reading)) {
            const cell = text.slice(at, stop).trim();
            reading = cell === "" ? Number.NaN : Number(parting === SEMICOLON ? cell.replace(",", ".") : cell);
            if (cell !== "" && !Number.isFinite(reading) && !/^(nan|n\/a|na|-+|null|open|err)$/i.test(cell))
              fail(`readProbeTrace: ${file} row ${row}, column ${headings[column]}`, "must be a number or empty", cell);
          }
          columns[column].push(plan.unit === "F" ? ((reading - 32) * 5) / 9 : reading);
        }
      } else if (stop > at) {
        fail(`readProbeTrace: ${file} row ${row}`, `must hold ${headings.length} cells as the headings do`, column + 1);
      }
      at = end + 1;
      if (end >= text.length || code === NEWLINE) break;
    }
    if (column < headings.length - 1)
      fail(`readProbeTrace: ${file} row ${row}`, `must hold ${headings.length} cells as the headings do`, column + 1);
    if (perMinute === "clock" && times.length > 0 && time + days < times[times.length - 1] - 720) days += 1440;
    time += days;
    if (times.length > 0 && !(time > times[times.length - 1]))
      fail(
        `readProbeTrace: ${file} row ${row}, column ${headings[timeAt]}`,
        "must be later than the row before it",
        text.slice(text.lastIndexOf("\n", at - 2) + 1, at - 1).trim(),
      );
    times.push(time);
    row++;
  }
  if (times.length < 2) fail(`readProbeTrace: ${file}`, "must hold at least two rows of readings", times.length);

  const startMin = times[0];
  for (let reading = 0; reading < times.length; reading++) times[reading] -= startMin;
  const notices: string[] = [];
  const intervalS = usualIntervalS(times);
  const gaps = gapsOf(times, options.longestPauseS ?? 5 * intervalS);
  for (const gap of gaps)
    notices.push(`${file}: no readings from ${gap.fromMin.toFixed(2)} to ${gap.toMin.toFixed(2)} min.`);
  const channels: ProbeChannel[] = [];
  plans.forEach((plan, column) => {
    if (!plan) return;
    const temperatureC = columns[column];
    for (const notice of checkChannel(plan, temperatureC, options, file)) notices.push(notice);
    channels.push(Object.freeze({ name: plan.name, temperatureC: Object.freeze(temperatureC) }));
  });
  return Object.freeze({
    kind: "probe trace" as const,
    file,
    timeMin: Object.freeze(times),
    channels: Object.freeze(channels),
    intervalS,
    gaps: Object.freeze(gaps),
    notices: Object.freeze(notices),
  });
}

const MINUS = 45;
const POINT = 46;
const ZERO = 48;

/** A plain decimal number of up to 15 digits read without cutting the text, exactly; NaN for anything else. */
function quickNumber(text: string, from: number, to: number): number {
  let at = from;
  const negative = text.charCodeAt(at) === MINUS;
  if (negative) at++;
  const first = at;
  let whole = 0;
  let decimals = -1;
  for (; at < to; at++) {
    const digit = text.charCodeAt(at) - ZERO;
    if (digit >= 0 && digit <= 9) {
      whole = 10 * whole + digit;
      if (decimals >= 0) decimals++;
    } else if (digit === POINT - ZERO && decimals < 0) decimals = 0;
    else return Number.NaN;
  }
  if (at === first || at - first > 15 || (at - first === 1 && decimals === 0)) return Number.NaN;
  const size = decimals > 0 ? whole / 10 ** decimals : whole;
  return negative ? -size : size;
}

interface ChannelPlan {
  readonly name: string;
  readonly heading: string;
  readonly unit: "C" | "F";
}

function channelPlan(heading: string, options: ReadProbeTraceOptions, file: string): ChannelPlan | undefined {
  if (heading === "") return undefined;
  const spelled = spelledUnit(heading);
  if (spelled) return { ...spelled, heading };
  if (options.temperatureUnit) return { name: heading, heading, unit: options.temperatureUnit };
  return fail(
    `readProbeTrace: ${file}, column ${heading}`,
    "must name its unit, as core_c or core_f, or temperatureUnit must be given",
    heading,
  );
}

/** A heading that ends in its unit taken apart: `core_c`, `core (°C)`, `core deg F`; null where no unit is set off. */
function spelledUnit(heading: string): { name: string; unit: "C" | "F" } | null {
  const end = heading.replace(/[)\]]$/, "").trimEnd();
  const unit = end.slice(-1).toUpperCase();
  if (unit !== "C" && unit !== "F") return null;
  const before = end.slice(0, -1).trimEnd();
  const bare = /deg$/i.test(before) ? before.slice(0, -3) : before.endsWith("°") ? before.slice(0, -1) : before;
  const open = bare.trimEnd().replace(/[([]$/, "");
  let stop = open.length;
  while (stop > 0 && (open[stop - 1] === "_" || open[stop - 1].trim() === "")) stop--;
  return /[_\s([°]|deg/i.test(heading.slice(stop)) ? { name: open.slice(0, stop), unit } : null;
}

function minutesIn(heading: string, unit: "s" | "min" | "h" | undefined): number | "clock" {
  const named = heading.match(/[_\s([](s|sec|seconds|min|minutes|h|hours)[)\]]?$/i)?.[1].toLowerCase();
  const letter = named?.[0] ?? unit?.[0];
  if (letter === "s") return 1 / 60;
  if (letter === "m") return 1;
  if (letter === "h") return 60;
  return "clock";
}

/** Minutes of a time cell: a number in its unit, a clock time, or a date; bare numbers under a bare heading are seconds. */
function timeOf(cell: string, perMinute: number | "clock"): number {
  const plain = Number(cell);
  if (cell !== "" && Number.isFinite(plain)) return plain * (perMinute === "clock" ? 1 / 60 : perMinute);
  const clock = cell.match(/^(\d{1,3}):(\d{2})(?::(\d{2}(?:\.\d+)?))?$/);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]) + Number(clock[3] ?? 0) / 60;
  return Date.parse(cell.replace(/^"|"$/g, "")) / 60000;
}

/** Median pause between readings, from up to a thousand of them. */
function usualIntervalS(times: readonly number[]): number {
  const stride = Math.max(1, Math.floor(times.length / 1000));
  const pauses: number[] = [];
  for (let reading = 1; reading < times.length; reading += stride) pauses.push(times[reading] - times[reading - 1]);
  pauses.sort((one, other) => one - other);
  return 60 * pauses[Math.floor(pauses.length / 2)];
}

function gapsOf(times: readonly number[], longestS: number): TraceGap[] {
  const gaps: TraceGap[] = [];
  for (let reading = 1; reading < times.length; reading++)
    if (60 * (times[reading] - times[reading - 1]) > longestS)
      gaps.push(Object.freeze({ fromMin: times[reading - 1], toMin: times[reading] }));
  return gaps;
}

/** Refuses a channel that cannot be in the unit it was read in; returns notices of what is only doubtful. */
function checkChannel(
  plan: ChannelPlan,
  temperatureC: readonly number[],
  options: ReadProbeTraceOptions,
  file: string,
): string[] {
  let missing = 0;
  let hottest = Number.NEGATIVE_INFINITY;
  let coldest = Number.POSITIVE_INFINITY;
  let nearIce = 0;
  for (const reading of temperatureC) {
    if (Number.isNaN(reading)) {
      missing++;
      continue;
    }
    if (reading > hottest) hottest = reading;
    if (reading < coldest) coldest = reading;
    if (reading > 28.4 && reading < 32.2) nearIce++;
  }
  const notices: string[] = [];
  const where = `${file}, column ${plan.heading}`;
  if (missing === temperatureC.length) fail(`readProbeTrace: ${where}`, "must hold readings", "none");
  if (missing > 0) notices.push(`${where}: ${missing} of ${temperatureC.length} readings are missing.`);
  const limitC = AIR_NAMES.test(plan.name) ? HOTTEST_AIR_C : HOTTEST_CORE_C;
  const asFahrenheit = ((hottest - 32) * 5) / 9;
  if (plan.unit === "C" && hottest > limitC) {
    const what = limitC === HOTTEST_CORE_C ? "moist food" : "the air of an appliance";
    const sentence = `reaches ${hottest.toFixed(1)} °C, which ${what} cannot; read as °F it is ${asFahrenheit.toFixed(1)} °C`;
    if (options.temperatureUnit === undefined)
      fail(`readProbeTrace: ${where}`, `must be in the unit it names: it ${sentence}`, hottest);
    notices.push(`${where}: ${sentence}.`);
  } else if (plan.unit === "C" && nearIce > 0.15 * temperatureC.length && coldest < 20 && hottest > 36) {
    notices.push(
      `${where}: lingers near 30 °C for ${((100 * nearIce) / temperatureC.length).toFixed(0)} % of the time; food that thaws does so near 30 °F. Check the unit.`,
    );
  }
  if (plan.unit === "F" && coldest < -60)
    notices.push(`${where}: falls to ${coldest.toFixed(1)} °C; was it °C read as °F?`);
  return notices;
}
