import { canonicalJson } from './canonical-json.ts';
import type { EntrySentence } from './sentence.ts';
import { replacesSomething } from './replaces-something.ts';

/** A field of a thing in words: its label and how a value reads; '' reads as nothing. */
export type FieldWords<Fields> = { [Key in keyof Fields]: { label: string; text: (value: Fields[Key]) => string } };

/** What differs between one state of a thing and the next, field by field. It is a correction where it takes the place of something said. */
export function changedFields<Fields extends object>(words: FieldWords<Fields>, { before, after, reason }: { before: Fields; after: Fields; reason: string }): { said: string; correction: EntrySentence['correction'] } {
  const keys = (Object.keys(words) as (keyof Fields)[]).filter((key) => canonicalJson(before[key]) !== canonicalJson(after[key]));
  const saidIn = (state: Fields) => keys.map((key) => `${words[key].label} ${words[key].text(state[key]) || 'nothing'}`).join('; ');
  const said = saidIn(after);
  return { said, correction: replacesSomething(before, after) ? { before: saidIn(before), after: said, reason } : null };
}
