import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { configuration } from '../../../build/electron-builder.config.mjs';

// electron-builder's own check of a configuration against its schema (an internal module; the version is pinned).
const require = createRequire(import.meta.url);
const { validateConfiguration } = require('app-builder-lib/out/util/config/config') as {
  validateConfiguration(configuration: object, debugLogger: object): Promise<void>;
};
const debugLogger = { isEnabled: false, add: () => undefined };

describe('the packaging configuration', () => {
  it("passes electron-builder's schema", async () => {
    await expect(validateConfiguration({ ...configuration }, debugLogger)).resolves.toBeUndefined();
  });

  it('would be refused with an unknown key, so the check above can fail', async () => {
    await expect(validateConfiguration({ ...configuration, noSuchKey: true }, debugLogger)).rejects.toThrow(/noSuchKey/);
  });

  it('sets the fuses that close Node, inspection and file:// and turn asar integrity on', () => {
    expect(configuration.electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      grantFileProtocolExtraPrivileges: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
    });
  });

  it('never deletes lab data when it is uninstalled', () => {
    expect(configuration.nsis?.deleteAppDataOnUninstall).toBe(false);
  });
});
