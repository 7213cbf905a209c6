import { z } from 'zod';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { InputError, type InputProblem } from '../../shared-lib/calculation/input-error.ts';
import type { CalculationResult } from '../../shared-lib/calculation/result.ts';
import { allCalculations, calculationById } from '../../shared-lib/registry/calculations.ts';
import type { Invocation } from './invocation.ts';

/** `laydown calc`: one JSON object (or an array of them) in, one result (or an array) out. */
export async function calc({ words, options, input, out, err }: Invocation): Promise<number> {
  if (options.list) {
    for (const { id, title } of allCalculations) out(`${id}\t${title}`);
    return 0;
  }
  const [id] = words;
  const calculation = id === undefined ? undefined : calculationById(id);
  if (!calculation) {
    err(problemText({ field: 'calculation', value: id ?? null, message: 'There is no such calculation; laydown calc --list shows them.' }));
    return 2;
  }
  if (options.schema) {
    out(JSON.stringify(z.toJSONSchema(calculation.input, { io: 'input' }), null, 2));
    return 0;
  }

  let given: unknown;
  try {
    given = JSON.parse(await readAll(input));
  } catch {
    err(problemText({ field: '', value: null, message: 'Standard input is not JSON; one object, or an array of objects, is needed.' }));
    return 2;
  }
  const compute = (one: unknown): CalculationResult | InputProblem => {
    try {
      return runCalculation(calculation, one);
    } catch (error) {
      if (error instanceof InputError) return error.toProblem();
      throw error;
    }
  };
  if (Array.isArray(given)) {
    const answers = given.map(compute);
    out(JSON.stringify(answers.map((answer) => ('calculation' in answer ? answer : { error: answer }))));
    return answers.length > 0 && answers.every((answer) => !('calculation' in answer)) ? 2 : 0;
  }
  const answer = compute(given);
  if (!('calculation' in answer)) {
    err(problemText(answer));
    return 2;
  }
  out(JSON.stringify(answer));
  return 0;
}

function problemText(problem: InputProblem): string {
  return JSON.stringify({ error: problem });
}

async function readAll(stream: NodeJS.ReadStream): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(Buffer.from(part));
  return Buffer.concat(parts).toString('utf8').replace(/^\uFEFF/, '');
}
