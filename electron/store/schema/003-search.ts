/**
 * Words of the record: the kind of each entry, and every text and number that it says but ids, which nobody looks for, in a
 * full-text index, so that a search does not read a large record through. It follows from `entry` alone and keeps no second
 * copy of the text.
 */
const wordsOf = (entry: string) =>
  `(SELECT replace(${entry}.kind, '.', ' ') || ' ' || coalesce(group_concat(atom, ' '), '') FROM json_tree(${entry}.body)
    WHERE atom IS NOT NULL AND coalesce(key, '') NOT GLOB '*Id' AND path NOT GLOB '*Ids')`;

export const search = `
CREATE VIRTUAL TABLE entry_words USING fts4(words, content="", tokenize=unicode61 "remove_diacritics=1", order=desc);
INSERT INTO entry_words (docid, words) SELECT seq, ${wordsOf('entry')} FROM entry;
CREATE TRIGGER entry_indexed AFTER INSERT ON entry
BEGIN INSERT INTO entry_words (docid, words) VALUES (NEW.seq, ${wordsOf('NEW')}); END;

ALTER TABLE entry_about DROP COLUMN words;
`;
