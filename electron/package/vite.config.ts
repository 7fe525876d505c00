/** How the hosts are built: one file each for main, loopback host and command, nothing left to be found at run time but Node and Electron. */
import { builtinModules } from 'node:module'
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
    outDir: here('../../dist/electron'),
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    sourcemap: false,
    rollupOptions: {
      input: { main: here('../main/main.ts'), web: here('../web/main.ts'), command: here('../command/main.ts') },
      // pdfmake and the fonts it reads stay packages: they are found by name at run time.
      external: ['electron', 'pdfmake', /^node:/, ...builtinModules],
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'part-[name]-[hash].js' },
    },
  },
}
