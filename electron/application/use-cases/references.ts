import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { lightOfReference } from '../../../shared-lib/colour/light-of-reference.ts';
import { lightInWords } from '../../../shared-lib/colour/measurement-light.ts';
import { spectrumInWords, spectrumOf, spectrumText } from '../../../shared-lib/colour/spectrum-text.ts';
import { screenColour } from '../../../shared-lib/colour/srgb.ts';
import { typedSpectrum } from '../../../shared-lib/colour/typed-spectrum.ts';
import { whitePoint } from '../../../shared-lib/colour/white-point.ts';
import { labOfReference } from '../../../shared-lib/colour/lab-of-reference.ts';
import type { ReferenceView } from '../../../shared-lib/notebook/colour-views.ts';
import { readSpectra } from '../../exchange/spectra-file.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { editionsBefore, findReference, listReferences, type StoredReference } from '../queries/references.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';
import { decodeFile } from '../decode-file.ts';

export function referencesList({ notebook }: Workplace): ReferenceView[] {
  return listReferences(notebook.store).map((reference) => referenceView(notebook, reference));
}

/** Adds a reference colour, or a new edition of one, which takes over its tolerances. */
export function addReference(workplace: Workplace, input: ParsedInput<'reference.add'>): ReferenceView {
  const { notebook } = workplace;
  const { store } = notebook;
  const { spectrum: typed, file, replaces, ...fields } = input;
  const before = replaces ? findReference(store, replaces.referenceId) : undefined;
  if (replaces && (!before || before.replacedBy !== null)) throw new Refusal('conflict', 'This edition is not in use any more; look at the list again.');
  if (before && before.retiredAt !== null) throw new Refusal('conflict', `${before.name} is retired; take it back into use first.`);
  const same = listReferences(store).find(({ name, referenceId }) => name.toLowerCase() === fields.name.toLowerCase() && referenceId !== before?.referenceId);
  if (same) throw new InputError('name', fields.name, `There is already a reference colour ${same.name}; a name stands for one only. ${same.retiredAt === null ? 'Make a new edition of it instead.' : 'It is retired; take it back into use instead.'}`);
  if (file && typed.trim() !== '') throw new InputError('spectrum', null, 'A reference has one spectrum, that of the file or the one typed.');
  const fromFile = file && spectrumFromFile(file);
  const spectrum = fromFile ? spectrumText(fromFile.spectrum) : typed.trim() === '' ? null : spectrumText(typedSpectrum(typed, 'spectrum'));
  if ((spectrum === null) === (fields.lab === null)) {
    throw new InputError(spectrum === null ? 'spectrum' : 'lab', null, spectrum === null ? 'A reference needs its spectrum, or L*, a* and b*.' : 'A reference has a spectrum or L*, a*, b*, not both: they follow from the spectrum.');
  }
  if (spectrum !== null && fields.illuminant === 'C') throw new InputError('illuminant', 'C', 'There are no weights for illuminant C here; choose another for a spectrum.');
  const kept = fromFile && attachmentDraft(store, file!.name, 'text/plain', fromFile.bytes);
  const referenceId = workplace.newId();
  notebook.append(
    [
      ...(kept?.drafts ?? []),
      {
        kind: 'reference.added',
        body: {
          referenceId,
          ...fields,
          spectrum,
          file: kept && fromFile ? { sha256: kept.sha256, reading: file!.reading, place: file!.place, name: fromFile.name } : null,
          replaces,
        },
      },
      ...(before?.tolerances ?? []).map(({ text: _words, ...tolerance }) => ({ kind: 'tolerance.set' as const, body: { referenceId, ...tolerance, reason: 'Taken over from the edition before' } })),
    ],
    kept?.attachments ?? [],
  );
  return referenceView(notebook, requireReference(notebook, referenceId));
}

/** Sets what a customer takes; changing it needs a reason. Tests keep the limits that they have. */
export function setTolerance({ notebook }: Workplace, { reason, ...input }: ParsedInput<'tolerance.set'>): ReferenceView {
  const reference = requireReference(notebook, input.referenceId);
  if (reference.replacedBy !== null) throw new Refusal('conflict', 'This edition is not in use any more; set the tolerance on the newest.');
  const before = reference.tolerances.find(({ customer }) => customer.toLowerCase() === input.customer.toLowerCase());
  if (before) requireReason(reason, `${before.customer} has the tolerance ${before.text}`);
  notebook.append([{ kind: 'tolerance.set', body: { ...input, customer: before?.customer ?? input.customer, reason: before ? reason.trim() : '' } }]);
  return referenceView(notebook, requireReference(notebook, input.referenceId));
}

/** It stays with the tests that were made against it, and is not offered for new ones. */
export function retireReference({ notebook }: Workplace, { referenceId, reason }: ParsedInput<'reference.retire'>): ReferenceView {
  const { retiredAt, replacedBy } = requireReference(notebook, referenceId);
  if (replacedBy !== null) throw new Refusal('conflict', 'This edition is not in use any more.');
  if (retiredAt !== null) throw new Refusal('conflict', 'This reference colour is retired already.');
  requireReason(reason, 'A reference colour is retired for a reason');
  notebook.append([{ kind: 'reference.retired', body: { referenceId, reason: reason.trim() } }]);
  return referenceView(notebook, requireReference(notebook, referenceId));
}

export function returnReference({ notebook }: Workplace, { referenceId, reason }: ParsedInput<'reference.return'>): ReferenceView {
  if (requireReference(notebook, referenceId).retiredAt === null) throw new Refusal('conflict', 'This reference colour is in use.');
  requireReason(reason, 'A retired reference colour comes back for a reason');
  notebook.append([{ kind: 'reference.returned', body: { referenceId, reason: reason.trim() } }]);
  return referenceView(notebook, requireReference(notebook, referenceId));
}

function requireReference({ store }: OpenNotebook, referenceId: string): StoredReference {
  const reference = findReference(store, referenceId);
  if (!reference) throw new Refusal('not-found', 'This reference colour is not in the notebook.');
  return reference;
}

function spectrumFromFile({ bytes: base64, reading, place }: NonNullable<ParsedInput<'reference.add'>['file']>) {
  const bytes = decodeFile(base64);
  const found = readSpectra(bytes, reading)[place];
  if (!found) throw new InputError('file.place', place, `The file has no spectrum ${place + 1}.`);
  return { ...found, bytes };
}

function referenceView({ store }: OpenNotebook, reference: StoredReference): ReferenceView {
  const { replacedBy: _inUse, ...kept } = reference;
  const { illuminant, observer, spectrum, name } = reference;
  const [L, a, b] = labOfReference(reference);
  return {
    ...kept,
    colour: { L, a, b },
    swatch: { name, colour: screenColour([L, a, b], whitePoint(illuminant, observer)).hex },
    known: spectrum === null ? 'L*, a*, b*' : `spectrum ${spectrumInWords(spectrumOf(spectrum))}`,
    light: lightInWords(lightOfReference(reference)),
    editions: editionsBefore(store, reference.referenceId),
  };
}
