import type { EntryNames } from './entry-names.ts';
import type { TrialEntry } from './trial-changes.ts';
import { because } from './sentence.ts';

/** An entry about formulation trials or measurement studies in one sentence. */
export function trialSentence(entry: TrialEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'trialSet.added': {
      const { title, product } = entry.body;
      return `Began the trial set “${title}”${product ? ` (${product})` : ''}.`;
    }
    case 'responses.set': {
      const { trialSetId, responses, reason } = entry.body;
      const what = responses.length === 0 ? 'Removed the responses' : `Set ${counted(responses.length, 'response')}`;
      return `${what} of ${names.trialSet(trialSetId)}${because(reason)}`;
    }
    case 'factors.set': {
      const { trialSetId, factors, reason } = entry.body;
      const what = factors.length === 0 ? 'Removed the factors' : `Set the factors ${factors.map(({ label }) => label).join(', ')}`;
      return `${what} of ${names.trialSet(trialSetId)}${because(reason)}`;
    }
    case 'trial.added': {
      const { name, control, components, trialSetId } = entry.body;
      return `Added trial ${name}${control ? ' as the control' : ''} to ${names.trialSet(trialSetId)}, with ${counted(components.length, 'component')}.`;
    }
    case 'trial.changed':
      return `Changed ${names.trial(entry.body.trialId)}${because(entry.body.reason)}`;
    case 'sample.linked':
      return `Took sample ${names.sample(entry.body.sampleId)} as one of ${names.trial(entry.body.trialId)}.`;
    case 'sample.unlinked':
      return `Took sample ${names.sample(entry.body.sampleId)} away from ${names.trial(entry.body.trialId)}${because(entry.body.reason)}`;
    case 'study.recorded': {
      const { methodId, property, readings } = entry.body;
      const people = new Set(readings.map(({ appraiser }) => appraiser)).size;
      const parts = new Set(readings.map(({ part }) => part)).size;
      const read = `${counted(parts, 'part')} read by ${people} ${people === 1 ? 'person' : 'people'}, ${counted(readings.length, 'reading')}`;
      return `Recorded a measurement study of ${names.property(methodId, property)}: ${read}.`;
    }
  }
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
