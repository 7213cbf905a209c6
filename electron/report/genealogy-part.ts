import type { Content } from 'pdfmake/interfaces.js';
import type { SampleGenealogy } from '../../shared-lib/report/content.ts';
import { size } from './look.ts';

const STEP = 14;

/** What went into the lots that the samples are made of, indented by level. */
export function genealogyPart(samples: SampleGenealogy[]): Content[] {
  if (samples.length === 0) return [];
  return [
    { text: 'Appendix: what the samples are made of', style: 'heading', outline: true, margin: [0, 22, 0, 2] },
    { text: 'Each lot is followed, indented, by the lots that went into it.', style: 'quiet' },
    ...samples.map(({ sample, lots }): Content => ({ stack: [{ text: sample, fontSize: size.body + 1, bold: true, margin: [0, 10, 0, 3] }, ...lots.map(lotLine)] })),
  ];
}

function lotLine({ name, kind, depth, again, doubt }: SampleGenealogy['lots'][number]): Content {
  const rest = [kind, ...(again ? ['its own parts stand further up'] : []), ...(doubt ? [doubt] : [])].join('; ');
  return { text: [name, { text: `  ${rest}`, style: 'quiet' }], margin: [depth * STEP, 0, 0, 1.5] };
}
