import type { EuAllergen, UsAllergen } from "../../food/ingredient/allergens";
import type { CoreLimit } from "../../safety/core-limit";
import { bothLimits, limitCaution } from "../../safety/limit-text";
import type { CardLanguage } from "../../trials/card-language";
import type { KitchenUnits } from "../../units/unit-table";

/** Every sentence that leaves the kitchen on a card or a pack, in one language. Amounts come in as text, in the kitchen's units. */
export interface CardTexts {
  readonly title: (product: string) => string;
  /** @param from temperature that it starts at; null when frozen */
  readonly preheat: (from: string | null, setting: string) => string;
  readonly layer: (percent: number) => string;
  readonly turn: (minutes: string) => string;
  /** @param latest null where there is no range */
  readonly takeOut: (minutes: string, latest: string | null) => string;
  readonly takeOutIn: (times: readonly (readonly [appliance: string, minutes: string])[]) => string;
  readonly slab: (thickness: string, on: { readonly mass: string; readonly pan: string } | null) => string;
  readonly testedIn: (appliance: string) => string;
  readonly testedInFew: (appliances: string) => string;
  readonly testedInMany: (appliances: string) => string;
  readonly notTestedIn: (appliance: string) => string;
  readonly softOtherwise: string;
  readonly caution: (limit: CoreLimit, units: KitchenUnits) => string;
  readonly state: (limit: CoreLimit, units: KitchenUnits) => string;
  readonly thermometer: string;
  readonly serving: (pieces: number, mass: string) => string;
  readonly batch: (name: string) => string;
  readonly frozenOn: (day: string) => string;
  readonly bestWithin: (days: number, at: string) => string;
  readonly bestBefore: (day: string, at: string) => string;
  readonly ingredients: (names: readonly string[]) => string;
  readonly allergens: (marks: readonly string[]) => string;
  readonly allergen: Readonly<Record<UsAllergen | EuAllergen, string>>;
  readonly dependsOnMaker: string;
  readonly allergenCautions: readonly string[];
  readonly storageCaution: string;
  /** heading of the nutrition table; servingMass is null for 100 g */
  readonly nutritionOf: (servingMass: string | null) => string;
  /** names of label lines, by what `labelUs` and `labelEu` call them */
  readonly nutrient: Readonly<Record<string, string>>;
  readonly nutritionCaution: string;
}

