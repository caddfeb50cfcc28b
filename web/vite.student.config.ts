import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

// The page for students is one file: everything of it comes out as one script and one style, its type inside, which the program joins with a dance.
export default defineConfig({
  plugins: [svelte()],
  publicDir: false,
  build: {
    target: 'es2020',
    outDir: 'dist-student',
    assetsInlineLimit: 1_000_000,
    cssCodeSplit: false,
    modulePreload: false,
    lib: {
      entry: 'src/student/main.ts',
      formats: ['iife'],
      name: 'student',
      fileName: () => 'student.js',
      cssFileName: 'student',
    },
  },
});
