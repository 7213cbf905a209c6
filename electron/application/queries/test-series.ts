import type { NotebookStore } from '../../store/notebook-store.ts';

/** Methods and products with more than one finished test. */
export function testedSeries(store: NotebookStore): { methodId: string; product: string; tests: number }[] {
  return store.all(
    `SELECT test.methodId, sample.product, count(*) AS tests FROM test JOIN sample USING (sampleId)
     WHERE test.state = 'finished' GROUP BY test.methodId, sample.product HAVING count(*) > 1 ORDER BY tests DESC, methodId, product`,
  );
}

/** Finished, current tests by a method on a product, in the order in which they were finished. */
export function finishedTestsOf(store: NotebookStore, methodId: string, product: string): { testId: string; sampleCode: string; finishedOn: string }[] {
  return store.all(
    `SELECT test.testId, sample.code AS sampleCode, substr(test.finishedAt, 1, 10) AS finishedOn FROM test JOIN sample USING (sampleId)
     WHERE test.methodId = ? AND sample.product = ? AND test.state = 'finished' ORDER BY test.finishedSeq`,
    [methodId, product],
  );
}
