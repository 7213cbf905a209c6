import type { ParsedInput } from '../../../shared-lib/api.ts';
import { DraftFile } from '../draft-file.ts';
import type { Workplace } from '../workplace.ts';

/** What was typed into the open notebook's forms and cells and never entered. */
export function draftsKept(workplace: Workplace): { drafts: Record<string, string> } {
  return { drafts: workplace.open && workplace.open.store.readOnly === '' ? draftFile(workplace).all : {} };
}

/** Of a notebook that can only be read nothing is kept: another program is writing there. */
export function keepDraft(workplace: Workplace, { notebook, name, content }: ParsedInput<'draft.keep'>): Record<string, never> {
  const { open, surroundings } = workplace;
  if (open?.path !== notebook || open.store.readOnly !== '') return {};
  draftFile(workplace).keep(name, content);
  if (content === null) surroundings.emit({ kind: 'draft-ended', name });
  return {};
}

function draftFile(workplace: Workplace): DraftFile {
  const { notebook, surroundings } = workplace;
  notebook.drafts ??= new DraftFile(surroundings.settingsFolder, notebook.path);
  return notebook.drafts;
}
