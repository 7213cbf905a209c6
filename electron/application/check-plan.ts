import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { Method } from '../../shared-lib/method/method.ts';
import type { PlanContent, PlanLine } from '../../shared-lib/plan/plan.ts';
import { checkLimits } from './check-limits.ts';
import type { MethodBook } from './method-book.ts';
import { severalOf } from '../../shared-lib/quantity/words.ts';

/**
 * Whether a plan can be carried out: its methods are there, its conditions, rows and limits are ones that they take, and
 * every line has an id of its own.
 * @throws InputError for the first field at fault, e.g. `content.lines[2].replicates`
 */
export function checkPlan(content: PlanContent, methods: MethodBook): void {
  const current = new Map(methods.current().map((method) => [method.id, method]));
  content.lines.forEach((line, index) => {
    const at = `content.lines[${index}]`;
    const method = current.get(line.methodId);
    if (!method) throw new InputError(`${at}.methodId`, line.methodId, `There is no method ‘${methods.find(line.methodId)?.title ?? line.methodId}’ in use.`);
    if (content.lines.findIndex(({ lineId }) => lineId === line.lineId) !== index) throw new InputError(`${at}.lineId`, line.lineId, `${method.title} is in the plan twice at the same moment, after the same preparation.`);
    checkLine(line, method, at);
  });
}

function checkLine({ moment, replicates, conditions, limits }: PlanLine, method: Method, at: string): void {
  const { minRows, maxRows, rowName } = method.readings;
  if (moment.from === 'film' && moment.hours !== 0) throw new InputError(`${at}.moment.hours`, moment.hours, 'Hours are counted from the press or the laminator; a test on film before printing has none.');
  if (replicates < minRows || replicates > maxRows) throw new InputError(`${at}.replicates`, replicates, `${method.title} takes from ${minRows} to ${maxRows} ${severalOf(rowName)}.`);
  for (const [key, value] of Object.entries(conditions)) checkCondition(method, key, value, `${at}.conditions.${key}`);
  checkLimits(method, limits, `${at}.limits`);
  limits.forEach(({ lower, upper }, index) => {
    if (lower === null && upper === null) throw new InputError(`${at}.limits[${index}].lower`, lower, 'A limit has a lower or an upper end; leave it out where there is none.');
  });
}

function checkCondition(method: Method, key: string, value: string | number, at: string): void {
  const field = method.conditions.find((condition) => condition.key === key);
  if (!field) throw new InputError(at, value, `${method.title} has no condition '${key}'.`);
  if (field.kind === 'item' && field.of === 'instrument') throw new InputError(at, value, `${field.label} is named on the sheet, with the readings; a plan cannot know it.`);
  if (field.kind === 'choice' && !field.choices.some((choice) => choice.value === value)) throw new InputError(at, value, `${field.label} is one of: ${field.choices.map(({ label }) => label).join(', ')}.`);
  if (field.kind === 'number' && (typeof value !== 'number' || value < field.min || value > field.max)) throw new InputError(at, value, `${field.label} is from ${field.min} to ${field.max}.`);
}
