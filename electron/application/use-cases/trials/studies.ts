import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { offScale } from '../../../../shared-lib/method/grade-scale.ts';
import { studyText } from '../../../../shared-lib/notebook/study-text.ts';
import type { StudyLine, StudyView } from '../../../../shared-lib/notebook/trial-views.ts';
import { offGrades, studiedProperty } from '../../../../shared-lib/method/in-house/studied-property.ts';
import { measurementStudyCalculation } from '../../../../shared-lib/statistics/measurement-study.calculation.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { nameOf } from '../../queries/people.ts';
import { listStudies, loadStudy, type StoredStudy } from '../../queries/studies.ts';
import { evaluateStudy } from '../../trials/evaluate-study.ts';
import type { Workplace } from '../../workplace.ts';

/** Works a study out, stores it and attaches it to its method: verdicts of later tests honour it. */
export function recordStudy(workplace: Workplace, { methodId, property: key, readings, remark }: ParsedInput<'study.record'>): StudyView {
  const { notebook } = workplace;
  const method = notebook.methods.named(methodId);
  const named = method.properties.find((candidate) => candidate.key === key);
  if (!named) throw new InputError('property', key, `${method.title} has no property '${key}'.`);
  const property = studiedProperty(method, named);
  readings.forEach(({ part, appraiser, trial, value }, index) => {
    const odd = offScale(property, value) || offGrades(method, property, value);
    if (odd) throw new InputError(`readings[${index}].value`, value, `Part ${part}, ${appraiser}, reading ${trial}: ${odd}`);
  });
  const kind = property.kind ?? 'number';
  const ofVersion = method.group === 'in-house' ? { methodVersion: method.version } : {};
  const result = evaluateStudy(kind, property.unit, readings);
  const studyId = workplace.newId();
  notebook.append([
    {
      kind: 'study.recorded',
      body: { studyId, methodId, ...ofVersion, property: key, kind, readings, calculationVersion: result.version, results: result.results, remark: remark.trim() },
    },
  ]);
  return getStudy(workplace, { studyId });
}

/** Newest first. */
export function studiesList({ notebook }: Workplace, { methodId }: ParsedInput<'studies.list'>): StudyLine[] {
  const studies = listStudies(notebook.store, methodId);
  return studies.map((study) => studyLine(notebook, study, isInUse(notebook, studies, study)));
}

export function getStudy({ notebook }: Workplace, { studyId }: ParsedInput<'study.get'>): StudyView {
  const study = loadStudy(notebook.store, studyId);
  return {
    ...studyLine(notebook, study, isInUse(notebook, listStudies(notebook.store, study.methodId), study)),
    values: study.readings,
    result: evaluateStudy(study.kind, unitOf(notebook, study), study.readings),
    columns: measurementStudyCalculation.columns,
  };
}

/** Of the version that was studied; grades have none, nor have the yes and no of a share. */
function unitOf({ methods }: OpenNotebook, { kind, methodId, property, methodVersion }: StoredStudy): string {
  return kind === 'grade' ? '' : (methods.property(methodId, property, methodVersion)?.unit ?? '');
}

/** The last that holds for the version that new tests take. */
function isInUse({ methods }: OpenNotebook, studies: readonly StoredStudy[], study: StoredStudy): boolean {
  const version = methods.find(study.methodId)?.version ?? '';
  const holds = ({ methodId, property, methodVersion }: StoredStudy) => methodId === study.methodId && property === study.property && methods.measuresAlike(methodId, property, methodVersion, version);
  return studies.find(holds)?.studyId === study.studyId;
}

function studyLine(notebook: OpenNotebook, study: StoredStudy, inUse: boolean): StudyLine {
  const { store, methods } = notebook;
  const { studyId, methodId, property: key, kind, recordedAt, recordedBy, readings, remark, results } = study;
  return {
    studyId,
    methodId,
    methodTitle: methods.find(methodId)?.shortTitle ?? methodId,
    property: key,
    title: methods.property(methodId, key, study.methodVersion)?.title ?? key,
    unit: unitOf(notebook, study),
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
