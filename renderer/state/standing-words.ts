import type { Standing } from '../../shared-lib/equipment/standing.ts';

/** How something with a last day stands, with its shape: never by colour alone. */
export function standingWords(standing: Standing, of: 'calibration' | 'expiry'): { shape: string; word: string } {
  return {
    'in order': { shape: '●', word: 'in order' },
    'ends soon': { shape: '◆', word: of === 'expiry' ? 'expires soon' : 'calibration ends soon' },
    ended: { shape: '▲', word: of === 'expiry' ? 'expired' : 'calibration ended' },
    none: { shape: '▲', word: 'not calibrated' },
  }[standing];
}
