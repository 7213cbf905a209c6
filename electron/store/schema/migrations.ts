import { first } from './001-first.ts';
import { trials } from './002-trials.ts';
import { search } from './003-search.ts';
import { attachments } from './004-attachments.ts';
import { colour } from './005-colour.ts';
import { inHouse } from './006-in-house.ts';
import { people } from './007-people.ts';
import { witness } from './008-witness.ts';
import { plans } from './009-plans.ts';
import { merges } from './010-merges.ts';
import { approvals } from './011-approvals.ts';
import { materials } from './012-materials.ts';
import { mentions } from './013-mentions.ts';
import { references } from './014-references.ts';
import { times } from './015-times.ts';
import { pressRuns } from './016-press-runs.ts';
import { heading } from './017-heading.ts';
import type { Database } from '../database.ts';

/** 'LYDN': marks a SQLite file as a Laydown notebook (`PRAGMA application_id`). */
export const applicationId = 0x4c59444e;

/** Forward only; the place in the list is the schema's number (`PRAGMA user_version`), starting at 1. */
const migrations: readonly string[] = [first, trials, search, attachments, colour, inHouse, people, witness, plans, merges, approvals, materials, mentions, references, times, pressRuns, heading];

/** The schema that this version of the program writes. */
export const schemaVersion = migrations.length;

/** The schema of a database. */
export function schemaOf(database: Database): number {
  return database.one<{ user_version: number }>('PRAGMA user_version')!.user_version;
}

/** Brings a database to `schemaVersion`, each step in its own transaction. */
export function migrate(database: Database): void {
  for (let version = schemaOf(database) + 1; version <= schemaVersion; version++) {
    database.transaction(() => {
      database.script(migrations[version - 1]!);
      database.script(`PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${version}`);
    });
  }
}
