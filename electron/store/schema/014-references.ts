/** Reference colours that are retired. */
export const references = `
ALTER TABLE reference_colour ADD COLUMN retiredAt TEXT;
ALTER TABLE reference_colour ADD COLUMN retiredReason TEXT NOT NULL DEFAULT '';
`;
