/** A remedy as a short imperative line. */
import { assertNever } from '../../../shared/result/index.ts'
import type { Remedy } from '../../../shared/plan/index.ts'
import type { Text } from '../../../shared/text/index.ts'

export function sayRemedy({ change }: Remedy, text: Text, nameOf: (id: string) => string): string {
  switch (change.kind) {
    case 'bring-bedding':
      return text.t('window.remedy.bringBedding', { piece: nameOf(change.pieceId) })
    case 'bring-piece':
      return text.t('window.remedy.bringBedding', { piece: nameOf(change.pieceId) })
    case 'set-point':
      return text.t(change.byK < 0 ? 'window.remedy.cooler' : 'window.remedy.warmer', { byK: Math.abs(change.byK) })
    case 'charge-limit':
      return text.t('window.remedy.chargeLimit', { share01: change.to01 })
    case 'stop-on-the-way':
      return text.t('window.remedy.stop', { distanceM: change.atM })
    case 'leave-behind':
      return text.t('window.remedy.leave', { pieces: text.list(change.pieceIds.map(nameOf)) })
    case 'covers':
      return text.t('window.remedy.covers')
    case 'bed-heater':
      return text.t('window.remedy.bedHeater')
    case 'current':
      return text.t('window.remedy.current', { currentA: change.toA })
    case 'window-gap':
      return text.t('window.remedy.gap', { lengthMm: change.toMm })
    case 'target-later':
      return text.t('window.remedy.later', { durationS: change.byMin * 60 })
    case 'turn-piece':
      return text.t('window.remedy.turn', { piece: nameOf(change.pieceId) })
    case 'unlock':
      return text.t('window.remedy.unlock', { piece: nameOf(change.pieceId) })
    default:
      return assertNever(change)
  }
}