const EN: CardTexts = {
  title: (product) => `${product}: reheat`,
  preheat: (from, setting) => `${from === null ? "From frozen" : `From ${from}`}, pre-heat to ${setting}.`,
  layer: (percent) => `One layer, at most ${percent} % of the floor covered.`,
  turn: (minutes) => `Turn after ${minutes} min.`,
  takeOut: (minutes, latest) => `Take out after ${latest === null ? minutes : `${minutes} to ${latest}`} min.`,
  takeOutIn: (times) =>
    `Take out after: ${times.map(([appliance, minutes]) => `${appliance} ${minutes} min`).join("; ")}.`,
  slab: (thickness, on) =>
    `For pieces of a slab ${thickness} thick${on === null ? "" : `: ${on.mass} on one ${on.pan}`}.`,
  testedIn: (appliance) => `Tested in ${appliance} only.`,
  testedInFew: (appliances) => `Tested in ${appliances} only: in another appliance watch, and probe the core.`,
  testedInMany: (appliances) =>
    `From trials in ${appliances}; should do in nine of ten such appliances. Probe the core.`,
  notTestedIn: (appliance) => `Not tested in ${appliance} yet.`,
  softOtherwise: "Steamed or in a microwave it stays soft: it does not crisp.",
  caution: limitCaution,
  state: (limit, units) => `${limit.raw ? "Raw. Cook" : "Heat"} until every core is at ${bothLimits(limit, units)}.`,
  thermometer: "Use a thermometer.",
  serving: (pieces, mass) => `A serving: ${pieces} ${pieces === 1 ? "piece" : "pieces"} of about ${mass}.`,
  batch: (name) => `Batch ${name}.`,
  frozenOn: (day) => `Frozen ${day}.`,
  bestWithin: (days, at) => `Best within ${days} days at ${at}.`,
  bestBefore: (day, at) => `Best before ${day}, kept at ${at}.`,
  ingredients: (names) => `Ingredients: ${names.join("; ")}.`,
  allergens: (marks) =>
    `Allergens, check the label of every ingredient: ${marks.length === 0 ? "none is marked" : marks.join("; ")}.`,
  allergen: {
    milk: "milk",
    egg: "egg",
    fish: "fish",
    crustacean: "crustacean",
    "tree nut": "tree nut",
    wheat: "wheat",
    peanut: "peanut",
    soy: "soy",
    sesame: "sesame",
    gluten: "gluten",
    nut: "nut",
    celery: "celery",
    mustard: "mustard",
    sulphite: "sulphite",
    lupin: "lupin",
    mollusc: "mollusc",
  },
  dependsOnMaker: "depends on the maker",
  allergenCautions: [
    "Check the label of every ingredient: these marks are a reminder read from names, not a declaration.",
    "An allergen that is not listed may still be there, through a maker's recipe or shared equipment.",
  ],
  storageCaution:
    "This is quality, not safety. Food that stays frozen at −18 °C (0 °F) stays as safe as it went in; what has thawed and been warmer than 5 °C (41 °F) is for your local food code to judge, not for a date.",
  nutritionOf: (servingMass) => `in ${servingMass === null ? "100 g" : `a serving of ${servingMass}`}, as packed`,
  nutrient: {
    calories: "calories",
    "total fat": "total fat",
    "saturated fat": "saturated fat",
    cholesterol: "cholesterol",
    sodium: "sodium",
    "total carbohydrate": "total carbohydrate",
    "dietary fiber": "dietary fiber",
    "total sugars": "total sugars",
    protein: "protein",
    energy: "energy",
    fat: "fat",
    "of which saturates": "of which saturates",
    carbohydrate: "carbohydrate",
    "of which sugars": "of which sugars",
    fibre: "fibre",
    salt: "salt",
  },
  nutritionCaution:
    "Nutrition is an estimate from tables, not a compliance document: have a label checked against the law and, where it matters, by analysis.",
};

