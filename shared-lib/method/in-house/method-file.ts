import { z } from 'zod';
import { parseInput } from '../../calculation/calculation.ts';
import { InputError } from '../../calculation/input-error.ts';
import { checkWrittenMethod } from './check-written-method.ts';
import { withoutPictures } from './without-pictures.ts';
import { methodOriginSchema, writtenMethodSchema, type MethodOrigin, type WrittenMethod } from './written-method.ts';

/** One version of an in-house method as it goes from lab to lab: `NAME.laydown-method.json`. */
export interface MethodFile {
  method: WrittenMethod;
  /** Whose method it is, and which version. */
  from: MethodOrigin;
}

/** Raised when older programs could no longer read what is written. */
const FORMAT_VERSION = 1;
const FORMAT = 'laydown-method';
/** A method is a few pages of text. */
const MOST_CHARACTERS = 1_000_000;

const fileSchema = z.strictObject({ format: z.literal(FORMAT), formatVersion: z.literal(FORMAT_VERSION), from: methodOriginSchema, method: writtenMethodSchema });

/** The file's text: the same for the same method. Pictures stay in the notebook. */
export function writeMethodFile({ method, from }: MethodFile): string {
  // Parsing puts the members into the order of the schema.
  return `${JSON.stringify(fileSchema.parse({ format: FORMAT, formatVersion: FORMAT_VERSION, from, method: withoutPictures(method) }), null, 2)}\n`;
}

/**
 * Reads a file that may come from anywhere.
 * @throws InputError on the field `file` that says in words why it is not taken in
 */
export function readMethodFile(text: string): MethodFile {
  if (text.length > MOST_CHARACTERS) throw refused(`The file is larger than ${MOST_CHARACTERS / 1_000_000} MB, and a method never is; it was not read.`);
  const content = contentOf(text);
  const { format, formatVersion } = content;
  if (format !== FORMAT) throw refused('This is not a method file: it does not say that it is one. Choose a file that ends in .laydown-method.json.');
  if (typeof formatVersion === 'number' && formatVersion > FORMAT_VERSION) throw refused(`The file was written by a newer version of Laydown (format ${formatVersion}); this one reads up to ${FORMAT_VERSION}.`);
  try {
    const { method, from } = parseInput(fileSchema, content);
    checkWrittenMethod(method);
    return { method: withoutPictures(method), from };
  } catch (error) {
    if (error instanceof InputError) throw refused(`The file does not hold a whole method: ${error.message}`);
    throw error;
  }
}

function contentOf(text: string): Record<string, unknown> {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    throw refused('The file cannot be read: it is not JSON, or only a part of it is there.');
  }
  if (content === null || typeof content !== 'object' || Array.isArray(content)) throw refused('This is not a method file.');
  return content as Record<string, unknown>;
}

function refused(message: string): InputError {
  return new InputError('file', null, message);
}
