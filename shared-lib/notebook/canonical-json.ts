import { InputError } from '../calculation/input-error.ts';

/**
 * The one way to write a JSON value as text (RFC 8785): keys sorted by UTF-16 code units, no blanks, numbers as
 * ECMAScript writes them, strings with the shortest escapes. Equal values give equal text, so the text can be hashed.
 * @throws InputError naming the member that JSON has no form for: NaN, ±Infinity, `undefined`, a function, a bigint, an
 *   object that is not plain, a string with half a surrogate pair. Nothing is dropped silently.
 */
export function canonicalJson(value: unknown): string {
  return write(value, '');
}

function write(value: unknown, path: string): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new InputError(path, null, `${named(path)} is not a number that can be recorded.`);
    return JSON.stringify(value);
  }
  if (typeof value === 'string') return writeString(value, path);
  if (Array.isArray(value)) return `[${Array.from(value, (item, index) => write(item, `${path}[${index}]`)).join(',')}]`;
  if (typeof value === 'object' && isPlain(value)) {
    const members = Object.keys(value)
      .sort()
      .map((key) => {
        const where = path === '' ? key : `${path}.${key}`;
        return `${writeString(key, where)}:${write((value as Record<string, unknown>)[key], where)}`;
      });
    return `{${members.join(',')}}`;
  }
  const found = typeof value === 'object' ? 'an object that is not plain' : typeof value;
  throw new InputError(path, null, `${named(path)} cannot be recorded: it is ${found}.`);
}

function writeString(text: string, path: string): string {
  if (!isWellFormed(text)) {
    throw new InputError(path, null, `${named(path)} has a broken character (half a surrogate pair); type it again.`);
  }
  return JSON.stringify(text);
}

/** With the `u` flag a surrogate matches alone only when its partner is missing. */
function isWellFormed(text: string): boolean {
  return !/\p{Surrogate}/u.test(text);
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || prototype === Object.prototype;
}

function named(path: string): string {
  return path === '' ? 'The value' : path;
}
