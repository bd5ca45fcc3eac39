import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** Our own packages only define things; what a page does not use of them need not be in it. */
const treeshake = {
  moduleSideEffects: (id: string) => !/\/(engine|units|records|papers)\/[^?]*\.ts$/.test(id),
};

/** The paper of the page, as in tokens.css. */
const PAPER = '#eff2e6';

/** Makes the worker that keeps the whole app in the browser (sw.js), and the paper by which it is installed. */
const offline = VitePWA({
  // A newer version waits until it is asked for: src/offline/ registers the worker and speaks with it.
  registerType: 'prompt',
  injectRegister: false,
  manifestFilename: 'app.webmanifest',
  includeManifestIcons: false,
  manifest: {
    id: '/',
    name: 'Fallwright',
    short_name: 'Fallwright',
    description:
      'Will a hydraulic ram run on this water, with this pipe, and how much reaches the tank?',
    lang: 'en',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: PAPER,
    theme_color: PAPER,
    icons: [
      { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    ],
  },
  workbox: {
    // Everything: leaves and workers that have not been opened yet must open without a network too.
    globPatterns: ['**/*.{js,css,html,svg,png,woff2}'],
    // Names in assets/ carry a hash of the content, so they need no second one.
    dontCacheBustURLsMatching: /^assets\//,
    // The first visit works offline from the moment all is kept, not only from the next load.
    clientsClaim: true,
    // As in server/app.ts: the addresses of places are the page, those of files and of /api are not.
    navigateFallback: 'index.html',
    navigateFallbackDenylist: [/^\/api\//, /^[^?]*\.[a-z0-9]+(\?|$)/i],
    inlineWorkboxRuntime: true,
  },
});

export default defineConfig({
  plugins: [react(), offline],
  server: {
    host: '127.0.0.1',
    port: 4750,
    // Where scripts/dev.mjs has started the service.
    proxy: { '/api': process.env.FALLWRIGHT_API ?? 'http://127.0.0.1:4760' },
  },
  preview: { host: '127.0.0.1' },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    // Building sw.js takes most of the time; it need not be told at each start.
    rolldownOptions: { treeshake, checks: { pluginTimings: false } },
    target: 'es2023',
    // Fonts stay files: the server's policy allows none in data URLs, and files are cached on their own.
    assetsInlineLimit: 0,
  },
});
