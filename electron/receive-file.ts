import { createWriteStream } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/**
 * Writes a file that was chosen in a browser, which tells no path, to where it can be opened; as it comes, whatever its size.
 * @param folders takes note of the folder that was made for it, which goes with the program
 * @returns its path, under the name that it has with the person
 */
export async function receiveFile(content: Readable, name: string, folders: string[]): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'laydown-received-'));
  folders.push(folder);
  const file = path.join(folder, path.basename(name.replaceAll('\\', '/')).replace(/[\u0000-\u001f]|^\.+$/g, '') || 'notebook.laydown');
  await pipeline(content, createWriteStream(file));
  return file;
}
