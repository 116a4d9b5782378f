// notebook: files in, figures out

export { appendTrial } from "./append-trial";
export { loadFoods } from "./load-foods";
export { loadKitchen } from "./load-kitchen";
export { type Showable, show } from "./show";
