import type { Moment } from './plan.ts';

const origins: Record<Moment['from'], { at: string; after: string }> = {
  film: { at: 'before printing', after: 'before printing' },
  printing: { at: 'on press', after: 'after printing' },
  lamination: { at: 'off the laminator', after: 'after lamination' },
};

/** 'before printing', 'on press', '24 h after printing', '7 days after lamination'. */
export function momentText({ from, hours }: Moment): string {
  const { at, after } = origins[from];
  if (hours === 0) return at;
  const days = hours / 24;
  return days >= 2 && Number.isInteger(days) ? `${days} days ${after}` : `${hours} h ${after}`;
}
