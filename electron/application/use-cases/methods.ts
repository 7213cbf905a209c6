import type { MethodData } from '../../../shared-lib/method/method.ts';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { dataOf } from '../method-data.ts';
import type { Workplace } from '../workplace.ts';

/** The methods by which a test can be started. */
export function methodsList({ notebook }: Workplace): MethodData[] {
  return notebook.methods.current().map(dataOf);
}

export function getMethod({ notebook }: Workplace, { methodId, version }: ParsedInput<'method.get'>): MethodData {
  return dataOf(notebook.methods.named(methodId, version));
}
