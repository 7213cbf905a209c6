/** Something that can be picked by typing a part of its name. */
export interface Pickable {
  id: string;
  label: string;
  detail?: string;
  /** Found by these as well, though they are not shown. */
  words?: string;
}

/** The items in whose label, detail or words every typed word occurs; those whose label begins with the text come first, those found by their words alone last. */
export function matchingItems<Item extends Pickable>(items: Item[], typed: string): Item[] {
  const text = typed.trim().toLowerCase();
  const words = text.split(/\s+/);
  const isIn = (searched: string) => words.every((word) => searched.toLowerCase().includes(word));
  const matches = items.filter(({ label, detail = '', words: more = '' }) => isIn(`${label} ${detail} ${more}`));
  const place = (item: Item) => (item.label.toLowerCase().startsWith(text) ? 0 : isIn(`${item.label} ${item.detail ?? ''}`) ? 1 : 2);
  return matches.sort((a, b) => place(a) - place(b));
}
