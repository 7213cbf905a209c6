// `npm start [-- FILE]`: opens the notebook in Electron, or, where its binary or a display is missing, serves the same
// application on 127.0.0.1 and prints its address.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { bundleApplication, bundleRenderer } from './bundle.mjs';
import { ensureDependencies, projectFolder, requireNode } from './dependencies.mjs';

requireNode();
ensureDependencies();
await bundleApplication();
await bundleRenderer();

const files = process.argv.slice(2);
const display = hasDisplay();
const electron = display.missing ? { missing: display.missing } : electronBinary();

const child = electron.missing
  ? spawn(process.execPath, [path.join(projectFolder, 'build', 'laydown.mjs'), 'serve', ...files], { stdio: 'inherit' })
  : spawn(electron.path, [projectFolder, ...files], { stdio: 'inherit' });
if (electron.missing) console.log(`${electron.missing} The same application is served to your browser instead.`);
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => (process.exitCode = code ?? 0));

function hasDisplay() {
  if (process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY) return {};
  return { missing: 'There is no display here.' };
}

/** Electron's executable; its own installer fetches it on first use, and says nothing useful when it cannot. */
function electronBinary() {
  const wrapper = path.join(projectFolder, 'node_modules', 'electron');
  const override = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  const distribution = override ?? path.join(wrapper, 'dist');
  const name = { darwin: 'Electron.app/Contents/MacOS/Electron', win32: 'electron.exe' }[process.platform] ?? 'electron';
  const executable = path.join(distribution, name);
  if (!existsSync(executable) && !override) {
    spawnSync(process.execPath, [path.join(wrapper, 'install.js')], { stdio: 'ignore', timeout: 300_000 });
  }
  return existsSync(executable) ? { path: executable } : { missing: "Electron's program file cannot be fetched here." };
}
