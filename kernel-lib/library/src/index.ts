// food
export { COMPOSITION_FIELDS, type Composition, checkComposition } from "./food/composition";
