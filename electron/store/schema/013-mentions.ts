/**
 * What the entries speak of besides their test or sample, so that the record is searched by the names of things that it
 * holds only the ids of. For the entries that are there already it is the same as `shared-lib/notebook/entry-mentions.ts` says.
 */
export const mentions = `
CREATE TABLE entry_mention (thing TEXT NOT NULL, seq INTEGER NOT NULL, PRIMARY KEY (thing, seq)) WITHOUT ROWID;
INSERT OR IGNORE INTO entry_mention (thing, seq)
SELECT said.atom, entry.seq FROM entry, json_tree(entry.body) AS said
WHERE entry.kind <> 'notebook.merged' AND said.type = 'text' AND said.fullkey NOT IN ('$.testId', '$.sampleId')
  AND (said.key IN ('methodId', 'attachedId') OR length(said.atom) = 26 AND said.atom NOT GLOB '*[^0-9A-Z]*' OR length(said.atom) = 64 AND said.atom NOT GLOB '*[^0-9a-f]*');
`;
