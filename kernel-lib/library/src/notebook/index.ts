// notebook: files in, figures out

export { appendTrial } from "./append-trial";
export { checkKitchenFolder } from "./check-kitchen-folder";
export { type ChosenVariantsOptions, chosenVariants } from "./chosen-variants";
export { eachVariant } from "./each-variant";
export { loadFoods } from "./load-foods";
export { loadKitchen } from "./load-kitchen";
export { type NewKitchenOptions, newKitchen } from "./new-kitchen";
export { type Showable, show } from "./show";
export { whereEnough } from "./where-enough";
