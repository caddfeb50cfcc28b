import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

// The program serves what is built here; while the page is being made, `npm run dev` asks a studio that runs beside it.
const studio = process.env.STUDIO ?? 'http://127.0.0.1:7310';

/** Lists what the page is made of, for the part of it that works without the program. */
function offlineList(): Plugin {
  return {
    name: 'offline-list',
    generateBundle(_, bundle) {
      const names = Object.keys(bundle).filter((n) => n.startsWith('assets/'));
      this.emitFile({
        type: 'asset',
        fileName: 'offline.json',
        source: JSON.stringify([...names.map((n) => `/${n}`), '/icon.svg', '/scuff.webmanifest']),
      });
    },
  };
}

export default defineConfig({
  plugins: [svelte(), offlineList()],
  build: {
    target: 'es2022',
    assetsDir: 'assets',
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  server: {
    port: 7311,
    proxy: { '/api': { target: studio, changeOrigin: true, headers: { origin: studio } } },
  },
  test: {
    environment: 'happy-dom',
    include: ['src/**/*.test.ts'],
  },
});
