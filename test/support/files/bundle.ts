/** Bundles a test program once, so that each of its many runs starts fast. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'vite'

/** The path of one self-contained file. */
export async function bundleProgram(entry: string): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'kipstow-program-'))
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
      rollupOptions: { input: entry, output: { format: 'es', entryFileNames: 'program.mjs' } },
    },
  })
  return join(outDir, 'program.mjs')
}
