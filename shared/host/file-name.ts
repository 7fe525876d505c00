/** A file name that every system takes, made of what the user or the page called it. */

export const TRIP_ENDING = '.trip.json'

/** Characters that no path may hold, on any of the three systems, and those that cannot be seen. */
// oxlint-disable-next-line no-control-regex
const REFUSED = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff<>:"/\\|?*]/g
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i
/** Code points: 4 bytes each at most, so that ending and number stay below the 255 bytes of common file systems. */
const LONGEST = 50

/** Never empty, never hidden, never a device, never with a folder in it. */
export function plainFileStem(name: string): string {
  const seen = name
    .replace(/\p{Cs}/gu, ' ')
    .normalize('NFC')
    .replace(/(\.trip)?\.json$/i, '')
    .replace(REFUSED, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+/, '')
  const stem = Array.from(seen)
    .slice(0, LONGEST)
    .join('')
    .replace(/[. ]+$/, '')
  const first = stem.split('.')[0] ?? ''
  if (stem === '') return 'trip'
  return RESERVED.test(first) ? `trip ${stem}` : stem
}

export const tripFileName = (name: string): string => `${plainFileStem(name)}${TRIP_ENDING}`
