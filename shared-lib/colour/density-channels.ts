import { statusProducts, visualProduct, type DensityStatus } from './spectral-products.ts';

/** The four readings of a densitometer, by the ink that each is meant for. */
export const densityChannels = ['cyan', 'magenta', 'yellow', 'visual'] as const;
export type DensityChannel = (typeof densityChannels)[number];

/** Spectral product of a channel under a status; `null` where the status has none. Cyan is read through red, and so on. */
export function productOf(channel: DensityChannel, status: DensityStatus): Float64Array | null {
  if (channel === 'visual') return visualProduct;
  if (status === 'visual') return null;
  const filter = { cyan: 'red', magenta: 'green', yellow: 'blue' } as const;
  return statusProducts[status][filter[channel]];
}
