import type { Formula } from "slabwright";
import type { Parts } from "./moist-food";

/** A product as its developer knows it, and what the worlds hold to be true of its kind. All are invented. */
export interface Product {
  readonly id: string;
  readonly name: string;
  readonly formula: Formula;
  /** composition of the mix before a world moves it: the formula's, to a few points */
  readonly parts: Parts;
  readonly freezingC: number;
  /** of the whole coat as it lies; null when bare */
  readonly coat: { readonly mm: number; readonly parts: Parts; readonly airFraction: number } | null;
  /** water driven out as liquid, as a share of the mix's water: range that worlds draw from */
  readonly drip: readonly [number, number];
  readonly thicknessMm: number;
  readonly pan: { readonly lengthMm: number; readonly widthMm: number };
  readonly rows: number;
  readonly columns: number;
  readonly setpointC: number;
  readonly loadFraction: number;
  readonly turned: boolean;
  /** which of a world's two appliances it is tuned on */
  readonly appliance: "basket" | "oven";
  /** crisp time over core time that worlds draw from */
  readonly crispOverCore: readonly [number, number];
}

const ORIGIN = "invented for the worlds of the tests";
const COAT = {
  layer: "breading",
  pickupBasis: "substrate",
  pickupSePercent: 2,
} as const;

