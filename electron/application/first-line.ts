/** What an unforeseen error says, short enough for a sentence on screen; never its stack. */
export function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split('\n')[0]!.slice(0, 200);
}
