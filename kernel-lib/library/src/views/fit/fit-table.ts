import type { Estimates } from "../../fit/fit";
import type { Table } from "../table/table";

/**
 * A fit's parameters as a table: estimate, standard error, 95 % interval, what holds each back; how the search ended and
 * every notice below.
 *
 * @param fit any fit: of a curve, of times seen at checks, of yes/no outcomes, of scores
 */
export function fitTable(fit: Estimates): Table {
  return {
    kind: "table",
    title: titleOf(fit),
    columns: [
      { heading: "parameter" },
      { heading: "estimate" },
      { heading: "standard error" },
      { heading: "95 % from" },
      { heading: "95 % to" },
      { heading: "remark" },
    ],
    rows: fit.names.map((name) => {
      const { estimate, standardError, interval95, atBound, fixed } = fit.parameters[name];
      const remark = fixed
        ? "fixed"
        : atBound
          ? `at its ${atBound} bound`
          : standardError === null
            ? "undetermined"
            : "";
      return [name, estimate, standardError, interval95?.[0] ?? null, interval95?.[1] ?? null, remark];
    }),
    notes: [
      ...qualityOf(fit),
      `Search: ${fit.reason} (${fit.iterations} ${fit.iterations === 1 ? "step" : "steps"}).`,
      ...fit.notices,
    ],
  };
}

function titleOf(fit: Estimates): string {
  return "equation" in fit && fit.equation !== fit.model ? `${fit.model}: ${fit.equation}` : fit.model;
}

function qualityOf(fit: Estimates): string[] {
  const range = fit.rangeX ? `, x from ${number(fit.rangeX[0])} to ${number(fit.rangeX[1])}` : "";
  const rests = `Rests on ${fit.n} observations (${fit.degreesOfFreedom} degrees of freedom)${range}.`;
  const scatter =
    "residualSd" in fit && typeof fit.residualSd === "number" && !fit.sdKnown
      ? `Residual standard deviation ${number(fit.residualSd)}; `
      : "";
  const aicc = Number.isFinite(fit.aicc) ? number(fit.aicc) : "not available for so few observations";
  return [rests, `${scatter}log-likelihood ${number(fit.logLikelihood)}, AICc ${aicc}, BIC ${number(fit.bic)}.`];
}

function number(value: number): string {
  return String(Number(value.toPrecision(5)));
}
