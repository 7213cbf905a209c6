#!/usr/bin/env node
// The `laydown` command: bundles the application when a source is newer, then runs its command line.
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundleApplication, bundleRenderer } from './bundle.mjs';
import { ensureDependencies, requireNode } from './dependencies.mjs';

requireNode();
ensureDependencies();
const folder = await bundleApplication();
if (process.argv[2] === 'serve') await bundleRenderer();
const { runCommandLine } = await import(pathToFileURL(path.join(folder, 'command-line.mjs')).href);
process.exitCode = await runCommandLine(process.argv.slice(2));
