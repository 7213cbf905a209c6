import type { ChoiceField } from '../method/method.ts';
import { flowCupIds, flowCups, type FlowCupId } from './flow-cups.ts';

/** One key for each cup; the digits are those of the D1200 cups. */
const SHORTCUTS: Record<FlowCupId, string> = {
  'd1200-1': '1',
  'd1200-2': '2',
  'd1200-3': '3',
  'd1200-4': '4',
  'd1200-5': '5',
  'd4212-1': 'q',
  'd4212-2': 'w',
  'd4212-3': 'e',
  'd4212-4': 'r',
  'd4212-5': 't',
  'iso2431-3': 'a',
  'iso2431-4': 's',
  'iso2431-5': 'd',
  'iso2431-6': 'f',
  'din53211-4': 'n',
};

/** Which cup the seconds are of. */
export const cupField: ChoiceField = {
  kind: 'choice',
  key: 'cup',
  label: 'Cup',
  required: true,
  choices: flowCupIds.map((id) => ({ value: id, label: flowCups[id].label, shortcut: SHORTCUTS[id] })),
};
