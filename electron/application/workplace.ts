import { DueBook } from './due/due-book.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { Refusal } from './refusal.ts';
import { SettingsFile } from './settings-file.ts';
import type { Surroundings } from './surroundings.ts';

/** What every use case works with: the surroundings, the settings and the notebook that is open, if any. */
export class Workplace {
  readonly surroundings: Surroundings;
  readonly settings: SettingsFile;
  /** Paths of files that a person chose while this runs. */
  readonly handedOver = new Set<string>();
  readonly dues = new DueBook();
  /** Set by the notebook use cases alone. */
  open: OpenNotebook | null = null;

  constructor(surroundings: Surroundings) {
    this.surroundings = surroundings;
    this.settings = new SettingsFile(surroundings.settingsFolder, this.now(), (text) => surroundings.emit({ kind: 'trouble', text }));
  }

  /** @throws Refusal when no notebook is open */
  get notebook(): OpenNotebook {
    if (!this.open) throw new Refusal('conflict', 'No notebook is open; open one or make a new one first.');
    return this.open;
  }

  now(): Date {
    return this.surroundings.clock.now();
  }

  newId(): string {
    return this.surroundings.clock.ulid();
  }
}
