import { RenderMimeRegistry, standardRendererFactories } from "@jupyterlab/rendermime";
import { errorFactory } from "./error-output";
import { markdownParser } from "./markdown";
import { typesetter } from "./maths";
import { plotlyFactory } from "./plotly";

/** What can be shown in an output: Jupyter's standard kinds, less scripts, and plotly's figures. */
export function rendering(): RenderMimeRegistry {
  const factories = standardRendererFactories.filter(({ mimeTypes }) => !mimeTypes.includes("text/javascript"));
  const registry = new RenderMimeRegistry({
    initialFactories: factories,
    latexTypesetter: typesetter,
    markdownParser,
  });
  registry.addFactory(plotlyFactory, 0);
  registry.addFactory(errorFactory, 0);
  return registry;
}
