import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// A test runner that builds first sets NODE_ENV to its own word; the screens are always built for use, with React's fast form.
process.env.NODE_ENV = 'production';

/** Builds the screens; both hosts serve the result from dist/renderer. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('../dist/renderer', import.meta.url)),
    emptyOutDir: true,
    target: 'chrome120',
    // The content security policy allows fonts and images from the program's own origin, not data: fonts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
