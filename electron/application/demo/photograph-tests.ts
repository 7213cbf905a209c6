import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';
import { tapePhotograph } from './tape-photograph.ts';

const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');

/** Tape on the trial ink, measured in three photographs, and a certificate with the film lot. */
export async function testTapeFromPhotographs(bench: DemoBench, lots: DemoLots, samples: DemoSamples): Promise<void> {
  const certificate = 'Property;Unit;Value\r\nThickness;µm;12,0\r\nWetting tension, treated side;mN/m;54\r\nHaze;%;2,1\r\n';
  await bench.do('attachment.add', { attachedTo: 'lot', attachedId: lots.petFresh, name: 'film certificate.csv', bytes: base64(Buffer.from(certificate)), caption: 'From the supplier' });

  const testId = await bench.start(samples.sachetTrial, 'tape-adhesion', { moment: 'f', tape: 'lab tape 25 mm, lot 25-114', dwellS: '90', pullAngleDeg: '180' });
  for (const [index, share] of [0.03, 0.05, 0.04].entries()) {
    const row = `r${index + 1}`;
    const reading = { channel: 'grey', region: { kind: 'rectangle', x: 10, y: 10, width: 380, height: 280 }, removed: 'lighter', threshold: 148, light: 'both', smooth: false } as const;
    await bench.do('photo.measure', { testId, row, key: 'photo', source: { name: `tape yellow ${index + 1}.png`, bytes: base64(tapePhotograph(bench.random, share)) }, reading });
    await bench.do('reading.enter', { testId, row, key: 'parted', typed: 'f' });
  }
  await bench.do('test.finish', { testId, remark: 'Photographed straight from above, on white' });
}
