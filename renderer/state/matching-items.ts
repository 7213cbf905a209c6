/** Something that can be picked by typing a part of its name. */
export interface Pickable {
  id: string;
  label: string;
  detail?: string;
}

/** The items in whose label or detail every typed word occurs; those whose label begins with the text come first. */
export function matchingItems<Item extends Pickable>(items: Item[], typed: string): Item[] {
  const text = typed.trim().toLowerCase();
  const words = text.split(/\s+/);
  const matches = items.filter((item) => {
    const searched = `${item.label} ${item.detail ?? ''}`.toLowerCase();
    return words.every((word) => searched.includes(word));
  });
  const first = (item: Item) => (item.label.toLowerCase().startsWith(text) ? 0 : 1);
  return matches.sort((a, b) => first(a) - first(b));
}
