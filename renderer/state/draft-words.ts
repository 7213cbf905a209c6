const words: Record<string, string> = {
  'sample.add': 'a new sample',
  'material.add': 'a new material',
  'material.describe': 'a change of a material',
  'lot.add': 'a new lot',
  'lot.describe': 'a change of a lot',
  'lot.makeFrom': 'what went into a lot',
  'sample.change': 'a change of a sample',
  'instrument.add': 'a new instrument',
  'instrument.change': 'a change of an instrument',
  'instrument.calibrate': 'a calibration',
  'fluid.add': 'a new test fluid, tape or standard',
  'fluid.change': 'a change of a test fluid, tape or standard',
  'person.add': 'a new person',
  'report.issue': 'a new report',
  'test.finish': 'the remark of a test',
  'trialSet.add': 'a new trial set',
  'reference.add': 'a reference colour',
  'tolerance.set': 'a tolerance',
  sheet: 'cells of a bench sheet',
};

/** What a draft of that name is, e.g. 'a new sample'. Forms are named by their call, and by what they are about. */
export function draftWords(name: string): string {
  return words[name.split(' ')[0]!] ?? 'a form';
}
