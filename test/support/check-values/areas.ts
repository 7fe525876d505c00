/** Which handler answers for which area of the rows. */
import { psychro, moisture, carbonDioxide, condensation } from './areas/air.ts'
import { heat, hvac, solar } from './areas/cabin.ts'
import { cold, insulation, local, operative, pmvRows, setRows, sleep } from './areas/comfort.ts'
import { charge, drive } from './areas/drive.ts'
import { hookup } from './areas/hookup.ts'
import { night, safety } from './areas/night.ts'
import { sun, weather } from './areas/weather.ts'
import type { Handler } from './rows.ts'

export const AREAS: Readonly<Record<string, Handler>> = {
  'comfort.pmv': pmvRows,
  'comfort.set': setRows,
  'comfort.operative': operative,
  'comfort.local': local,
  'comfort.cold': cold,
  'comfort.sleep': sleep,
  'comfort.insulation': insulation,
  'air.psychro': psychro,
  'air.moisture': moisture,
  'air.co2': carbonDioxide,
  'air.condensation': condensation,
  'cabin.heat': heat,
  'cabin.solar': solar,
  'cabin.hvac': hvac,
  hookup: hookup,
  charge: charge,
  drive: drive,
  weather: weather,
  sun: sun,
  safety: safety,
  night: night,
}