/** Names of allergens and of label lines as the Spanish texts of Regulation (EU) 1169/2011 and FDA's bilingual label have them, from memory. */
const ES: CardTexts = {
  title: (product) => `${product}: recalentar`,
  preheat: (from, setting) =>
    `${from === null ? "Sin descongelar" : `Desde ${from}`}: precaliente el aparato a ${setting}.`,
  layer: (percent) => `Una sola capa, que cubra como mucho el ${percent} % del fondo.`,
  turn: (minutes) => `Dé la vuelta a los ${minutes} min.`,
  takeOut: (minutes, latest) =>
    latest === null ? `Saque a los ${minutes} min.` : `Saque entre los ${minutes} y los ${latest} min.`,
  takeOutIn: (times) =>
    `Saque a los: ${times.map(([appliance, minutes]) => `${appliance} ${minutes} min`).join("; ")}.`,
  slab: (thickness, on) =>
    `Para piezas de una plancha de ${thickness} de grosor${on === null ? "" : `: ${on.mass} en un molde «${on.pan}»`}.`,
  testedIn: (appliance) => `Probado solo en: ${appliance}.`,
  testedInFew: (appliances) => `Probado solo en: ${appliances}. En otro aparato vigile y mida el centro.`,
  testedInMany: (appliances) =>
    `De ensayos en: ${appliances}. Debería servir en nueve de cada diez aparatos así. Mida el centro.`,
  notTestedIn: (appliance) => `Aún sin probar en: ${appliance}.`,
  softOtherwise: "Al vapor o en microondas queda blando: no se pone crujiente.",
  caution: (limit, units) => {
    const { holdS, raw, state } = limit;
    const hold = holdS > 0 ? `, mantenidos ${holdS} s,` : "";
    const more = raw
      ? "Crudo por dentro hasta que el centro alcance el límite: un rebozado cuajado o dorado no demuestra nada. Precocinado por debajo del límite se vende y se etiqueta como crudo, para cocinar por completo, y se enfría enseguida. "
      : state === "cooked and cooled"
        ? "Cuenta como cocido solo si cada centro alcanzó antes el límite de su clase y se enfrió de 57 a 21 °C (135 a 70 °F) en 2 h y a 5 °C (41 °F) en 6 h en total (FDA Food Code 3-501.14); si no, es crudo. "
        : "";
    return `Centro a ${spanishLimit(limit, units)} como mínimo${hold} en cada pieza. ${more}Mandan las normas sanitarias locales y un responsable autorizado del proceso. Compruebe con termómetro la pieza más gruesa, en el peor lugar de una cesta llena.`;
  },
  state: (limit, units) =>
    `${limit.raw ? "Crudo. Cocine" : "Caliente"} hasta que el centro de cada pieza esté a ${spanishLimit(limit, units)}.`,
  thermometer: "Use un termómetro.",
  serving: (pieces, mass) => `Una ración: ${pieces} ${pieces === 1 ? "pieza" : "piezas"} de unos ${mass}.`,
  batch: (name) => `Lote ${name}.`,
  frozenOn: (day) => `Congelado el ${day}.`,
  bestWithin: (days, at) => `Consumir preferentemente en ${days} días, a ${at}.`,
  bestBefore: (day, at) => `Consumir preferentemente antes del ${day}, conservado a ${at}.`,
  ingredients: (names) => `Ingredientes: ${names.join("; ")}.`,
  allergens: (marks) =>
    `Alérgenos, revise la etiqueta de cada ingrediente: ${marks.length === 0 ? "ninguno está marcado" : marks.join("; ")}.`,
  allergen: {
    milk: "leche",
    egg: "huevos",
    fish: "pescado",
    crustacean: "crustáceos",
    "tree nut": "frutos secos de árbol",
    wheat: "trigo",
    peanut: "cacahuetes",
    soy: "soja",
    sesame: "sésamo",
    gluten: "gluten",
    nut: "frutos de cáscara",
    celery: "apio",
    mustard: "mostaza",
    sulphite: "sulfitos",
    lupin: "altramuces",
    mollusc: "moluscos",
  },
  dependsOnMaker: "según el fabricante",
  allergenCautions: [
    "Revise la etiqueta de cada ingrediente: estas marcas son un recordatorio leído de los nombres, no una declaración.",
    "Un alérgeno que no figura puede estar presente, por la receta de un fabricante o por equipos compartidos.",
  ],
  storageCaution:
    "Esto es calidad, no seguridad. Lo que sigue congelado a −18 °C (0 °F) sigue tan seguro como entró; lo que se ha descongelado y ha pasado de 5 °C (41 °F) lo juzgan las normas sanitarias locales, no una fecha.",
  nutritionOf: (servingMass) =>
    `en ${servingMass === null ? "100 g" : `una ración de ${servingMass}`}, tal como se envasa`,
  nutrient: {
    calories: "calorías",
    "total fat": "grasa total",
    "saturated fat": "grasa saturada",
    cholesterol: "colesterol",
    sodium: "sodio",
    "total carbohydrate": "carbohidrato total",
    "dietary fiber": "fibra dietética",
    "total sugars": "azúcares totales",
    protein: "proteínas",
    energy: "valor energético",
    fat: "grasas",
    "of which saturates": "de las cuales saturadas",
    carbohydrate: "hidratos de carbono",
    "of which sugars": "de los cuales azúcares",
    fibre: "fibra alimentaria",
    salt: "sal",
  },
  nutritionCaution:
    "Los valores nutricionales son una estimación a partir de tablas, no un documento legal: haga revisar la etiqueta según la ley y, donde importe, por análisis.",
};

function spanishLimit(limit: CoreLimit, units: KitchenUnits): string {
  return cardNumber(bothLimits(limit, units), "es", units);
}

const TEXTS: Readonly<Record<CardLanguage, CardTexts>> = { en: EN, es: ES };

/** The sentences of cards and labels in a kitchen's language. */
export function cardTexts(language: CardLanguage): CardTexts {
  return TEXTS[language];
}

/** A number's text as the language writes it: a decimal comma in Spanish of a metric kitchen. */
export function cardNumber(text: string | number, language: CardLanguage, units: KitchenUnits): string {
  return language === "es" && units === "metric" ? String(text).replace(/(\d)\.(\d)/g, "$1,$2") : String(text);
}
