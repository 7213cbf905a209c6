import { writeSync } from 'node:fs';
import { systemClock } from '../../electron/store/clock.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { reading } from './drafts.ts';
import { merge } from './two-benches-merge.ts';

/** Records, takes in the other notebook, records and writes checkpoints until it is killed. Prints 'merging' and 'merged'. */
const [path, otherPath] = [process.argv[2]!, process.argv[3]!];
const say = (line: string) => writeSync(1, `${line}\n`);

const store = await NotebookStore.open(path, systemClock());
const other = await NotebookStore.openToRead(otherPath, systemClock());
store.append([reading(100)]);
say('merging');
merge(store, other);
say('merged');
store.append([reading(101)]);
store.checkpoint();
say('written');
for (let turn = 0; turn < 500; turn++) {
  store.append([reading(102 + turn)]);
  store.checkpoint();
}
