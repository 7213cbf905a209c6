import type { CallName, CallOutput, ParsedInput } from '../../shared-lib/api.ts';
import { benchSheet } from './bench-sheet.ts';
import { dayOf } from './day-of.ts';
import { itemChoices } from './queries/items.ts';
import { findEverything } from './queries/search/find-everything.ts';
import { countAttachments, listAttachments } from './queries/attachments.ts';
import { addAttachment, attachedFile, attachedPicture, unlinkAttachment } from './use-cases/attachments.ts';
import { addApprovalLine, approvalsList, changeApproval, draftApproval, dropApprovalLine, getApproval, jobFacts } from './use-cases/approvals/drafting.ts';
import { linkOffered, linkResult, observeLine, waiveLines } from './use-cases/approvals/filling.ts';
import { approvalPdf, signApproval, withdrawApproval } from './use-cases/approvals/signing.ts';
import { enterCondition } from './use-cases/conditions.ts';
import { draftsKept, keepDraft } from './use-cases/drafts.ts';
import { setLimits } from './use-cases/limits.ts';
import { addFluid, changeFluid, fluidsList, retireFluid, returnFluid } from './use-cases/equipment/fluids.ts';
import { addInstrument, calibrateInstrument, changeInstrument, instrumentsList, retireInstrument, returnInstrument, voidCalibration } from './use-cases/equipment/instruments.ts';
import { sampleLabels } from './use-cases/labels.ts';
import { addLot, describeLot, lotPage, makeLotFrom, retireLot, returnLot } from './use-cases/lots.ts';
import { addMaterial, describeMaterial, getMaterial, materialsList } from './use-cases/materials.ts';
import { recallCsv, recallLot } from './use-cases/recall.ts';
import { describeHabit } from './use-cases/in-house/habits.ts';
import { inspectMethodFile, takeInMethodFile, writeOutMethodFile } from './use-cases/in-house/method-files.ts';
import { addInHouseMethod, changeInHouseMethod, retireInHouseMethod } from './use-cases/in-house/methods.ts';
import { inHouseMethodsList, inHouseView } from './use-cases/in-house/views.ts';
import { makeMerge, mergesList, previewMerge, settleConflict, takeOtherWord } from './use-cases/merges.ts';
import { getMethod, methodsList } from './use-cases/methods.ts';
import { checkpointNotebook, createNotebook, describeNotebook, notebooksInFolder, openNotebookByHandle } from './use-cases/notebooks.ts';
import { renewPassphrase, setPassphrase } from './use-cases/passphrases.ts';
import { pasteReadings } from './use-cases/paste.ts';
import { addPerson, changePerson, retirePerson, returnPerson } from './use-cases/people.ts';
import { addPlan, changePlan, getPlan, planPdf, plansList, retirePlan } from './use-cases/plans/plans.ts';
import { followPlan, getSamplePlan, leavePlan, setPlanTimes, takeTestForLine } from './use-cases/plans/sample-plan.ts';
import { startPlanLine } from './use-cases/plans/start-line.ts';
import { enterReading } from './use-cases/readings.ts';
import { recordList } from './use-cases/record.ts';
import { measurePhoto, previewPhoto } from './use-cases/photos.ts';
import { addReference, referencesList, retireReference, returnReference, setTolerance } from './use-cases/references.ts';
import { issueReport, previewReport, reportContent, reportPdf, reportsList } from './use-cases/reports.ts';
import { remarkRow, restoreRow, voidRow } from './use-cases/rows.ts';
import { addSample, changeSample, retireSample, returnSample, samplesList, sampleView } from './use-cases/samples.ts';
import { sessionView, takeBench } from './use-cases/session.ts';
import { readSpectrum, spectraPreview } from './use-cases/spectra.ts';
import { finishTest } from './use-cases/test-finish.ts';
import { startTest } from './use-cases/test-start.ts';
import { testsList, testsNamed } from './use-cases/tests-list.ts';
import { today } from './use-cases/today.ts';
import { previewTrace, readTrace } from './use-cases/traces.ts';
import { controlChartsList, getControlChart } from './use-cases/trials/control-charts.ts';
import { calculateFormulation } from './use-cases/trials/formulation.ts';
import { planTrials, trialEquivalence, trialFactorView, trialTradeOff } from './use-cases/trials/questions.ts';
import { getStudy, recordStudy, studiesList } from './use-cases/trials/studies.ts';
import { addTrialSet, getTrialSet, setFactors, setResponses, trialSetsList } from './use-cases/trials/trial-sets.ts';
import { addTrial, changeTrial, linkSample, unlinkSample } from './use-cases/trials/trials.ts';
import { withdrawTest } from './use-cases/test-withdraw.ts';
import { undoLast } from './use-cases/undo.ts';
import { pageOfWork, witnessWork } from './use-cases/witness.ts';
import { verifyRecord } from './use-cases/verify.ts';
import type { Workplace } from './workplace.ts';

