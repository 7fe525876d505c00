/** A name in one, two and three lines of nearly equal length. */

const MOST_LINES = 3
const LONGEST = 40

export function wrapName(name: string): readonly (readonly string[])[] {
  const whole = name.length > LONGEST ? `${name.slice(0, LONGEST - 1)}…` : name
  const words = whole.split(' ').filter((word) => word !== '')
  const wrappings: (readonly string[])[] = [[whole]]
  for (let lines = 2; lines <= Math.min(MOST_LINES, words.length); lines += 1) {
    const wrapped = balance(words, lines)
    if (wrapped.length === lines) wrappings.push(wrapped)
  }
  return wrappings
}

/** The smallest line length into which the words fit in so many lines. */
function balance(words: readonly string[], lines: number): readonly string[] {
  const longest = Math.max(...words.map((word) => word.length))
  for (let most = longest; ; most += 1) {
    const filled = fill(words, most)
    if (filled.length <= lines) return filled
  }
}

function fill(words: readonly string[], most: number): readonly string[] {
  const lines: string[] = []
  for (const word of words) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
