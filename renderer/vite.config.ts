/// <reference types="node" />
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

/** The page's content-security-policy allows nothing inline: fonts stay files, and no preload script is injected. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [svelte()],
  build: {
    outDir: '../out/renderer',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: false,
    chunkSizeWarningLimit: 1500,
  },
});
