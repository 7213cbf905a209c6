import { spectrumInWords, spectrumOf } from '../colour/spectrum-text.ts';
import type { ColourEntry } from './colour-changes.ts';
import type { EntryNames } from './entry-names.ts';
import { toleranceText } from './tolerance-text.ts';
import { because } from './sentence.ts';

/** An entry about reference colours or spectra in one sentence. */
export function colourSentence(entry: ColourEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'reference.added': {
      const { name, spectrum, lab, illuminant, observer, replaces, file } = entry.body;
      const known = spectrum !== null ? `spectrum ${spectrumInWords(spectrumOf(spectrum))}${file ? ` from ${file.name}` : ''}` : `L* ${lab?.L}, a* ${lab?.a}, b* ${lab?.b} under ${illuminant}, ${observer}°`;
      return replaces ? `Put a new edition of the reference colour ${name} in the place of the last one (${known})${because(replaces.reason)}` : `Added the reference colour ${name} (${known}).`;
    }
    case 'tolerance.set':
      return `Set the tolerance of ${entry.body.customer} on ${names.reference(entry.body.referenceId)} to ${toleranceText(entry.body)}${because(entry.body.reason)}`;
    case 'reference.retired':
      return `Retired ${names.reference(entry.body.referenceId)}${because(entry.body.reason)}`;
    case 'reference.returned':
      return `Took ${names.reference(entry.body.referenceId)} back into use${because(entry.body.reason)}`;
    case 'spectrum.read': {
      const { testId, row, key, value, file, reason } = entry.body;
      const place = `${names.field(testId, key)}${row === '' ? '' : `, ${names.row(testId, row)}`}, in ${names.test(testId)}`;
      return `Read the spectrum ${file.name} (${spectrumInWords(spectrumOf(value))}) into ${place}${because(reason)}`;
    }
  }
}
