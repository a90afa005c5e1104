import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

const file = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** Lists every file of the pages, so that the browser can keep them for when the bench is out of reach. */
const listOfFiles = (): Plugin => ({
  name: 'list-of-files',
  generateBundle: {
    order: 'post',
    handler(_options, bundle) {
      const names = Object.keys(bundle).filter((name) => name !== 'service.js' && !name.endsWith('.map'))
      const source = JSON.stringify(
        [...new Set([...names, 'index.html', 'mark.svg'])].toSorted().map((name) => `/${name}`),
      )
      this.emitFile({ type: 'asset', fileName: 'files.json', source })
    },
  },
})

export default defineConfig({
  root: 'src/web',
  plugins: [react(), listOfFiles()],
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    // The content security policy allows files of our own only: nothing inline, no data addresses.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: file('./src/web/index.html'), service: file('./src/web/offline/service.ts') },
      output: {
        // A service worker answers for its own folder and below, and is looked for under one name.
        entryFileNames: ({ name }) => (name === 'service' ? 'service.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  worker: { format: 'es' },
  server: { proxy: { '/api': 'http://127.0.0.1:4170' } },
})
