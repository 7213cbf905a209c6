import { base64Of } from './base64.ts';

const largestFile = 24_000_000;

/** The content of a file that a person chose, as base64, or in words why it cannot be had. */
export async function fileBytes(file: File): Promise<{ bytes: string } | { problem: string }> {
  if (file.size > largestFile) {
    return { problem: `${file.name} has ${(Math.ceil(file.size / 1e5) / 10).toFixed(1)} MB; at most ${largestFile / 1e6} MB go into a notebook. Keep it elsewhere and take a smaller copy.` };
  }
  try {
    return { bytes: base64Of(await file.arrayBuffer()) };
  } catch {
    return { problem: `${file.name} could not be opened: it was moved or changed since it was chosen. Choose it again.` };
  }
}
