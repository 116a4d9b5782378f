// Trial logs of 100,000 rows: CSV read, checked and grouped, and a workbook read. Peer: the same text split into cells by its
// line ends and commas, which neither checks nor converts anything. Each is measured in a process of its own, so that the
// memory is its own.
import { execFileSync } from "node:child_process";
import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const ROWS = 100_000;

/** A log of many rows, no two alike, some of them with a slip or a unit of their own. */
function longLog(rows) {
  const headings =
    "trial,date,variant,pan,appliance,batch_g,thickness_mm,setpoint_f,load_fraction,start_c,flip_min,time_min,not_crisp_min,crisp_min,core_c,before_g,after_g,pieces,crisp_scores,brown_scores,note";
  const lines = [headings];
  for (let at = 0; at < rows; at++) {
    const time = 10 + (at % 70) / 10;
    const batch = at % 97 === 0 ? "2 lb 10 oz" : 900 + (at % 300);
    const core = at % 1000 === 0 ? "hot" : (75 + (at % 240) / 10).toFixed(1);
    lines.push(
      `R-${at},2026-0${1 + (at % 9)}-${10 + (at % 18)},rice,half,basket,${batch},${8 + (at % 10) / 10};8.3;8.1;8.4;8,390,0.6,-18,,${time + 1},${(time - 1).toFixed(1)},${time},${core},${(100 + at / 1000).toFixed(3)},${(80 + at / 2000).toFixed(4)},8,7;6.5;8;7.5,3;2.5;3;2,`,
    );
  }
  return lines.join("\n");
}

async function measured(what) {
  const { readTrials, writeTrials } = await import("slabwright/trials");
  const text = longLog(ROWS);
  const work = {
    csv: () => {
      const read = readTrials(text, "long.csv");
      return [read.records.length, read.noticeLines.length];
    },
    split: () => text.split("\n").map((line) => line.split(",")).length,
    xlsx: () => null,
  };
  if (what === "xlsx") {
    const { records } = readTrials(text, "long.csv");
    const bytes = writeTrials(records, { format: "xlsx", units: "metric" });
    work.xlsx = () => readTrials(bytes, "long.xlsx").records.length;
  }
  readTrials(longLog(2000), "short.csv");
  const start = performance.now();
  const cpu = process.cpuUsage();
  work[what]();
  const { user, system } = process.cpuUsage(cpu);
  const most = process.resourceUsage().maxRSS / 1024;
  return { ms: performance.now() - start, cpuMs: (user + system) / 1000, mb: most };
}

/** Milliseconds a trial: added to a log of 5,000 by appendTrial, and as a bare line that is written and forced to the disk. */
async function appending(count = 200) {
  const { appendTrial } = await import("slabwright/notebook");
  const { readTrials } = await import("slabwright/trials");
  const folder = mkdtempSync(join(tmpdir(), "log-bench-"));
  try {
    const text = longLog(5000).replaceAll(",hot,", ",80,");
    const log = join(folder, "long.csv");
    writeFileSync(log, `${text}\n`);
    const [trial] = readTrials(text, "long.csv").records;
    const next = (at) => ({ ...trial, trialId: `N-${at}` });
    appendTrial(log, next(-1));
    const timed = (work) => {
      const start = performance.now();
      for (let at = 0; at < count; at++) work(at);
      return (performance.now() - start) / count;
    };
    const ours = timed((at) => appendTrial(log, next(at)));
    const bare = timed((at) => {
      const handle = openSync(join(folder, "bare.csv"), "a");
      writeSync(handle, `N-${at},a line of a log\n`);
      fsyncSync(handle);
      closeSync(handle);
    });
    return { ours, bare };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function apart(what) {
  return JSON.parse(execFileSync(process.execPath, [fileURLToPath(import.meta.url), what], { encoding: "utf8" }));
}

export async function rows() {
  const [csv, split, xlsx] = [apart("csv"), apart("split"), apart("xlsx")];
  const append = await appending();
  const row = (name, value, unit, note, peer = null, peerValue = null) => ({
    name,
    value,
    unit,
    peer,
    peerValue,
    ratio: peerValue === null ? null : value / peerValue,
    note,
  });
  return [
    row(
      "log.read100k.ms",
      csv.cpuMs,
      "ms",
      "processor time of 100,000 rows read, checked and grouped; limit 3000",
      "split",
      split.cpuMs,
    ),
    row("log.read100k.mb", csv.mb, "MB", "the most memory of that process; limit 500", "split", split.mb),
    row(
      "log.xlsx100k.ms",
      xlsx.cpuMs,
      "ms",
      "processor time of the same as a workbook; limit 10,000",
      "split",
      split.cpuMs,
    ),
    row(
      "log.append.ms",
      append.ours,
      "ms",
      "a trial added to a log of 5,000, wall time",
      "bare line and fsync",
      append.bare,
    ),
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  process.stdout.write(JSON.stringify(await measured(process.argv[2])));
