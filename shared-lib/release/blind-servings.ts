import { seededRandom, type Random } from '../statistics/random.ts';

/** What is in a jar: the print, or the control (unprinted film, or the print it is compared with). */
export type Content = 'print' | 'control';

export interface Jar {
  /** Three digits, no two alike in a test. */
  code: number;
  content: Content;
}

/** The jars of one assessor, in the order in which they are smelled. */
export type Serving = Jar[];

const PRINT = 'print';
const CONTROL = 'control';

/** The six orders of a triangle, each as often as the others. */
const TRIANGLES: Content[][] = [
  [PRINT, CONTROL, CONTROL],
  [CONTROL, PRINT, CONTROL],
  [CONTROL, CONTROL, PRINT],
  [CONTROL, PRINT, PRINT],
  [PRINT, CONTROL, PRINT],
  [PRINT, PRINT, CONTROL],
];
/** Twice over, so that the second assessor's order does not follow from the first's. */
const PAIRS: Content[][] = [
  [PRINT, CONTROL],
  [CONTROL, PRINT],
  [PRINT, CONTROL],
  [CONTROL, PRINT],
];

/** Most assessors that three-digit codes reach for. */
export const MOST_ASSESSORS = 200;

/**
 * Jars for each assessor of a triangle test. A seed always gives the same; the first servings do not change when assessors
 * are added.
 * @param count of assessors, at most `MOST_ASSESSORS`
 */
export function triangleServings(seed: number, count: number): Serving[] {
  return servings(seed, count, TRIANGLES);
}

/** Print and control for each assessor who grades the smell of both. */
export function pairServings(seed: number, count: number): Serving[] {
  return servings(seed, count, PAIRS);
}

/** Every block of as many assessors as there are orders has each order once. */
function servings(seed: number, count: number, orders: Content[][]): Serving[] {
  const random = seededRandom(seed);
  const codes = shuffled(Array.from({ length: 900 }, (_, index) => index + 100), random);
  const laidOut: Content[][] = [];
  while (laidOut.length < count) laidOut.push(...shuffled(orders, random));
  let next = 0;
  return laidOut.slice(0, count).map((order) => order.map((content) => ({ code: codes[next++]!, content })));
}

/** R. Durstenfeld, Commun. ACM 7 (1964) 420. */
function shuffled<Item>(items: readonly Item[], random: Random): Item[] {
  const mixed = [...items];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(random.uniform() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!];
  }
  return mixed;
}
