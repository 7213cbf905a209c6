import { InputError } from '../calculation/input-error.ts';
import { instrumentField } from '../method/instrument-field.ts';
import type { BenchReadings, Caution, ChoiceField, Field, Method, MethodHelp, Property } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { contactAngleCalculation } from './contact-angle.calculation.ts';
import { daysSinceTreatment, filmConditions } from './film-conditions.ts';
import { liquidSets, type LiquidSetId } from './probe-liquids.ts';
import type { WettingModelId } from './wetting-models.ts';

const help: MethodHelp = {
  shows:
    'The surface energy of a film and its parts, from the angle at which drops of known liquids stand on it. Finer than test fluids and ' +
    'without their wide steps, but it sees only the spots under the drops.',
  how: [
    'Cut a flat strip without touching its face; fix it without creases. Blow off dust with clean air.',
    'Set a drop of 2 to 5 µL gently on a fresh spot and read the angle on both sides after the same few seconds each time.',
    'At least five drops of each liquid, spread over the specimen. One row per drop: liquid and mean of both sides.',
    'Take liquids of different kinds: water and diiodomethane at least; a third shows whether the model holds.',
  ],
  spoils: [
    'A drop on a spot that was wet before, or that spreads, soaks in or evaporates while it is read.',
    'Water or solvents of poor purity; a syringe used for two liquids.',
    'Static charge and a strip that is not level: the two sides then differ.',
    'A liquid that swells or dissolves the film or its print.',
  ],
};

const cautions: Caution[] = [
  {
    hazard: 'toxic',
    text: 'Diiodomethane and formamide harm by skin contact and inhalation; formamide is toxic to reproduction. Gloves and extraction; the safety data sheet and local rules go first.',
  },
  { hazard: 'food-contact', text: 'Film that has carried a probe liquid is waste.' },
];

/** What sets one contact-angle method apart from another. */
export interface ContactAnglePlan {
  id: string;
  title: string;
  shortTitle: string;
  models: (ChoiceField['choices'][number] & { value: WettingModelId })[];
  sets: LiquidSetId[];
  liquids: string[];
  properties: Property[];
}

const shortcuts: Record<string, string> = {
  water: 'w',
  diiodomethane: 'd',
  'ethylene glycol': 'e',
  formamide: 'f',
  glycerol: 'g',
  'dimethyl sulfoxide': 's',
  '1-bromonaphthalene': 'b',
};

/** The method of a plan: one row per drop, drops gathered by liquid. */
export function contactAngleSheet({ id, title, shortTitle, models, sets, liquids, properties }: ContactAnglePlan): Method {
  return {
    id,
    version: '1',
    title,
    shortTitle,
    group: 'surface-energy',
    standards: [],
    help,
    cautions,
    conditions: [
      { kind: 'choice', key: 'model', label: 'Model', choices: models, default: models[0]!.value, required: true },
      setField(sets),
      ...filmConditions,
      daysSinceTreatment,
      instrumentField,
    ],
    readings: {
      rowName: 'drop',
      fields: [
        {
          kind: 'choice',
          key: 'liquid',
          label: 'Liquid',
          required: true,
          carryDown: true,
          choices: liquids.map((value) => ({ value, label: value, shortcut: shortcuts[value]! })),
        },
        { kind: 'number', key: 'angleDeg', label: 'Contact angle', unit: '°', min: 0, max: 180, usual: { min: 5, max: 125 }, required: true },
      ],
      startRows: 10,
      minRows: 2,
      maxRows: 1000,
    },
    calculation: 'contact-angle',
    properties,
    evaluate: (bench) => evaluate(bench, models[0]!.value),
  };
}

/** The set decides several mN/m, so it is chosen in sight; left alone it is the one of the model's authors. */
function setField(sets: LiquidSetId[]): Field {
  const own = { value: 'own', label: 'the usual set of the model', shortcut: 'm' };
  return {
    kind: 'choice',
    key: 'liquidSet',
    label: 'Values of the liquids',
    default: own.value,
    choices: [own, ...sets.map((set, index) => ({ value: set, label: liquidSets[set].title, shortcut: String(index + 1) }))],
  };
}

interface LiquidRows {
  name: string;
  anglesDeg: number[];
  rows: number[];
}

function evaluate(bench: BenchReadings, defaultModel: WettingModelId) {
  const liquids = liquidsOf(bench);
  const set = textIn(bench.conditions, 'liquidSet');
  const input = {
    model: textIn(bench.conditions, 'model') ?? defaultModel,
    liquidSet: set === 'own' ? undefined : set,
    liquids: liquids.map(({ name, anglesDeg }) => ({ name, anglesDeg })),
  };
  return runOnBench(contactAngleCalculation, input, (field) => {
    const cell = /^liquids\[(\d+)\](?:\.anglesDeg\[(\d+)\])?/.exec(field);
    if (!cell) return field === 'liquids' ? '' : `conditions.${field}`;
    const { rows } = liquids[Number(cell[1])]!;
    return cell[2] === undefined ? `rows[${rows[0]}].liquid` : `rows[${rows[Number(cell[2])]}].angleDeg`;
  });
}

/** The drops by liquid, in the order in which the liquids first appear. */
function liquidsOf(bench: BenchReadings): LiquidRows[] {
  const byName = new Map<string, LiquidRows>();
  bench.rows.forEach(({ values }, index) => {
    const name = textIn(values, 'liquid');
    const angle = numberIn(values, 'angleDeg');
    if (angle === undefined) return;
    if (name === undefined) throw new InputError(`rows[${index}].liquid`, null, 'This angle has no liquid: choose the one of the drop.');
    const liquid = byName.get(name) ?? { name, anglesDeg: [], rows: [] };
    liquid.anglesDeg.push(angle);
    liquid.rows.push(index);
    byName.set(name, liquid);
  });
  if (byName.size === 0) throw new InputError('rows[0].angleDeg', null, 'No drop has an angle yet.');
  return [...byName.values()];
}
