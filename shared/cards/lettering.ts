/** How wide words are on paper, so that a name fits the box it is written on. */

/** Mean advance in em, measured on the bundled family's regular cut and rounded up. */
const NARROW_EM = 0.33
const LOWER_EM = 0.55
const UPPER_EM = 0.66
const BOLD_FACTOR = 1.05

export function wordsWidthMm(text: string, heightMm: number, bold = false): number {
  let em = 0
  for (const character of text) {
    if (/[ilj.,:;|!'() tfr]/.test(character)) em += NARROW_EM
    else if (/[A-Z\u00c0-\u00deMmWw@]/.test(character)) em += UPPER_EM
    else em += LOWER_EM
  }
  return em * heightMm * (bold ? BOLD_FACTOR : 1)
}

/** Words wrapped to a width, at most `lines` lines; the last is cut with an ellipsis where words are left. */
export function wrapWords(text: string, widthMm: number, heightMm: number, lines: number): readonly string[] {
  const out: string[] = []
  let line = ''
  for (const word of text.split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (wordsWidthMm(longer, heightMm) <= widthMm) line = longer
    else {
      if (line !== '') out.push(line)
      line = word
    }
  }
  if (line !== '') out.push(line)
  const shown = out.slice(0, lines)
  const last = shown.length - 1
  return shown.map((words, index) =>
    cut(index === last && out.length > lines ? `${words}\u2026` : words, widthMm, heightMm),
  )
}

function cut(text: string, widthMm: number, heightMm: number): string {
  if (wordsWidthMm(text, heightMm) <= widthMm) return text
  const letters = [...text.replace(/\u2026$/, '')]
  while (letters.length > 1 && wordsWidthMm(`${letters.join('')}\u2026`, heightMm) > widthMm) letters.pop()
  return `${letters.join('')}\u2026`
}
