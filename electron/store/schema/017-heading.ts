/** Title and laboratory of the notebook, said anew. */
export const heading = `
CREATE TABLE notebook_heading (createdAt TEXT PRIMARY KEY, title TEXT NOT NULL, laboratory TEXT NOT NULL);
`;
