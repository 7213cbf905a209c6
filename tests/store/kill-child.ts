import { existsSync, writeSync } from 'node:fs';
import { systemClock } from '../../electron/store/clock.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { attachment, beginning, reading } from './drafts.ts';

/** Records and writes checkpoints until it is killed. Prints 'SEQ HASH' of each batch's last entry once it is acknowledged. */
const [path, seed] = [process.argv[2]!, Number(process.argv[3])];
const say = (line: string) => writeSync(1, `${line}\n`);

say('opening');
const store = existsSync(path) ? await NotebookStore.open(path, systemClock()) : await NotebookStore.create(path, systemClock());
if (store.readOnly !== '') throw new Error(store.readOnly);
say('ready');
if (store.entryCount === 0) acknowledge(store.append(beginning));
for (let turn = 1; turn < 500; turn++) {
  if (turn % 5 === 0) {
    const { draft, content } = attachment(`${seed} ${turn} ${'0;1\n'.repeat(500)}`);
    acknowledge(store.append([reading(turn), draft], [content]));
  } else {
    acknowledge(store.append([reading(turn, seed), reading(turn + 1, turn)]));
  }
  if (turn % 3 === seed % 3) store.checkpoint();
}
store.close();

function acknowledge(entries: { seq: number; hash: string }[]): void {
  const { seq, hash } = entries.at(-1)!;
  say(`${seq} ${hash}`);
}
