// Packaging of the desktop program. Checked against electron-builder's own schema by tests/unit/shell/packaging.test.ts.
import { rmSync } from 'node:fs';
import path from 'node:path';

/** @type {import('electron-builder').Configuration} */
export const configuration = {
  appId: 'org.laydown.notebook',
  productName: 'Laydown',
  directories: { output: 'out/packages', buildResources: 'build' },
  // An allow-list: what is not named here does not ship.
  files: ['package.json', 'LICENSE', 'build/third-party-notices.md', 'out/app/**', 'out/renderer/**'],
  asar: true,
  asarUnpack: ['**/node_modules/@napi-rs/canvas*/**'],
  npmRebuild: false,
  fileAssociations: [{ ext: 'laydown', name: 'Laydown notebook', mimeType: 'application/vnd.laydown+sqlite3', role: 'Editor' }],
  electronFuses: {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    grantFileProtocolExtraPrivileges: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    enableCookieEncryption: false,
  },
  // An unpacked Electron given by hand is copied whole, its own default program included; that must not ship.
  afterPack: ({ appOutDir }) => rmSync(path.join(appOutDir, 'resources', 'default_app.asar'), { force: true }),
  linux: { target: ['AppImage', 'deb'], category: 'Science', synopsis: 'Lab notebook for printed flexible-packaging film' },
  win: { target: ['nsis'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true, deleteAppDataOnUninstall: false },
  mac: { target: ['dmg'], category: 'public.app-category.productivity', hardenedRuntime: true },
};
