import { readDecimal } from '../../quantity/decimal.ts';
import type { WrittenSetting } from './written-method.ts';

/**
 * A setting from what was said of it: a number where it is one, also with its unit behind; nothing said of a quantity, a
 * number written down each time; else text, which takes its unit along where it begins with a figure: '10 to 12 N'.
 */
export function writtenSetting(key: string, label: string, said: string, unit: string): WrittenSetting {
  const read = readDecimal(unit !== '' && said.endsWith(unit) ? said.slice(0, -unit.length) : said);
  if ('value' in read) return { kind: 'number', key, label, unit, value: read.value, tolerance: null };
  if (said === '' && unit !== '') return { kind: 'number', key, label, unit, value: null, tolerance: null };
  return { kind: 'text', key, label, value: saidWithUnit(said, unit) };
}

/** '90' of degrees as '90 °'; words, and what ends in its unit already, as they are. */
export function saidWithUnit(said: string, unit: string): string {
  return unit !== '' && /^[−-]?\d/.test(said) && !said.endsWith(unit) ? `${said} ${unit}` : said;
}
