// notebook: files in, figures out

export { appendTrial } from "./append-trial";
export { checkKitchenFolder } from "./check-kitchen-folder";
export { type ChosenVariantsOptions, chosenVariants } from "./chosen-variants";
export { type EachVariantOptions, eachVariant } from "./each-variant";
export { kitchenAnswers } from "./kitchen-answers";
export { type ExampleIds, type KitchenGlance, kitchenGlance, type ProductGlance } from "./kitchen-glance";
export { loadFoods } from "./load-foods";
export { loadKitchen } from "./load-kitchen";
export { type NewKitchenOptions, newKitchen } from "./new-kitchen";
export { type Showable, show } from "./show";
export { showTogether } from "./show-together";
export { whereEnough } from "./where-enough";
