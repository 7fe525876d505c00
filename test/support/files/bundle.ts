/** Bundles a test program once, so that each of its many runs starts fast. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'

/** Below the packages, where a program still finds those that are left out of it. */
export const BESIDE_PACKAGES = join(import.meta.dirname, '../../../node_modules/.cache')

/** The path of one file, gone when this process ends. Of packages only pdfmake, which reads files of its own, is left out. */
export async function bundleProgram(entry: string, place = tmpdir()): Promise<string> {
  mkdirSync(place, { recursive: true })
  const outDir = mkdtempSync(join(place, 'kipstow-program-'))
  process.once('exit', () => rmSync(outDir, { recursive: true, force: true }))
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: true,
      outDir,
      target: 'node20',
      minify: false,
      rollupOptions: {
        input: entry,
        external: ['pdfmake'],
        output: { format: 'es', entryFileNames: 'program.mjs' },
      },
    },
  })
  return join(outDir, 'program.mjs')
}
