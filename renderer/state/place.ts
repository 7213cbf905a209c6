/** Where the person is, as it stands in the address after `#`. */
export type Place =
  | { screen: 'notebook' }
  | { screen: 'merge' }
  | { screen: 'today' }
  | { screen: 'samples'; sampleId: string | null }
  | { screen: 'materials' }
  | { screen: 'material'; materialId: string }
  | { screen: 'lot'; lotId: string }
  | { screen: 'instruments' }
  | { screen: 'bench-sheet'; testId: string }
  | { screen: 'trials'; trialSetId: string | null }
  | { screen: 'methods'; methodId: string | null }
  /** `methodId`: of the method of which a version is made, or of the habit that is written down. */
  | { screen: 'write-method'; methodId: string | null }
  | { screen: 'standardise'; methodId: string | null }
  | { screen: 'plans'; planId: string | null }
  | { screen: 'approvals'; approvalId: string | null }
  /** `planId`: of the plan of which a version is made. */
  | { screen: 'make-plan'; planId: string | null }
  | { screen: 'reports'; reportId: string | null }
  | { screen: 'new-report'; replaces: string | null }
  | { screen: 'record'; testId: string | null };

/** The screens of the rail, in the order of Alt+1, Alt+2 … Alt+9, Alt+0. */
export const railScreens = [
  { screen: 'today', name: 'Today' },
  { screen: 'samples', name: 'Samples' },
  { screen: 'materials', name: 'Materials' },
  { screen: 'trials', name: 'Trials' },
  { screen: 'methods', name: 'Methods' },
  { screen: 'plans', name: 'Plans' },
  { screen: 'approvals', name: 'Approvals' },
  { screen: 'reports', name: 'Reports' },
  { screen: 'record', name: 'Record' },
  { screen: 'notebook', name: 'Notebook' },
] as const;

export type RailScreen = (typeof railScreens)[number]['screen'];

/** `#/samples/ID` → place; anything unknown leads to Today. */
export function parsePlace(hash: string): Place {
  const [screen, id] = hash.replace(/^#\/?/, '').split('/').map(decoded);
  switch (screen) {
    case 'notebook':
    case 'merge':
    case 'materials':
    case 'instruments':
      return { screen };
    case 'material':
      return id ? { screen, materialId: id } : { screen: 'materials' };
    case 'lot':
      return id ? { screen, lotId: id } : { screen: 'materials' };
    case 'samples':
      return { screen, sampleId: id || null };
    case 'bench-sheet':
      return id ? { screen, testId: id } : { screen: 'today' };
    case 'trials':
      return { screen, trialSetId: id || null };
    case 'methods':
    case 'write-method':
    case 'standardise':
      return { screen, methodId: id || null };
    case 'plans':
    case 'make-plan':
      return { screen, planId: id || null };
    case 'approvals':
      return { screen, approvalId: id || null };
    case 'reports':
      return { screen, reportId: id || null };
    case 'new-report':
      return { screen, replaces: id || null };
    case 'record':
      return { screen, testId: id || null };
    default:
      return { screen: 'today' };
  }
}

/** A part of an address that was cut or mistyped stands for nothing. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}

/** Place → `#/samples/ID`, for links and the address. */
export function placeHash(place: Place): string {
  const id =
    'sampleId' in place ? place.sampleId
    : 'materialId' in place ? place.materialId
    : 'lotId' in place ? place.lotId
    : 'testId' in place ? place.testId
    : 'trialSetId' in place ? place.trialSetId
    : 'methodId' in place ? place.methodId
    : 'planId' in place ? place.planId
    : 'approvalId' in place ? place.approvalId
    : 'reportId' in place ? place.reportId
    : 'replaces' in place ? place.replaces
    : null;
  return id ? `#/${place.screen}/${encodeURIComponent(id)}` : `#/${place.screen}`;
}

/** The entry of the rail that a place belongs to. */
export function railScreenOf(place: Place): RailScreen {
  if (place.screen === 'bench-sheet') return 'samples';
  if (place.screen === 'material' || place.screen === 'lot' || place.screen === 'instruments') return 'materials';
  if (place.screen === 'new-report') return 'reports';
  if (place.screen === 'write-method' || place.screen === 'standardise') return 'methods';
  if (place.screen === 'make-plan') return 'plans';
  if (place.screen === 'merge') return 'notebook';
  return place.screen;
}

/** Where an entry of the rail leads. */
export function placeOfScreen(screen: RailScreen): Place {
  return parsePlace(`#/${screen}`);
}
