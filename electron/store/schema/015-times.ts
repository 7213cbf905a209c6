/** Entries of a day are found without reading the record. */
export const times = `
CREATE INDEX entry_by_time ON entry (recordedAt);
`;
