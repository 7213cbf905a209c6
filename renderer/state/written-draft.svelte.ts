import { z } from 'zod';
import type { Answer, CallProblem } from '../../shared-lib/api.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { parseInput } from '../../shared-lib/calculation/calculation.ts';
import { checkWrittenMethod } from '../../shared-lib/method/in-house/check-written-method.ts';
import { statisticsFor } from '../../shared-lib/method/in-house/statistic-words.ts';
import { writtenMethodSchema, type WrittenMethod } from '../../shared-lib/method/in-house/written-method.ts';
import type { InHouseView } from '../../shared-lib/notebook/in-house-views.ts';
import type { KeptDraft } from './kept-draft.ts';
import { blankGrades, blankProperty, blankReading, linesOf, writtenLinesSchema, type ReadingLine, type SettingLine, type WrittenLines } from './written-lines.ts';
import { isKept, writtenOf } from './written-of.ts';

const typedSchema = z.strictObject({ lines: writtenLinesSchema, reason: z.string() });

/** Asked on every new page; a line that nobody fills in is left out. */
const suggestedSettings: [label: string, unit: string][] = [
  ['Apparatus', ''],
  ['Instrument', ''],
  ['Load', 'N'],
  ['Strokes', ''],
  ['Dwell', 's'],
  ['Angle', '°'],
  ['Temperature', '°C'],
];

/** A method while it is being written down, or its next version. */
export class WrittenDraft implements KeptDraft {
  readonly shape = typedSchema;
  lines = $state() as WrittenLines;
  reason = $state('');
  #problem = $state.raw<{ field: string; message: string } | null>(null);
  #busy = $state(false);

  /** @param from the version that it starts from, or what follows from a habit */
  constructor(from: WrittenMethod | null) {
    this.lines = from ? linesOf(from) : blankLines();
    if (from === null) return;
    // What is usually asked and not there yet is offered again.
    const there = this.lines.settings.map(({ label }) => label.toLowerCase());
    this.lines.settings.push(...suggestions().filter(({ label }) => !there.includes(label.toLowerCase())));
  }

  get typed(): z.infer<typeof typedSchema> {
    const { lines, reason } = this;
    return $state.snapshot({ lines, reason });
  }

  set typed(typed: z.infer<typeof typedSchema>) {
    Object.assign(this, typed);
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** What was typed as a method, or why it is none yet. */
  readonly written: { method: WrittenMethod } | { field: string; message: string } = $derived.by(() => {
    try {
      const method = parseInput(writtenMethodSchema, writtenOf(this.lines));
      checkWrittenMethod(method);
      return { method };
    } catch (error) {
      if (error instanceof InputError) return { field: error.field, message: error.message };
      throw error;
    }
  });

  /** The sentence that belongs beside a field of the written method, or ''; said only once the person has tried to keep it. */
  problemAt(field: string): string {
    const problem = this.#problem;
    if (!problem || problem.field !== field) return '';
    return problem.message.startsWith(`${field} `) ? `This${problem.message.slice(field.length)}` : problem.message;
  }

  get problem(): string {
    return this.#problem?.message.replace(/^[\w.[\]]+(?= (must|is|takes|needs) )/, (field) => nameOf(field, this.lines)) ?? '';
  }

  /** Sends it; `null` when it is no method yet or was refused. */
  async send(ask: (written: WrittenMethod, reason: string) => Promise<Answer<InHouseView>>): Promise<InHouseView | null> {
    const read = this.written;
    if (!('method' in read)) {
      this.#problem = read;
      return null;
    }
    if (this.#busy) return null;
    this.#busy = true;
    const answer = await ask(read.method, this.reason.trim());
    this.#busy = false;
    this.#problem = answer.ok ? null : withoutPrefix(answer.problem);
    return answer.ok ? answer.value : null;
  }

  addSetting(): void {
    this.lines.settings.push(blankSetting('', ''));
  }

  addReading(): void {
    const taken = this.lines.readings.map(({ id }) => id);
    let number = 1;
    while (taken.includes(`new ${number}`)) number += 1;
    this.lines.readings.push(blankReading(`new ${number}`));
  }

  /** Results of the reading go with it. */
  removeReading(reading: ReadingLine): void {
    this.lines.readings = this.lines.readings.filter((other) => other !== reading);
    this.lines.properties = this.lines.properties.filter((property) => property.reading !== reading.id);
  }

  /** Another kind allows other statistics; a grade gets a scale to begin with. */
  setKind(reading: ReadingLine, kind: ReadingLine['kind']): void {
    reading.kind = kind;
    if (kind === 'grade' && reading.grades.length === 0) reading.grades = blankGrades();
    for (const property of this.lines.properties) {
      if (property.reading === reading.id && !statisticsFor(kind).includes(property.statistic)) property.statistic = statisticsFor(kind)[0]!;
    }
  }

  addProperty(): void {
    const reading = this.lines.readings.at(-1);
    this.lines.properties.push({ ...blankProperty(reading?.id ?? ''), statistic: statisticsFor(reading?.kind ?? 'number')[0]!, headline: this.lines.properties.length === 0 });
  }
}

function blankLines(): WrittenLines {
  return {
    title: '',
    shortTitle: '',
    shows: '',
    how: '',
    spoils: '',
    standards: '',
    cautions: [],
    settings: suggestions(),
    rowName: 'specimen',
    replicates: '5',
    readings: [blankReading('first')],
    properties: [blankProperty('first')],
  };
}

function suggestions(): SettingLine[] {
  return suggestedSettings.map(([label, unit]) => blankSetting(label, unit));
}

function blankSetting(label: string, unit: string): SettingLine {
  return { key: '', label, value: '', tolerance: '', unit, eachTime: false, instrument: false };
}

function withoutPrefix({ field, message }: CallProblem): { field: string; message: string } {
  const own = field.replace(/^written\./, '');
  return { field: own, message: message.replace(field, own) };
}

const names: Record<string, string> = {
  title: 'The title',
  shows: 'What it shows',
  rowName: 'What one row is called',
  replicates: 'The number of replicates',
  readings: 'The list of what is read',
  properties: 'The list of what comes out',
  label: 'the name',
  value: 'what it is held at',
  meaning: 'the sentence',
  text: 'what to heed',
  grade: 'the number',
  areaCm2: 'the area',
  yes: 'what passes',
  no: 'what does not pass',
  grades: 'the scale',
};

/** What the lines of a list are called, and the name that each has so far; in the order of the method. */
const lists: Record<string, (lines: WrittenLines) => { one: string; labels: string[] }> = {
  settings: ({ settings }) => ({ one: 'Setting', labels: settings.filter(isKept.setting).map(({ label }) => label.trim()) }),
  readings: ({ readings }) => ({ one: 'Reading', labels: readings.map(({ label }) => label.trim()) }),
  properties: ({ properties }) => ({ one: 'Result', labels: properties.map(({ title }) => title.trim()) }),
  cautions: () => ({ one: 'Caution', labels: [] }),
};

/** 'readings[0].label' → 'Reading 1: the name'. */
function nameOf(field: string, lines: WrittenLines): string {
  const [, list, index, , last] = /^(\w+)(?:\[(\d+)\])?(.*?)(?:\.(\w+))?$/.exec(field) ?? [];
  if (list === undefined) return field;
  if (index === undefined) return names[list] ?? list;
  const { one, labels } = lists[list]?.(lines) ?? { one: list, labels: [] };
  const label = labels[Number(index)];
  const what = `${one} ${Number(index) + 1}${label ? ` (${label})` : ''}`;
  return last === undefined ? what : `${what}: ${names[last] ?? last}`;
}
