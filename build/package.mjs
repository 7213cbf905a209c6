// `npm run package`: the desktop program for this platform, into out/packages.
// ELECTRON_OVERRIDE_DIST_PATH names an unpacked Electron where its download cannot be had.
import { bundleApplication, bundleRenderer } from './bundle.mjs';
import { ensureDependencies, requireNode } from './dependencies.mjs';

requireNode();
ensureDependencies();
await bundleApplication();
await bundleRenderer();
const { build } = await import('electron-builder');
const { configuration } = await import('./electron-builder.config.mjs');
const electronDist = process.env.ELECTRON_OVERRIDE_DIST_PATH;
try {
  await build({ config: { ...configuration, ...(electronDist ? { electronDist } : {}) }, publish: 'never' });
} catch (error) {
  console.error(`The desktop program could not be packaged: ${error.message}`);
  process.exit(1);
}
