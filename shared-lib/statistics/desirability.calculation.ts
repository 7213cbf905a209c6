import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber } from '../quantity/format.ts';
import { desirability, overallDesirability } from './desirability.ts';
import { refuseAs } from './refuse-as.ts';

const input = z.strictObject({
  responses: z.array(z.strictObject({
    name: z.string().min(1).max(100),
    goal: z.enum(['higher', 'lower', 'target']),
    low: z.number().optional(),
    target: z.number(),
    high: z.number().optional(),
    shape: z.number().positive().max(10).default(1),
    importance: z.number().positive().max(100).default(1),
  })).min(1).max(40),
  /** Values in the order of the responses; `null` where a response was not measured. */
  trials: z.array(z.strictObject({ name: z.string().min(1).max(100), values: z.array(z.number().nullable()) })).min(1).max(500),
});

/** `table`: a row per trial, in order, with its overall desirability and, under each response's name, that response's own. */
export const desirabilityCalculation = defineCalculation({
  id: 'desirability',
  version: '1',
  title: 'Overall desirability of trials',
  input,
  compute: ({ responses, trials }) => {
    const flags: Flag[] = [];
    const scored = trials.map(({ name, values }, t) => {
      if (values.length !== responses.length) throw new InputError(`trials[${t}].values`, values.length, `${name} needs one value (or null) per response: ${responses.length}, not ${values.length}.`);
      const each = responses.map((response, r) => refuseAs(`responses[${r}]`, response.name, () => (values[r] === null ? null : desirability(values[r]!, response))));
      const missing = responses.filter((_, r) => values[r] === null).map((response) => response.name);
      if (missing.length > 0) flags.push({ code: 'missing-response', where: `trials[${t}]`, text: `${name} has no value for ${missing.join(', ')}, so it has no overall desirability.` });
      return { name, each, overall: missing.length > 0 ? null : overallDesirability(values as number[], responses) };
    });
    const ranked = scored.filter(({ overall }) => overall !== null).sort((a, b) => b.overall! - a.overall!);
    const best = ranked[0];
    return {
      results: {
        desirability: valueWithoutInterval(best?.overall ?? null, '', trials.length),
        best: { ...valueWithoutInterval(null, '', trials.length), ...(best && best.overall! > 0 && { text: best.name }) },
      },
      table: scored.map(({ name, each, overall }): TableRow => ({ trial: name, desirability: overall, ...Object.fromEntries(responses.map((response, r) => [response.name, each[r]!])) })),
      flags,
      notes: [
        best === undefined
          ? 'No trial has a value for every response.'
          : best.overall === 0
            ? 'Every trial is worthless in at least one response, by the limits given.'
            : `${best.name} comes out on top with ${formatNumber(best.overall!, 3)}${ranked[1] ? `, before ${ranked[1].name} with ${formatNumber(ranked[1].overall!, 3)}` : ''}.`,
        'Desirability ranks single values; it does not know how sure they are. Judge close calls by comparing the trials.',
      ],
    };
  },
  columns: [
    { key: 'trial', title: 'Trial' },
    { key: 'desirability', title: 'Overall desirability', decimals: 3 },
  ],
  cautions: [],
  sources: ['G. Derringer, R. Suich, J. Qual. Technol. 12 (1980) 214'],
});