/** A use case as `Application.call` sees it, its input parsed. */
export type UseCase = (workplace: Workplace, input: unknown) => unknown;

/** What each call of `api` does: every name once, none left out. */
export const useCases = {
  'session.get': sessionView,
  'session.takeBench': takeBench,
  'notebook.create': createNotebook,
  'notebook.describe': describeNotebook,
  'notebook.open': openNotebookByHandle,
  'notebooks.inFolder': notebooksInFolder,
  'notebook.checkpoint': checkpointNotebook,
  'person.add': addPerson,
  'person.change': changePerson,
  'person.retire': retirePerson,
  'person.return': returnPerson,
  'passphrase.set': setPassphrase,
  'passphrase.renew': renewPassphrase,
  'plans.list': plansList,
  'plan.get': getPlan,
  'plan.add': addPlan,
  'plan.change': changePlan,
  'plan.retire': retirePlan,
  'plan.pdf': planPdf,
  'samplePlan.get': getSamplePlan,
  'samplePlan.follow': followPlan,
  'samplePlan.setTimes': setPlanTimes,
  'samplePlan.leave': leavePlan,
  'samplePlan.startLine': startPlanLine,
  'samplePlan.takeTest': takeTestForLine,
  'approvals.list': approvalsList,
  'approval.get': getApproval,
  'approval.job': jobFacts,
  'approval.draft': draftApproval,
  'approval.change': changeApproval,
  'approvalLine.add': addApprovalLine,
  'approvalLine.drop': dropApprovalLine,
  'approvalLine.link': linkResult,
  'approval.linkOffered': linkOffered,
  'approvalLine.observe': observeLine,
  'approvalLines.waive': waiveLines,
  'approval.sign': signApproval,
  'approval.withdraw': withdrawApproval,
  'approval.pdf': approvalPdf,
  'materials.list': materialsList,
  'material.get': getMaterial,
  'material.add': addMaterial,
  'material.describe': describeMaterial,
  'lot.add': addLot,
  'lot.get': lotPage,
  'lot.describe': describeLot,
  'lot.makeFrom': makeLotFrom,
  'lot.retire': retireLot,
  'lot.return': returnLot,
  'lot.recall': recallLot,
  'lot.recallCsv': recallCsv,
  'instruments.list': instrumentsList,
  'instrument.add': addInstrument,
  'instrument.change': changeInstrument,
  'instrument.calibrate': calibrateInstrument,
  'calibration.void': voidCalibration,
  'instrument.retire': retireInstrument,
  'instrument.return': returnInstrument,
  'fluids.list': fluidsList,
  'fluid.add': addFluid,
  'fluid.change': changeFluid,
  'fluid.retire': retireFluid,
  'fluid.return': returnFluid,
  'samples.list': samplesList,
  'sample.get': ({ notebook }, { sampleId }) => sampleView(notebook, sampleId),
  'sample.add': addSample,
  'sample.change': changeSample,
  'sample.retire': retireSample,
  'sample.return': returnSample,
  'samples.labels': sampleLabels,
  'methods.list': methodsList,
  'today.get': today,
  'test.start': startTest,
  'test.get': ({ notebook }, { testId }) => benchSheet(notebook, testId),
  'test.setLimits': setLimits,
  'condition.enter': enterCondition,
  'reading.enter': enterReading,
  'readings.paste': pasteReadings,
  'row.void': voidRow,
  'row.restore': restoreRow,
  'row.remark': remarkRow,
  'trace.preview': (_workplace, input) => previewTrace(input),
  'trace.read': readTrace,
  'test.finish': finishTest,
  'tests.list': testsList,
  'tests.named': testsNamed,
  'reports.list': reportsList,
  'report.preview': previewReport,
  'report.issue': issueReport,
  'report.content': reportContent,
  'report.pdf': reportPdf,
  'record.list': recordList,
  'record.verify': verifyRecord,
  'work.page': pageOfWork,
  'work.witness': witnessWork,
  'test.withdraw': withdrawTest,
  'undo.last': undoLast,
  'drafts.get': draftsKept,
  'draft.keep': keepDraft,
  'trialSets.list': trialSetsList,
  'trialSet.add': addTrialSet,
  'trialSet.get': getTrialSet,
  'trialSet.setResponses': setResponses,
  'trialSet.setFactors': setFactors,
  'trial.add': addTrial,
  'trial.change': changeTrial,
  'trial.linkSample': linkSample,
  'trial.unlinkSample': unlinkSample,
  'trialSet.plan': planTrials,
  'trialSet.equivalence': trialEquivalence,
  'trialSet.factorView': trialFactorView,
  'trialSet.tradeOff': trialTradeOff,
  'formulation.calculate': calculateFormulation,
  'study.record': recordStudy,
  'studies.list': studiesList,
  'study.get': getStudy,
  'controlCharts.list': controlChartsList,
  'controlChart.get': getControlChart,
  'references.list': referencesList,
  'reference.add': addReference,
  'reference.retire': retireReference,
  'reference.return': returnReference,
  'tolerance.set': setTolerance,
  'items.find': (workplace, { of, search, methodId }) => itemChoices(workplace.notebook.store, of, search, methodId, dayOf(workplace.now())),
  'spectra.preview': (_workplace, input) => spectraPreview(input),
  'spectrum.read': readSpectrum,
  'method.get': getMethod,
  'inHouseMethods.list': inHouseMethodsList,
  'inHouseMethod.get': ({ notebook }, { methodId }) => inHouseView(notebook, methodId),
  'inHouseMethod.add': addInHouseMethod,
  'inHouseMethod.change': changeInHouseMethod,
  'inHouseMethod.retire': retireInHouseMethod,
  'habit.describe': describeHabit,
  'methodFile.write': writeOutMethodFile,
  'methodFile.inspect': inspectMethodFile,
  'methodFile.takeIn': takeInMethodFile,
  'search.find': ({ notebook }, { search, limit }) => findEverything(notebook, search, limit),
  'merge.preview': previewMerge,
  'merge.make': makeMerge,
  'merges.list': mergesList,
  'conflict.settle': settleConflict,
  'conflict.takeOther': takeOtherWord,
  'attachments.list': ({ notebook }, { attachedTo, attachedId }) => listAttachments(notebook.store, attachedTo, attachedId),
  'attachments.counts': ({ notebook }) => countAttachments(notebook.store),
  'attachment.add': addAttachment,
  'attachment.unlink': unlinkAttachment,
  'attachment.picture': attachedPicture,
  'attachment.get': attachedFile,
  'photo.preview': previewPhoto,
  'photo.measure': measurePhoto,
} satisfies { [Name in CallName]: (workplace: Workplace, input: ParsedInput<Name>) => CallOutput<Name> | Promise<CallOutput<Name>> };
