/** Whether `value` can stand where `model` stands: the same kinds of values in the same places, and nothing missing. */
export function fitsAs(value: unknown, model: unknown): boolean {
  if (Array.isArray(model)) return Array.isArray(value) && (model.length === 0 || value.every((item) => fitsAs(item, model[0])));
  if (typeof model !== 'object' || model === null) return typeof value === typeof model;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  return Object.entries(model).every(([key, part]) => fitsAs((value as Record<string, unknown>)[key], part));
}
