/** Coordinates as one reads them to a rescuer: decimal, and degrees, minutes and seconds. WGS 84, north and east positive. */
import type { Text } from '../text/index.ts'

/** '46.72118, 9.98812': five decimals are about one metre. Always a decimal point, as navigation devices want it. */
export const decimalCoordinates = (latitudeDeg: number, longitudeDeg: number): string =>
  `${latitudeDeg.toFixed(5)}, ${longitudeDeg.toFixed(5)}`

/** 46°43′16.2″ N 9°59′17.2″ E, rounded to a tenth of a second (3 m), carried correctly. */
export const sexagesimalCoordinates = (latitudeDeg: number, longitudeDeg: number, text: Text): string => {
  const north = text.t(latitudeDeg < 0 ? 'cards.compass.south' : 'cards.compass.north')
  const east = text.t(longitudeDeg < 0 ? 'cards.compass.west' : 'cards.compass.east')
  return `${sexagesimal(Math.abs(latitudeDeg))} ${north}, ${sexagesimal(Math.abs(longitudeDeg))} ${east}`
}

function sexagesimal(degrees: number): string {
  const tenths = Math.round(degrees * 36_000)
  const seconds = (tenths % 600) / 10
  const minutes = Math.floor(tenths / 600) % 60
  return `${Math.floor(tenths / 36_000)}\u00b0${String(minutes).padStart(2, '0')}\u2032${seconds.toFixed(1).padStart(4, '0')}\u2033`
}
