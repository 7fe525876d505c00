/** Which bundled font holds which character. Read from the fonts' own tables; a test compares them again. */

export type FontName = 'Reading' | 'Extended' | 'Other'

/** Hexadecimal code points and ranges, both cuts of each family. */
const COVERAGE: readonly (readonly [FontName, string])[] = [
  [
    'Reading',
    '20-7e a0-ac ae-b4 b6-ff 131 152-153 2c6 2da 2dc 2009 2013-2014 2018-201a 201c-201e 2022 2026 2039-203a 2044 20ac 2122 2212 2215',
  ],
  [
    'Extended',
    '100-107 10a-113 116-11b 11e-123 126-127 12a-12b 12e-130 132-133 136-137 139-13e 141-148 150-151 154-155 158-15b 15e-165 16a-16b 16e-17e 192 218-21b 237 2c7 2c9 2dd 1e80-1e85 1e9e 1ef2-1ef3 2020 20b9 2113',
  ],
  [
    'Other',
    'b5 384-38a 38c 38e-3a1 3a3-3ce 3d1-3d2 3d6 400-486 488-513 1e00-1e01 1e3e-1e3f 1ea0-1ef9 1f4d 2010-2011 2015 2017 201b 2021 2025 2027 2030 2032-2033 203c 2070 2074-208e 20a3-20a4 20a6-20ab 20b1 20ba 20bc-20bd 2105 2116 2126 212e 215b-215e 2202 2206 220f 2211 221a 221e 222b 2248 2260 2264-2265 25a0 25ca-25cb 25cf',
  ],
]

const RANGES = COVERAGE.flatMap(([font, text]) =>
  text.split(' ').map((range) => {
    const [from = '0', to = from] = range.split('-')
    return { font, from: Number.parseInt(from, 16), to: Number.parseInt(to, 16) }
  }),
)

/** The font for a code point, or null where none of the bundled fonts holds it. */
export const fontOf = (codePoint: number): FontName | null =>
  RANGES.find((range) => codePoint >= range.from && codePoint <= range.to)?.font ?? null

export type Run = { readonly text: string; readonly font: FontName }

/** What stands for a character that no bundled font holds. */
const SUBSTITUTE = '?'
/** Spaces, joiners and marks that may vanish or become a plain space without loss. */
const PLAIN_SPACE = /[\t\n\r\u2000-\u200a\u202f\u205f\u3000]/g
const INVISIBLE = /\p{Cc}|\p{Cf}|\p{Variation_Selector}/gu

/** Text in runs of one font each, in order. Letters are composed first (NFC). */
export function runsOf(text: string): readonly Run[] {
  const runs: { text: string; font: FontName }[] = []
  for (const character of text.replaceAll(PLAIN_SPACE, ' ').replaceAll(INVISIBLE, '').normalize('NFC')) {
    const font = fontOf(character.codePointAt(0) ?? 0)
    const last = runs.at(-1)
    if (font === null) append(runs, SUBSTITUTE, 'Reading')
    else append(runs, character, character === ' ' && last !== undefined ? last.font : font)
  }
  return runs
}

function append(runs: { text: string; font: FontName }[], character: string, font: FontName): void {
  const last = runs.at(-1)
  if (last !== undefined && last.font === font) last.text += character
  else runs.push({ text: character, font })
}
