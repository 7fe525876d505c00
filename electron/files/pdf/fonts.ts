/** The fonts that go into a PDF: the bundled reading family in two subsets, and pdfmake's own for other alphabets. */
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { FontName } from './coverage.ts'

const require = createRequire(import.meta.url)
const folderOf = (packageName: string): string => dirname(require.resolve(`${packageName}/package.json`))

type FontFiles = { readonly normal: string; readonly bold: string }

export function fontFiles(): Readonly<Record<FontName, FontFiles>> {
  const reading = join(folderOf('@fontsource/atkinson-hyperlegible-next'), 'files', 'atkinson-hyperlegible-next')
  const other = join(folderOf('pdfmake'), 'fonts', 'Roboto', 'Roboto')
  const cuts = (subset: string): FontFiles => ({
    normal: `${reading}-${subset}-400-normal.woff`,
    bold: `${reading}-${subset}-700-normal.woff`,
  })
  return {
    Reading: cuts('latin'),
    Extended: cuts('latin-ext'),
    Other: { normal: `${other}-Regular.ttf`, bold: `${other}-Medium.ttf` },
  }
}
