import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

// The program serves what is built here; while the page is being made, `npm run dev` asks a studio that runs beside it.
const studio = process.env.STUDIO ?? 'http://127.0.0.1:7310';

export default defineConfig({
  plugins: [svelte()],
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
