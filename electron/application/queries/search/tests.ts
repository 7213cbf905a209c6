import type { SearchHit } from '../../../../shared-lib/notebook/search-views.ts';
import { testsNamed } from '../tests-named.ts';
import { MOST_COUNTED } from './rows-kind.ts';
import type { SearchKind } from './search-kind.ts';

interface FoundTest {
  testId: string;
  methodId: string;
  methodVersion: string;
  sampleId: string;
  state: string;
  startedAt: string;
}

/** Tests by the sample that they are made on and the title of their method. */
export const tests: SearchKind = {
  title: 'Tests',
  find(notebook, words, limit) {
    const { store, methods } = notebook;
    const { where, parameters } = testsNamed(store, words);
    const found = `FROM test WHERE ${where}`;
    const rows = store.all<FoundTest>(`SELECT testId, methodId, methodVersion, sampleId, state, startedAt ${found} ORDER BY startedSeq DESC LIMIT ?`, [...parameters, limit]);
    const total = rows.length < limit ? rows.length : store.one<{ total: number }>(`SELECT count(*) AS total FROM (SELECT 1 ${found} LIMIT ?)`, [...parameters, MOST_COUNTED + 1])!.total;
    const hits = rows.map((test): SearchHit => {
      const code = store.one<{ code: string }>('SELECT code FROM sample WHERE sampleId = ?', [test.sampleId])?.code ?? '';
      return {
        key: test.testId,
        title: `${methods.find(test.methodId, test.methodVersion)?.shortTitle ?? test.methodId} on ${code}`,
        detail: `${test.state} · ${test.startedAt.slice(0, 10)}`,
        screen: 'bench-sheet',
        id: test.testId,
      };
    });
    return { total: Math.min(total, MOST_COUNTED), many: total > MOST_COUNTED, hits };
  },
};
