import type { z } from 'zod';

/** Marks the type of a call's output beside the schema of its input. */
export function call<Output>() {
  return <Input extends z.ZodType>(input: Input) => ({ input, output: undefined as unknown as Output });
}
