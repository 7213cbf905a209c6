import { XMLParser } from 'fast-xml-parser';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { FoundSpectrum } from './found-spectrum.ts';

const MOST_NESTED = 40;

type Element = Record<string, unknown>;

/**
 * The reflectance spectra of an XML file by ISO 17972: each `ReflectanceSpectrum` of an object, on the wavelength range that its
 * colour specification states. Reflectance is 0–1 there. Names are taken without their prefix.
 * @throws InputError (`bytes`) for what is no such file, and for a document type, which none of them needs.
 */
export function readCxf(text: string): FoundSpectrum[] {
  if (/<!DOCTYPE/i.test(text)) throw new InputError('bytes', null, 'The file declares a document type of its own, which files of spectra have no need of; it is not read.');
  const root = parse(text);
  const ranges = new Map(elements(root, 'ColorSpecification').map((specification) => [attribute(specification, 'Id'), elements(specification, 'WavelengthRange')[0]]));
  const found = elements(root, 'Object').flatMap((object) =>
    elements(object, 'ReflectanceSpectrum').map((spectrum) => foundIn(attribute(object, 'Name') || attribute(object, 'Id') || 'spectrum', spectrum, ranges.get(attribute(spectrum, 'ColorSpecification')))),
  );
  if (found.length === 0) throw new InputError('bytes', null, 'The file holds no reflectance spectra.');
  return found;
}

function parse(text: string): Element {
  try {
    const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '@', removeNSPrefix: true, parseTagValue: false, parseAttributeValue: false, processEntities: true });
    return parser.parse(text, true) as Element;
  } catch {
    throw new InputError('bytes', null, 'The file is no well-formed XML; export it again from the instrument’s program.');
  }
}

function foundIn(name: string, spectrum: Element, range: Element | undefined): FoundSpectrum {
  const text = String(spectrum['#text'] ?? '').trim();
  if (text === '') throw new InputError('bytes', null, `${name}: its spectrum has no values.`);
  const values = text.split(/\s+/).map(Number);
  const bad = values.findIndex((value) => !Number.isFinite(value));
  if (bad !== -1) throw new InputError('bytes', null, `${name}: the value of band ${bad + 1} is no number.`);
  const start = Number(attribute(spectrum, 'StartWL') || (range ? attribute(range, 'StartWL') : ''));
  const step = Number(range ? attribute(range, 'Increment') : '');
  const known = start > 0 && step > 0;
  return { name, values, frame: { wavelengthsNm: null, ...(known ? { fromNm: start, stepNm: step } : {}), scale: 'fraction' } };
}

function attribute(element: Element, name: string): string {
  return String(element[`@${name}`] ?? '');
}

/** All elements of a name below `within`, in the order of the file; an element of that name is not searched for further ones. */
function elements(within: unknown, name: string, depth = 0): Element[] {
  if (depth > MOST_NESTED || within === null || typeof within !== 'object') return [];
  return Object.entries(within).flatMap(([key, value]) => {
    const items = Array.isArray(value) ? value : [value];
    if (key !== name) return items.flatMap((item) => elements(item, name, depth + 1));
    return items.map((item) => (typeof item === 'object' && item !== null ? (item as Element) : { '#text': item }));
  });
}
