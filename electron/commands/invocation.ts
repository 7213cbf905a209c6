/** What a command is given: words, options, and the process's streams. */
export interface Invocation {
  words: string[];
  options: Record<string, string | boolean | string[] | undefined>;
  input: NodeJS.ReadStream;
  out: (text: string) => void;
  err: (text: string) => void;
}
