import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import type { Table } from "../table/table";

/** The constants of a calibration, with what the trials say of each and which trial would say more. */
export function windowConstantsTable(calibration: CrispCalibration): Table {
  const range = ([low, high]: readonly [number, number]): string => `${short(low)} to ${short(high)}`;
  return {
    kind: "table",
    title: `Constants of the three clocks, from ${calibration.n} trials`,
    columns: [
      { heading: "constant" },
      { heading: "unit" },
      { heading: "estimate" },
      { heading: "95 %" },
      { heading: "before the trials" },
      { heading: "from the trials (%)", decimals: 0 },
      { heading: "to learn more" },
    ],
    rows: calibration.constants.map((constant) => [
      constant.label,
      constant.unit === "" ? null : constant.unit,
      short(constant.estimate),
      range(constant.interval95),
      range(constant.priorInterval95),
      100 * constant.dataShare,
      constant.dataShare < 0.9 ? constant.informedBy : null,
    ]),
    notes: [
      ...calibration.notices,
      `Scatter about the clocks: crisp time ${(100 * calibration.noise.crispTime).toFixed(1)} %, core ${calibration.noise.coreK.toFixed(1)} K, loss ${calibration.noise.lossPercent.toFixed(2)} % points, a taster ${calibration.noise.crispScore.toFixed(1)} points; thickness within a slab ${(100 * calibration.unevenness).toFixed(1)} %.`,
      "Held fixed: crust conductivity 0.12 W/(m·K), evaporating front 100 °C (212 °F), activation energy of browning 64 kJ/mol.",
    ],
  };
}

function short(value: number): string {
  if (Math.abs(value) >= 1e5) return value.toExponential(1);
  return String(Number(value.toPrecision(3)));
}
