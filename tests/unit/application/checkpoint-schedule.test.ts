import { expect, it } from 'vitest';
import { CheckpointSchedule } from '../../../electron/application/checkpoint-schedule.ts';

function schedule() {
  const waits: number[] = [];
  let due: () => void = () => undefined;
  let written = 0;
  const timers = {
    after(milliseconds: number, action: () => void) {
      waits.push(milliseconds);
      due = action;
      return () => (due = () => undefined);
    },
  };
  return { schedule: new CheckpointSchedule(timers, () => (written += 1)), waits, pass: () => due(), written: () => written };
}

it('writes once the bench was idle for ten seconds, at once after 500 entries, and then counts anew', () => {
  const { schedule: of, waits, pass, written } = schedule();
  of.noteEntries(499, 40_000);
  of.noteEntries(1, 40_000);
  expect(waits).toEqual([10_000, 0]);
  pass();
  expect(written()).toBe(1);
  of.noteEntries(1, 40_000);
  expect(waits.at(-1)).toBe(10_000);
  of.stop();
  pass();
  expect(written()).toBe(1);
});

it('lets a large file wait longer, for its size: a gigabyte takes seconds to write', () => {
  const { schedule: of, waits } = schedule();
  of.noteEntries(500, 1_000_000_000);
  of.noteEntries(4_999, 1_000_000_000);
  of.noteEntries(1, 1_000_000_000);
  expect(waits).toEqual([110_000, 110_000, 0]);
});
