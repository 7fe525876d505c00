/** How the preload script is built: one CommonJS file, as a sandboxed window needs it. */
import { fileURLToPath } from 'node:url'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

export default {
  root: here('../..'),
  configFile: false,
  publicDir: false,
  logLevel: 'error',
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: true,
    outDir: here('../../dist/preload'),
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    rollupOptions: {
      input: here('../preload/preload.ts'),
      external: ['electron'],
      output: { format: 'cjs', entryFileNames: 'preload.cjs', codeSplitting: false },
    },
  },
}
