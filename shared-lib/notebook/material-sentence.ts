import { structureText } from '../material/structure-text.ts';
import { changedFields, type FieldWords } from './changed-fields.ts';
import type { EntryNames } from './entry-names.ts';
import { because, type EntrySentence } from './sentence.ts';
import type { MaterialEntry } from './material-changes.ts';
import type { LotFields, MaterialFields } from './material-entries.ts';

const text = (value: string | null) => value ?? '';
const materialWords: FieldWords<MaterialFields> = {
  name: { label: 'name', text },
  supplier: { label: 'supplier', text },
  description: { label: 'description', text },
  layers: { label: 'structure', text: structureText },
};
const lotWords: FieldWords<LotFields> = {
  code: { label: 'lot', text },
  receivedOn: { label: 'received on', text },
  expiresOn: { label: 'expires on', text },
  treatedOn: { label: 'treated on', text },
  treatedSide: { label: 'treated side', text },
  thicknessUm: { label: 'thickness', text: (value) => (value === null ? '' : `${value} µm`) },
  note: { label: 'note', text },
};

/** An entry about a material or lot in one sentence, with what stood before where it corrects. */
export function materialSentence(entry: MaterialEntry, names: EntryNames): EntrySentence {
  switch (entry.kind) {
    case 'material.described':
      return described(names.material(entry.body.materialId), changedFields(materialWords, entry.body), entry.body.reason);
    case 'lot.described':
      return described(names.lot(entry.body.lotId), changedFields(lotWords, entry.body), entry.body.reason);
    case 'lot.madeFrom': {
      const { lotId, before, lotIds, reason } = entry.body;
      const listed = (ids: string[]) => ids.map((id) => names.lot(id)).join('; ') || 'nothing';
      return {
        text: `Put down that ${names.lot(lotId)} was made from ${listed(lotIds)}${because(reason)}`,
        correction: before.length > 0 ? { before: listed(before), after: listed(lotIds), reason } : null,
      };
    }
    case 'lot.retired':
      return { text: `Retired ${names.lot(entry.body.lotId)}${because(entry.body.reason)}`, correction: null };
    case 'lot.returned':
      return { text: `Took ${names.lot(entry.body.lotId)} back into use${because(entry.body.reason)}`, correction: null };
  }
}

function described(name: string, { said, correction }: ReturnType<typeof changedFields>, reason: string): EntrySentence {
  return { text: `Described ${name}: ${said}${because(reason)}`, correction };
}
