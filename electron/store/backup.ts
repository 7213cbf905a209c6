import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { companionPaths, stem } from './companion-paths.ts';
import { copyFileDurably } from './durable-file.ts';

/** Daily backups that are kept. */
const kept = 10;

/**
 * Copies the notebook file as it stands, once a day; the last ten are kept.
 * @throws the system's error.
 */
export function backUpDaily(file: string, now: Date): void {
  backUp(file, `${stem(file)}-${now.toISOString().slice(0, 10)}.laydown`);
  const folder = companionPaths(file).backups;
  const daily = readdirSync(folder).filter((name) => name.startsWith(`${stem(file)}-`) && /-\d{4}-\d\d-\d\d\.laydown$/.test(name));
  for (const name of daily.sort().slice(0, -kept)) rmSync(join(folder, name), { force: true });
}

/**
 * Copies the notebook file before its schema is brought up to date; never removed by the program.
 * @throws the system's error.
 */
export function backUpBeforeMigration(file: string, schema: number): void {
  backUp(file, `${stem(file)}-schema-${schema}.laydown`);
}

function backUp(file: string, name: string): void {
  const folder = companionPaths(file).backups;
  mkdirSync(folder, { recursive: true });
  const copy = join(folder, name);
  if (!existsSync(copy)) copyFileDurably(file, copy, join(folder, `${name}.writing`));
}
