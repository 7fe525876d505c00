/** German sentences for a second plan beside the first. */
import type { whatIf as english } from '../en/what-if.ts'

export const whatIf: Record<keyof typeof english, string> = {
  'whatIf.colder': '{byK} kälter als geplant',
  'whatIf.weaker-supply': 'Ein Anschluss, der {share01} seines Stroms gibt',
  'whatIf.one-more-person': 'Ein Mensch mehr, {massG}',
  'whatIf.no-outside-storage': 'Draußen darf nichts stehen',
  'whatIf.fault-at-three': 'Der Strom fällt um {clock} aus',
  'whatIf.more': 'noch eines | {count} weitere',
  'whatIf.same': 'Nichts würde sich ändern.',
  'whatIf.holds-no-more': 'Es ginge nicht mehr auf: ein Grund. | Es ginge nicht mehr auf: {count} Gründe.',
  'whatIf.holds-now': 'Es ginge auf.',
  'whatIf.shortfall-added': 'Reicht nicht:',
  'whatIf.shortfall-gone': 'Reicht wieder:',
  'whatIf.caution-added': 'Zu beachten:',
  'whatIf.comfort': '{traveller}: {afterK} Spielraum statt {beforeK}',
  'whatIf.depart': '{after01} bei Abfahrt statt {before01}',
  'whatIf.leg-margin': '{afterWh} übrig nach der Etappe statt {beforeWh}',
  'whatIf.moves': '{after} Umlagerungen am Abend statt {before}',
  'whatIf.bed-other-place': 'Nachts an anderer Stelle: {units} | Nachts an anderen Stellen: {units}',
  'whatIf.drive-other-place':
    'Während der Fahrt an anderer Stelle: {units} | Während der Fahrt an anderen Stellen: {units}',
  'whatIf.bedding-wanted': '{piece} würde im Bett gebraucht',
  'whatIf.steps-added': 'Ein Schritt mehr | {count} Schritte mehr',
  'whatIf.steps-gone': 'Ein Schritt weniger | {count} Schritte weniger',
}