export const PRODUCTS: readonly Product[] = [
  {
    id: "turkey-sticks",
    name: "turkey sticks",
    formula: {
      id: "turkey-sticks",
      name: "turkey sticks",
      origin: ORIGIN,
      foodClass: "poultry",
      airFraction: 0.03,
      mix: [
        { ingredient: "turkey-ground-93", amount: "860 g" },
        { ingredient: "bread-white", amount: "90 g" },
        { ingredient: "onion", amount: "40 g" },
        { ingredient: "salt-fine", amount: "12 g" },
      ],
      coating: [
        {
          ...COAT,
          layer: "wash",
          lines: [
            { ingredient: "water", amount: "70 g" },
            { ingredient: "flour-all-purpose", amount: "30 g" },
          ],
          pickupPercent: 9,
        },
        { ...COAT, lines: [{ ingredient: "crumbs-dry-plain", amount: "100 g" }], pickupPercent: 12 },
      ],
      piecesPerServing: 5,
      note: "raw poultry inside",
    },
    parts: { water: 0.694, protein: 0.173, fat: 0.077, carbohydrate: 0.031, fibre: 0.003, ash: 0.022 },
    freezingC: -2.1,
    coat: {
      mm: 1.2,
      parts: { water: 0.36, protein: 0.08, fat: 0.05, carbohydrate: 0.47, fibre: 0.02, ash: 0.02 },
      airFraction: 0.35,
    },
    drip: [0.02, 0.06],
    thicknessMm: 14,
    pan: { lengthMm: 420, widthMm: 292 },
    rows: 12,
    columns: 6,
    setpointC: 195,
    loadFraction: 0.5,
    turned: true,
    appliance: "basket",
    crispOverCore: [0.95, 1.35],
  },
  {
    id: "cod-squares",
    name: "cod squares",
    formula: {
      id: "cod-squares",
      name: "cod squares",
      origin: ORIGIN,
      foodClass: "fish",
      airFraction: 0.02,
      mix: [
        { ingredient: "cod-atlantic", amount: "880 g" },
        { ingredient: "potato-flakes", amount: "70 g" },
        { ingredient: "oil-canola", amount: "30 g" },
        { ingredient: "salt-fine", amount: "10 g" },
      ],
      coating: [
        {
          ...COAT,
          layer: "wash",
          lines: [
            { ingredient: "water", amount: "65 g" },
            { ingredient: "rice-flour", amount: "35 g" },
          ],
          pickupPercent: 10,
        },
        {
          ...COAT,
          lines: [
            { ingredient: "crumbs-dry-plain", amount: "80 g" },
            { ingredient: "cornmeal", amount: "20 g" },
          ],
          pickupPercent: 10,
        },
      ],
      piecesPerServing: 3,
      note: "raw fish inside",
    },
    parts: { water: 0.73, protein: 0.166, fat: 0.037, carbohydrate: 0.044, fibre: 0.003, ash: 0.02 },
    freezingC: -1.8,
    coat: {
      mm: 0.9,
      parts: { water: 0.4, protein: 0.07, fat: 0.04, carbohydrate: 0.45, fibre: 0.02, ash: 0.02 },
      airFraction: 0.3,
    },
    drip: [0.03, 0.08],
    thicknessMm: 12,
    pan: { lengthMm: 420, widthMm: 292 },
    rows: 6,
    columns: 9,
    setpointC: 205,
    loadFraction: 0.45,
    turned: false,
    appliance: "oven",
    crispOverCore: [0.95, 1.4],
  },
  {
    id: "beef-patties",
    name: "square beef patties",
    formula: {
      id: "beef-patties",
      name: "square beef patties",
      origin: ORIGIN,
      foodClass: "groundMeat",
      airFraction: 0.02,
      mix: [
        { ingredient: "beef-ground-85", amount: "940 g" },
        { ingredient: "onion-flakes", amount: "20 g" },
        { ingredient: "salt-fine", amount: "12 g" },
      ],
      coating: [],
      piecesPerServing: 2,
      note: "bare, raw",
    },
    parts: { water: 0.638, protein: 0.182, fat: 0.146, carbohydrate: 0.013, fibre: 0.002, ash: 0.019 },
    freezingC: -1.9,
    coat: null,
    drip: [0.06, 0.12],
    thicknessMm: 11,
    pan: { lengthMm: 440, widthMm: 300 },
    rows: 4,
    columns: 6,
    setpointC: 200,
    loadFraction: 0.5,
    turned: true,
    appliance: "basket",
    crispOverCore: [0.8, 1.1],
  },
  {
    id: "chickpea-patties",
    name: "chickpea patties",
    formula: {
      id: "chickpea-patties",
      name: "chickpea patties",
      origin: ORIGIN,
      foodClass: "plant",
      airFraction: 0.05,
      mix: [
        { ingredient: "chickpeas-cooked", amount: "650 g" },
        { ingredient: "carrots-cooked", amount: "150 g" },
        { ingredient: "onion", amount: "100 g" },
        { ingredient: "chickpea-flour", amount: "70 g" },
        { ingredient: "oil-sunflower", amount: "25 g" },
        { ingredient: "salt-fine", amount: "10 g" },
      ],
      coating: [],
      piecesPerServing: 4,
      note: "bare",
    },
    parts: { water: 0.62, protein: 0.077, fat: 0.047, carbohydrate: 0.172, fibre: 0.062, ash: 0.022 },
    freezingC: -2,
    coat: null,
    drip: [0, 0.01],
    thicknessMm: 12,
    pan: { lengthMm: 400, widthMm: 300 },
    rows: 6,
    columns: 8,
    setpointC: 190,
    loadFraction: 0.5,
    turned: false,
    appliance: "basket",
    crispOverCore: [0.9, 1.35],
  },
  {
    id: "potato-bites",
    name: "potato bites",
    formula: {
      id: "potato-bites",
      name: "potato bites",
      origin: ORIGIN,
      foodClass: "plant",
      airFraction: 0.04,
      mix: [
        { ingredient: "hash-brown-frozen", amount: "800 g" },
        { ingredient: "potato-flakes", amount: "90 g" },
        { ingredient: "oil-canola", amount: "45 g" },
        { ingredient: "salt-fine", amount: "10 g" },
      ],
      coating: [
        {
          ...COAT,
          layer: "predust",
          lines: [
            { ingredient: "rice-flour", amount: "60 g" },
            { ingredient: "cornstarch", amount: "40 g" },
          ],
          pickupPercent: 5,
        },
      ],
      piecesPerServing: 8,
      note: "thin starch coat",
    },
    parts: { water: 0.678, protein: 0.026, fat: 0.053, carbohydrate: 0.205, fibre: 0.019, ash: 0.019 },
    freezingC: -1.6,
    coat: {
      mm: 0.45,
      parts: { water: 0.45, protein: 0.04, fat: 0.05, carbohydrate: 0.43, fibre: 0.01, ash: 0.02 },
      airFraction: 0.2,
    },
    drip: [0, 0.01],
    thicknessMm: 13,
    pan: { lengthMm: 392, widthMm: 280 },
    rows: 10,
    columns: 14,
    setpointC: 200,
    loadFraction: 0.5,
    turned: true,
    appliance: "basket",
    crispOverCore: [1, 1.5],
  },
  {
    id: "rice-cheese-sticks",
    name: "rice and cheese sticks",
    formula: {
      id: "rice-cheese-sticks",
      name: "rice and cheese sticks",
      origin: ORIGIN,
      state: "cooked and cooled",
      airFraction: 0.03,
      mix: [
        { ingredient: "rice-white-cooked", amount: "560 g" },
        { ingredient: "mozzarella-part-skim", amount: "300 g" },
        { ingredient: "egg-white", amount: "80 g" },
        { ingredient: "salt-fine", amount: "6 g" },
      ],
      coating: [
        {
          ...COAT,
          layer: "wash",
          lines: [
            { ingredient: "water", amount: "70 g" },
            { ingredient: "flour-all-purpose", amount: "30 g" },
          ],
          pickupPercent: 8,
        },
        { ...COAT, lines: [{ ingredient: "crumbs-dry-plain", amount: "100 g" }], pickupPercent: 11 },
      ],
      piecesPerServing: 4,
      note: "cooked inside",
    },
    parts: { water: 0.63, protein: 0.102, fat: 0.063, carbohydrate: 0.182, fibre: 0.003, ash: 0.02 },
    freezingC: -2,
    coat: {
      mm: 1,
      parts: { water: 0.33, protein: 0.09, fat: 0.07, carbohydrate: 0.47, fibre: 0.02, ash: 0.02 },
      airFraction: 0.35,
    },
    drip: [0, 0.02],
    thicknessMm: 15,
    pan: { lengthMm: 420, widthMm: 288 },
    rows: 12,
    columns: 6,
    setpointC: 190,
    loadFraction: 0.4,
    turned: false,
    appliance: "oven",
    crispOverCore: [0.9, 1.3],
  },
  {
    id: "cauliflower-bites",
    name: "cauliflower bites",
    formula: {
      id: "cauliflower-bites",
      name: "cauliflower bites",
      origin: ORIGIN,
      state: "cooked and cooled",
      airFraction: 0.05,
      mix: [
        { ingredient: "cauliflower-frozen", amount: "600 g" },
        { ingredient: "flour-all-purpose", amount: "110 g" },
        { ingredient: "cheddar", amount: "120 g" },
        { ingredient: "egg-whole", amount: "150 g" },
        { ingredient: "salt-fine", amount: "8 g" },
      ],
      coating: [],
      piecesPerServing: 8,
      note: "bare, baked before it is frozen",
    },
    parts: { water: 0.735, protein: 0.072, fat: 0.057, carbohydrate: 0.101, fibre: 0.017, ash: 0.018 },
    freezingC: -1.3,
    coat: null,
    drip: [0, 0.02],
    thicknessMm: 11,
    pan: { lengthMm: 400, widthMm: 280 },
    rows: 8,
    columns: 11,
    setpointC: 204,
    loadFraction: 0.55,
    turned: true,
    appliance: "basket",
    crispOverCore: [0.95, 1.3],
  },
  {
    id: "pork-bean-bites",
    name: "pork and bean bites",
    formula: {
      id: "pork-bean-bites",
      name: "pork and bean bites",
      origin: ORIGIN,
      foodClass: "groundMeat",
      airFraction: 0.03,
      mix: [
        { ingredient: "pork-ground", amount: "600 g" },
        { ingredient: "black-beans-cooked", amount: "300 g" },
        { ingredient: "onion", amount: "60 g" },
        { ingredient: "salt-fine", amount: "11 g" },
      ],
      coating: [
        { ...COAT, layer: "wash", lines: [{ ingredient: "egg-white", amount: "100 g" }], pickupPercent: 7 },
        {
          ...COAT,
          lines: [
            { ingredient: "crumbs-dry-plain", amount: "60 g" },
            { ingredient: "semolina", amount: "40 g" },
          ],
          pickupPercent: 10,
        },
      ],
      piecesPerServing: 6,
      note: "raw pork inside",
    },
    parts: { water: 0.632, protein: 0.134, fat: 0.13, carbohydrate: 0.055, fibre: 0.028, ash: 0.021 },
    freezingC: -2.2,
    coat: {
      mm: 0.8,
      parts: { water: 0.42, protein: 0.09, fat: 0.03, carbohydrate: 0.42, fibre: 0.02, ash: 0.02 },
      airFraction: 0.3,
    },
    drip: [0.02, 0.06],
    thicknessMm: 15,
    pan: { lengthMm: 420, widthMm: 296 },
    rows: 9,
    columns: 13,
    setpointC: 185,
    loadFraction: 0.5,
    turned: false,
    appliance: "basket",
    crispOverCore: [0.95, 1.4],
  },
];
