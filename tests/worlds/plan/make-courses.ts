import { mkdirSync, writeFileSync } from "node:fs";
import { seedOf } from "../make-worlds";
import { PRODUCTS, type Product } from "../products";
import { storedWorlds } from "../stored-world";
import { drawWorld } from "../world";
import { simulateCourses } from "./course";

/** Simulates the courses of the worlds whose product's name holds a word (all without one) and writes them to `courses/`. */
export function makeCourses(word = "", tell: (line: string) => void = () => {}): void {
  mkdirSync(new URL("courses/", import.meta.url), { recursive: true });
  for (const stored of storedWorlds().filter(({ product }) => product.includes(word))) {
    const start = performance.now();
    const product = PRODUCTS.find(({ id }) => id === stored.product) as Product;
    const courses = simulateCourses(drawWorld(product, seedOf(product, stored.seed)), stored);
    const text = `${JSON.stringify(courses, (_, value) => (typeof value === "number" ? Number(value.toPrecision(5)) : value))}\n`;
    writeFileSync(new URL(`courses/${stored.product}-${stored.seed}.json`, import.meta.url), text);
    tell(
      `${stored.product} ${stored.seed}: ${(text.length / 1000).toFixed(0)} kB, ${((performance.now() - start) / 1000).toFixed(0)} s`,
    );
  }
}
