import { z } from 'zod';
import { call } from './api-call.ts';
import type { CalculationResult } from './calculation/result.ts';
import { componentSchema, factorSchema, responseSchema, studyReadingSchema, trialFields } from './notebook/trial-entries.ts';
import type {
  ChartChoice,
  ControlChartView,
  EquivalenceView,
  FactorView,
  PlanView,
  StudyLine,
  StudyView,
  TradeOffView,
  TrialSetLine,
  TrialSetView,
} from './notebook/trial-views.ts';

const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
/** `METHOD/PROPERTY`. */
const responseKey = z.string().max(201);
const level = z.number().min(0.5).max(0.9999).default(0.95);
const trial = { ...trialFields, name: z.string().trim().min(1).max(100), components: z.array(componentSchema).max(100) };

/** The calls of the Trials screen, of measurement studies and of control charts. */
export const trialCalls = {
  'trialSets.list': call<TrialSetLine[]>()(z.strictObject({})),
  'trialSet.add': call<TrialSetView>()(z.strictObject({ title: line.min(1), question: text, product: line })),
  /** `responses`: keys of the columns to work out; all of them when it is left out. A large set is asked for column by column. */
  'trialSet.get': call<TrialSetView>()(z.strictObject({ trialSetId: id, responses: z.array(responseKey).max(40).optional() })),
  /** Answers, as the other calls that record something, without comparisons. A reason is asked for once there were some. */
  'trialSet.setResponses': call<TrialSetView>()(z.strictObject({ trialSetId: id, responses: z.array(responseSchema).max(40), reason: text.default('') })),
  'trialSet.setFactors': call<TrialSetView>()(z.strictObject({ trialSetId: id, factors: z.array(factorSchema).max(20), reason: text.default('') })),
  'trial.add': call<TrialSetView>()(z.strictObject({ trialSetId: id, ...trial })),
  'trial.change': call<TrialSetView>()(z.strictObject({ trialId: id, ...trial, reason: text })),
  'trial.linkSample': call<TrialSetView>()(z.strictObject({ trialId: id, sampleId: id })),
  'trial.unlinkSample': call<TrialSetView>()(z.strictObject({ trialId: id, sampleId: id, reason: text })),

  /** Readings per trial to see `difference`, or with `design: 'equivalence'` to prove that none is larger than it. */
  'trialSet.plan': call<PlanView>()(
    z.strictObject({
      trialSetId: id,
      response: responseKey,
      difference: z.number().positive(),
      design: z.enum(['difference', 'equivalence']).default('difference'),
      power: z.number().min(0.5).max(0.999).default(0.9),
      level,
    }),
  ),
  /** Whether `trialId` differs from `fromTrialId` by no less than `lowerBound` and no more than `upperBound`. */
  'trialSet.equivalence': call<EquivalenceView>()(
    z.strictObject({ trialSetId: id, response: responseKey, trialId: id, fromTrialId: id, lowerBound: z.number(), upperBound: z.number(), level }),
  ),
  /** One factor: fitted line and band. Two: the interaction. */
  'trialSet.factorView': call<FactorView>()(
    z.strictObject({ trialSetId: id, response: responseKey, factors: z.array(z.string().max(60)).min(1).max(2), level }),
  ),
  'trialSet.tradeOff': call<TradeOffView>()(z.strictObject({ trialSetId: id, x: responseKey, y: responseKey })),

  /** Formulation arithmetic without recording: input and result of the calculation `formulation`. */
  'formulation.calculate': call<CalculationResult>()(z.record(z.string().max(60), z.unknown())),

  'study.record': call<StudyView>()(
    z.strictObject({ methodId: z.string().max(100), property: z.string().max(100), readings: z.array(studyReadingSchema).min(1).max(2000), remark: text }),
  ),
  'studies.list': call<StudyLine[]>()(z.strictObject({ methodId: z.string().max(100).default('') })),
  'study.get': call<StudyView>()(z.strictObject({ studyId: id })),

  'controlCharts.list': call<ChartChoice[]>()(z.strictObject({})),
  /** Limits left out: those last set for this property on this product. */
  'controlChart.get': call<ControlChartView>()(
    z.strictObject({
      methodId: z.string().max(100),
      property: z.string().max(100),
      product: line,
      chart: z.enum(['individuals', 'xbar-r', 'xbar-s']).optional(),
      limits: z.strictObject({ lower: z.number().nullable(), upper: z.number().nullable() }).optional(),
    }),
  ),
} as const;
