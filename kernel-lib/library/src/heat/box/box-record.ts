/** Columns of a run; each row is one accepted step. */
export interface BoxRecord {
  readonly rows: number;
  readonly timeS: Float64Array;
  readonly coreC: Float64Array;
  readonly midPlaneC: Float64Array;
  readonly surfaceC: Float64Array;
  readonly surfaceBelowC: Float64Array;
  readonly meanC: Float64Array;
  /** passes 0 when the core has thawed [K] */
  readonly thawLeadK: Float64Array;
  /** how fast the six of them change [K/s] */
  readonly coreRate: Float64Array;
  readonly midPlaneRate: Float64Array;
  readonly surfaceRate: Float64Array;
  readonly surfaceBelowRate: Float64Array;
  readonly meanRate: Float64Array;
  readonly thawLeadRate: Float64Array;
  readonly waterLostFraction: Float64Array;
  readonly crustAboveM: Float64Array;
  readonly crustBelowM: Float64Array;
  readonly iceFraction: Float64Array;
  /** temperatures along the thickness through the middle of the box, bottom to top, `nodes` a row */
  readonly profileC: Float64Array;
  readonly nodes: number;
  /** where they are as a share of the wet thickness, 0 bottom, 1 top */
  readonly profilePlace: Float64Array;
}

const COLUMNS = [
  "timeS",
  "coreC",
  "midPlaneC",
  "surfaceC",
  "surfaceBelowC",
  "meanC",
  "thawLeadK",
  "coreRate",
  "midPlaneRate",
  "surfaceRate",
  "surfaceBelowRate",
  "meanRate",
  "thawLeadRate",
  "waterLostFraction",
  "crustAboveM",
  "crustBelowM",
  "iceFraction",
] as const;

type Columns = Record<(typeof COLUMNS)[number], Float64Array>;

/** Columns that are still being written. */
export interface Recorder extends Columns {
  profileC: Float64Array;
  readonly nodes: number;
  readonly profilePlace: Float64Array;
  readonly next: () => number;
  readonly rows: () => number;
  /** moves the last row back in a straight line to where one of its columns had this value */
  readonly cutLastRow: (name: keyof Columns, value: number) => void;
  readonly finish: () => BoxRecord;
}

/** Columns that double when they are full, so that a run takes memory a handful of times only. */
export function makeRecorder(nodes: number): Recorder {
  let rows = 0;
  let room = 128;
  const columns = Object.fromEntries(COLUMNS.map((name) => [name, new Float64Array(room)])) as Columns;
  const grow = (old: Float64Array, size: number): Float64Array => {
    const grown = new Float64Array(size);
    grown.set(old);
    return grown;
  };
  const recorder: Recorder = {
    ...columns,
    profileC: new Float64Array(room * nodes),
    nodes,
    profilePlace: new Float64Array(nodes),
    rows: () => rows,
    cutLastRow: (name, value) => {
      if (rows < 2) return;
      const [from, to] = [recorder[name][rows - 2], recorder[name][rows - 1]];
      const share = (value - from) / (to - from);
      for (const column of COLUMNS) {
        const values = recorder[column];
        values[rows - 1] = values[rows - 2] + share * (values[rows - 1] - values[rows - 2]);
      }
    },
    next: () => {
      if (rows === room) {
        room *= 2;
        for (const name of COLUMNS) recorder[name] = grow(recorder[name], room);
        recorder.profileC = grow(recorder.profileC, room * nodes);
      }
      return rows++;
    },
    finish: () => ({
      ...(Object.fromEntries(COLUMNS.map((name) => [name, recorder[name].slice(0, rows)])) as Columns),
      rows,
      nodes,
      profileC: recorder.profileC.slice(0, rows * nodes),
      profilePlace: recorder.profilePlace,
    }),
  };
  return recorder;
}
