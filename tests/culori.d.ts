/** The part of culori that the tests use; the package brings no types. */
declare module 'culori' {
  export interface Lab65 {
    mode: 'lab65';
    l: number;
    a: number;
    b: number;
  }
  export interface Xyz65 {
    mode: 'xyz65';
    x: number;
    y: number;
    z: number;
  }
  export function differenceCiede2000(): (one: Lab65, other: Lab65) => number;
  export function differenceCie94(): (one: Lab65, other: Lab65) => number;
  export function differenceCmc(l: number, c: number): (one: Lab65, other: Lab65) => number;
  export function converter(mode: 'lab65'): (colour: Xyz65) => Lab65;
  export function converter(mode: 'rgb'): (colour: Lab65) => { r: number; g: number; b: number };
}
