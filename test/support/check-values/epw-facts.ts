/** Three hours of a public sample as facts; the file itself forbids shipping, so nothing else of it is here. */
import { EPW } from '../../../shared/climate/sources/epw.ts'

/** Year, month, day, hour; then °C, °C, %, Pa, Wh/m2, degrees, m/s (pvlib tests, NLD_Amsterdam062400_IWEC.epw). */
const FACTS: Readonly<Record<string, readonly [number, number, number, number, number, number, number]>> = {
  '1995,1,1,1': [5.1, 1.8, 79, 100_100, 288, 340, 6.7],
  '1995,1,1,2': [4.6, 1.3, 79, 99_900, 288, 330, 7.2],
  '1995,1,1,3': [4.3, 1, 79, 99_700, 287, 340, 8.2],
}

/** A file of our own with one line that holds these facts in their columns; null where no facts are held. */
export function epwFactsText(key: string): string | null {
  const facts = FACTS[key]
  if (facts === undefined) return null
  const cells = Array.from({ length: EPW.columns }, () => '0')
  key.split(',').forEach((value, index) => {
    cells[index] = value
  })
  const places = [EPW.dryBulb, EPW.dewPoint, EPW.humidity, EPW.pressure, EPW.infrared, EPW.windFrom, EPW.windSpeed]
  facts.forEach((value, index) => {
    const column = places[index]
    if (column !== undefined) cells[column] = String(value)
  })
  const header = [
    'LOCATION,Synthetic,-,-,facts,0,52.30,4.77,1.0,-2.0',
    ...Array.from({ length: EPW.headerLines - 1 }, () => '-'),
  ]
  return [...header, cells.join(',')].join('\n')
}
