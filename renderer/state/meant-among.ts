import type { ItemChoice } from '../../shared-lib/notebook/colour-views.ts';

/** Place of the choice that is meant by what was typed: the one typed in full, else the first that holds it; −1 where none does, or nothing is typed. */
export function meantAmong(choices: readonly ItemChoice[], typed: string): number {
  const text = typed.trim().toLowerCase();
  if (text === '') return -1;
  const names = choices.map((choice) => choice.typed.toLowerCase());
  const whole = names.indexOf(text);
  return whole === -1 ? names.findIndex((name) => name.includes(text)) : whole;
}
