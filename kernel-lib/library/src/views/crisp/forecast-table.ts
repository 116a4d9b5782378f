import type { ForecastRecord } from "../../advice/trial/forecast-record";
import type { Table } from "../table/table";

/** How the forecasts have fared, a row for each way in which a trial differed from the earlier ones. */
export function forecastTable(record: ForecastRecord): Table {
  return {
    kind: "table",
    title: "Forecasts from earlier mornings, held against what came",
    columns: [
      { heading: "the trial was at" },
      { heading: "forecasts", decimals: 0 },
      { heading: "held", decimals: 0 },
      { heading: "held (%)", decimals: 0 },
    ],
    rows: [
      ...record.byKind.map(({ kind, held, made }) => [kind, made, held, (100 * held) / made]),
      ["all", record.made, record.held, record.made === 0 ? null : (100 * record.held) / record.made],
    ],
    notes: [record.sentence, "Each at 90 %: about nine in ten should hold, in every row."],
  };
}
