import type { WrittenMethod } from '../../../../shared-lib/method/in-house/written-method.ts';

/** An invented test of the shop floor: a cloth is twisted on the print under the thumb, and what comes off is graded. */
export const thumbTwistRub: WrittenMethod = {
  title: 'Thumb-twist rub',
  shortTitle: 'Thumb twist',
  shows: 'Whether fresh ink smears when a thumb is twisted on it.',
  how: ['Lay the film on glass.', 'Press the cloth with the weight, twist.', 'Grade what is missing.'],
  spoils: ['A cloth that was used before.'],
  standards: [],
  cautions: [{ hazard: 'food-contact', text: 'Do not test on food-contact faces that go on to packing.' }],
  settings: [
    { kind: 'number', key: 'load', label: 'Load', unit: 'N', value: 10, tolerance: 0.5 },
    { kind: 'number', key: 'twists', label: 'Twists', unit: '', value: 5, tolerance: null },
    { kind: 'text', key: 'cloth', label: 'Cloth', value: 'white cotton' },
    { kind: 'number', key: 'temperature', label: 'Temperature', unit: '°C', value: null, tolerance: null },
  ],
  rowName: 'place',
  replicates: 6,
  readings: [
    {
      kind: 'grade',
      key: 'grade',
      label: 'Grade',
      grades: [
        { grade: 0, meaning: 'bare film' },
        { grade: 1, meaning: 'more gone than left' },
        { grade: 2, meaning: 'holes' },
        { grade: 3, meaning: 'thin spots' },
        { grade: 4, meaning: 'cloth marked, print whole' },
        { grade: 5, meaning: 'nothing to be seen' },
      ],
    },
    { kind: 'count', key: 'twistsToSmear', label: 'Twists to smear', unit: '', orMore: true },
  ],
  properties: [
    { key: 'grade', title: 'Grade of rub', reading: 'grade', statistic: 'median-grade', against: null, passes: null, areaCm2: null, better: 'higher', headline: true, limit: { lower: 4, upper: null, source: 'shop rule' } },
    { key: 'twists', title: 'Twists until it smears', reading: 'twistsToSmear', statistic: 'median', against: null, passes: null, areaCm2: null, better: 'higher', headline: false, limit: null },
    { key: 'share', title: 'Places that pass', reading: 'grade', statistic: 'share-passing', against: null, passes: { lower: 4, upper: null }, areaCm2: null, better: 'higher', headline: false, limit: null },
  ],
};
