import type { Field } from '../../shared-lib/method/method.ts';

/** What was typed in a cell as the reader knows it: a choice by its label, whether its value, label or shortcut was typed. */
export function cellText(field: Field, typed: string): string {
  return chosenIn(field, typed)?.label ?? typed;
}

/** The choice that a typed value, label or shortcut stands for. */
export function chosenIn(field: Field, typed: string): { value: string; label: string } | undefined {
  if (field.kind !== 'choice' || typed === '') return undefined;
  const wanted = typed.toLowerCase();
  return field.choices.find(({ value, label, shortcut }) => [value, label, shortcut].some((name) => name.toLowerCase() === wanted));
}
