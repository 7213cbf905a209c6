/** '38 mN/m' for a sentence; text that ends in its unit already stays as it is. */
export function withUnit(value: number | string, unit: string | undefined): string {
  const text = String(value);
  return unit && !text.endsWith(unit) ? `${text} ${unit}` : text;
}
