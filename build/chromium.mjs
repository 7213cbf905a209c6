// Finds a Chromium for the browser tests: an installed one, else Playwright's download, else Debian's package when root.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { projectFolder } from './dependencies.mjs';

const installed = [
  process.env.LAYDOWN_CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of a Chromium executable, or `null` with the reasons printed. */
export async function findChromium() {
  return firstExisting(installed) ?? (await playwrightChromium()) ?? debianChromium();
}

function firstExisting(candidates) {
  return candidates.find((candidate) => candidate && existsSync(candidate)) ?? null;
}

async function playwrightChromium() {
  const { chromium } = await import('playwright-core');
  if (existsSync(chromium.executablePath())) return chromium.executablePath();
  console.error('No Chromium is installed; asking Playwright for one …');
  const cli = path.join(path.dirname(createRequire(path.join(projectFolder, 'package.json')).resolve('playwright-core')), 'cli.js');
  const done = attempt(process.execPath, [cli, 'install', 'chromium-headless-shell', 'chromium']);
  return done && existsSync(chromium.executablePath()) ? chromium.executablePath() : null;
}

function debianChromium() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null;
  console.error("Playwright's download is not to be had; installing Debian's chromium …");
  attempt('apt-get', ['update', '-qq']);
  attempt('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
  return firstExisting(installed);
}

function attempt(command, args) {
  try {
    execFileSync(command, args, { stdio: ['ignore', 'ignore', 'ignore'], timeout: 300_000, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    return true;
  } catch {
    return false;
  }
}
