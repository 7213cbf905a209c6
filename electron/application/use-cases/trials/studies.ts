import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { studyText } from '../../../../shared-lib/notebook/study-text.ts';
import type { StudyLine, StudyView } from '../../../../shared-lib/notebook/trial-views.ts';
import { measurementStudyCalculation } from '../../../../shared-lib/statistics/measurement-study.calculation.ts';
import { findMethod, methodNamed } from '../../method-of-test.ts';
import { nameOf } from '../../queries/people.ts';
import { listStudies, loadStudy, type StoredStudy } from '../../queries/studies.ts';
import type { NotebookStore } from '../../../store/notebook-store.ts';
import { evaluateStudy } from '../../trials/evaluate-study.ts';
import { propertyOf } from '../../trials/trial-set-view.ts';
import type { Workplace } from '../../workplace.ts';

/** Works a study out, stores it and attaches it to its method: verdicts of later tests honour it. */
export function recordStudy(workplace: Workplace, { methodId, property: key, readings, remark }: ParsedInput<'study.record'>): StudyView {
  const { notebook } = workplace;
  const method = methodNamed(methodId);
  const property = method.properties.find((candidate) => candidate.key === key);
  if (!property) throw new InputError('property', key, `${method.title} has no property '${key}'.`);
  const kind = property.kind ?? 'number';
  const result = evaluateStudy(kind, property.unit, readings);
  const studyId = workplace.newId();
  notebook.append([
    {
      kind: 'study.recorded',
      body: { studyId, methodId, property: key, kind, readings, calculationVersion: result.version, results: result.results, remark: remark.trim() },
    },
  ]);
  return getStudy(workplace, { studyId });
}

/** Newest first. */
export function studiesList({ notebook }: Workplace, { methodId }: ParsedInput<'studies.list'>): StudyLine[] {
  const studies = listStudies(notebook.store, methodId);
  return studies.map((study) => studyLine(notebook.store, study, isInUse(studies, study)));
}

export function getStudy({ notebook }: Workplace, { studyId }: ParsedInput<'study.get'>): StudyView {
  const study = loadStudy(notebook.store, studyId);
  return {
    ...studyLine(notebook.store, study, isInUse(listStudies(notebook.store, study.methodId), study)),
    values: study.readings,
    result: evaluateStudy(study.kind, propertyOf(study.methodId, study.property)?.unit ?? '', study.readings),
    columns: measurementStudyCalculation.columns,
  };
}

function isInUse(studies: readonly StoredStudy[], study: StoredStudy): boolean {
  return studies.find(({ methodId, property }) => methodId === study.methodId && property === study.property)?.studyId === study.studyId;
}

function studyLine(store: NotebookStore, study: StoredStudy, inUse: boolean): StudyLine {
  const { studyId, methodId, property: key, kind, recordedAt, recordedBy, readings, remark, results } = study;
  const property = propertyOf(methodId, key);
  return {
    studyId,
    methodId,
    methodTitle: findMethod(methodId)?.shortTitle ?? methodId,
    property: key,
    title: property?.title ?? key,
    unit: property?.unit ?? '',
    kind,
    recordedAt,
    recordedBy: nameOf(store, recordedBy),
    parts: new Set(readings.map(({ part }) => part)).size,
    appraisers: [...new Set(readings.map(({ appraiser }) => appraiser))],
    readings: readings.length,
    remark,
    text: studyText(results, recordedAt),
    inUse,
  };
}
