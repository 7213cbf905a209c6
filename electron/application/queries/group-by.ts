/** Rows under the key that `keyOf` gives each, in their order. (`Map.groupBy` is not in Node 20.) */
export function groupBy<Key, Row>(rows: Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}
