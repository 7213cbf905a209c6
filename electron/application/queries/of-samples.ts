/** SQL that narrows a query to some samples, with its parameters; for `null` it narrows nothing. */
export function ofSamples(column: string, sampleIds: readonly string[] | null): { and: string; parameters: string[] } {
  return sampleIds ? { and: `AND ${column} IN (SELECT value FROM json_each(?))`, parameters: [JSON.stringify(sampleIds)] } : { and: '', parameters: [] };
}
