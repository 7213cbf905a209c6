import { inHouseMethod, type InHouseMethod } from '../../shared-lib/method/in-house/in-house-method.ts';
import { areMeasuringAlike } from '../../shared-lib/method/in-house/measuring-alike.ts';
import type { Method, Property } from '../../shared-lib/method/method.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { findInHouseMethod, findVersion, listInHouseMethods, versionsOf } from './queries/in-house-methods.ts';
import { Refusal } from './refusal.ts';

const builtIn = new Map(allMethods.map((method) => [method.id, method]));

/** The methods of a notebook: the built-in ones, and the shop's own in all their versions. */
export class MethodBook {
  /** A version never changes once it is written, so it is made once. */
  readonly #made = new Map<string, InHouseMethod>();

  constructor(private readonly store: NotebookStore) {}

  /** Versions of another notebook came in. */
  forget(): void {
    this.#made.clear();
  }

  /** By which new tests can be started. */
  current(): Method[] {
    const own = listInHouseMethods(this.store).filter(({ retired }) => !retired);
    return [...allMethods, ...own.flatMap(({ methodId, version }) => this.inHouse(methodId, version) ?? [])];
  }

  /**
   * For lists, which still show a test whose method is not known here.
   * @param version of an in-house method; left out, the one that new tests take. Of a built-in method there is only one.
   */
  find(methodId: string, version?: string): Method | undefined {
    return builtIn.get(methodId) ?? this.inHouse(methodId, version);
  }

  /** @throws Refusal when neither this version of the program nor this notebook has such a method */
  named(methodId: string, version?: string): Method {
    const method = this.find(methodId, version);
    if (!method) throw new Refusal('not-found', `Neither this version of Laydown nor this notebook has a method '${methodId}'${version === undefined ? '' : ` of version ${version}`}; the notebook may come from a newer one.`);
    return method;
  }

  /** By which a test is made: of an in-house method always the version that it was started with. */
  ofTest({ methodId, methodVersion }: { methodId: string; methodVersion: string }): Method {
    return this.named(methodId, methodVersion);
  }

  findOfTest({ methodId, methodVersion }: { methodId: string; methodVersion: string }): Method | undefined {
    return this.find(methodId, methodVersion);
  }

  /** `undefined` for a built-in method, too. */
  inHouse(methodId: string, version?: string): InHouseMethod | undefined {
    const asked = version ?? findInHouseMethod(this.store, methodId)?.version;
    if (asked === undefined) return undefined;
    const key = `${methodId} ${asked}`;
    const known = this.#made.get(key);
    if (known) return known;
    const written = findVersion(this.store, methodId, asked)?.written;
    if (!written) return undefined;
    const made = inHouseMethod(methodId, asked, written);
    this.#made.set(key, made);
    return made;
  }

  /**
   * A property of a method, also one that only an earlier version had.
   * @param asked version whose property it is to be, where that has it; left out, the one that new tests take
   */
  property(methodId: string, key: string, asked?: string): Property | undefined {
    const named = ({ key: own }: Property) => own === key;
    const current = this.find(methodId, asked)?.properties.find(named);
    if (current) return current;
    return versionsOf(this.store, methodId)
      .flatMap(({ version }) => this.inHouse(methodId, version)?.properties ?? [])
      .find(named);
  }

  /**
   * Whether readings of a property that were taken by one version of a method can stand beside those of another: a built-in
   * method says so in a flag instead.
   */
  measuresAlike(methodId: string, property: string, version: string, otherVersion: string): boolean {
    if (version === otherVersion || builtIn.has(methodId)) return true;
    const [one, other] = [this.inHouse(methodId, version), this.inHouse(methodId, otherVersion)];
    return !one || !other || areMeasuringAlike(one.written, other.written, property);
  }
}
